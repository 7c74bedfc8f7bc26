# Woher die Zahlen der mitgelieferten Vorgaben sind; Titel bleiben, wie sie veröffentlicht sind.

source-day-points = bei Tag 4 von 5 { -point(form: "to") }: Expert Infantry Badge, test station B, point B-1, day
source-day-time = 3 Stunden mit Rückweg: Expert Infantry Badge, neuere Regeln von Einheiten
source-cheek = bis 3 Grad mit dem Kompass an der Wange: STP 21-1-SMCT, land navigation tasks
source-straight = gerade Entfernung auf 5 Prozent: STP 21-1-SMCT, land navigation tasks
source-common = gängige Praxis, ohne Quelle
source-woods = gewählt: wie weit eine Markierung in lichtem Wald zu sehen ist; gängige Praxis, ohne Quelle
source-surveyed = gewählt: auf wenige Meter eingemessen; gängige Praxis, ohne Quelle
source-human = gängige Praxis, ohne Quelle; ein Mensch beurteilt es
source-road = 25 bis 100 m: gängige Praxis, ohne Quelle
source-no-grace = gewählt: keine; gängige Praxis, ohne Quelle
source-late-fails = gewählt: keiner, denn wer zu spät kommt, besteht nicht
source-weights = 50 bis 70 Prozent für das Gefundene: gängige Praxis, ohne Quelle
source-night-points = bei Nacht 2 von 3 { -point(form: "to") }: Expert Infantry Badge, task summary, night
source-night-time = bei Nacht 2 Stunden: Expert Infantry Badge, task summary, night
source-centre-hold = bis 10 Grad mit dem Kompass vor dem Körper: STP 21-1-SMCT, land navigation tasks
source-dark = gewählt: das Doppelte der 5 Prozent einer geraden Entfernung in STP 21-1-SMCT, denn im Dunkeln ändert sich der Schritt
source-chosen = gewählt; gängige Praxis, ohne Quelle
source-all-points = alle: Prüfung für Suchkräfte, 5 von 5 { -point(form: "to") } (SARTECH II exam outline)
source-circuit-time = gewählt: eine Runde von 600 bis 2000 m mit 3000 m in der Stunde (STP 21-1-SMCT, 071-329-1006), dazu eine Stunde zum Suchen und Lernen
source-unplaced = mehr als 30 Minuten zu spät ist ohne Wertung: IRF rules of score events on foot, B28
source-minute = oft 10 Zähler je Minute: score events on foot, IRF rules B28
source-wheel-radius = gewählt: Abschnitte bis 200 m, mit dem Messrad gelegt (Cibola SAR land navigation evaluation)
source-wheel = gewählt: mit dem Messrad gelegt; gängige Praxis, ohne Quelle
source-none = gewählt: keine
