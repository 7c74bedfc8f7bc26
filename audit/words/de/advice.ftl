# Was gegen jede Ursache zu tun ist.

advice-gm-angle-omitted = Die Nadelabweichung auf die Marschskizze schreiben und bei jedem Abschnitt die Rechnung zeigen.
advice-gm-angle-reversed = Vor der Rechnung beide Nordrichtungen zeichnen; magnetisch ist Gitter weniger Nadelabweichung.
advice-gm-angle-doubled = Nur einmal berichtigen: in der Rechnung oder am Kompass, nie an beiden.
advice-declination-for-gm-angle = Von einer Karte mit Gitter die Nadelabweichung nehmen, nicht die Missweisung.
advice-gm-angle-stale = Den aufgedruckten Winkel auf den heutigen Stand bringen, bevor die Marschskizze entsteht.
advice-reciprocal = Vor dem Losgehen laut sagen, in welche Himmelsrichtung es ungefähr geht.
advice-right-angle = Die Richtung erst schätzen, dann messen.
advice-bezel-clicks = Rasten laut zählen, dann durch Anvisieren prüfen.
advice-bezel-wrong-way = Vor dem Drehen sagen, in welche Richtung die Zahlen wachsen.
advice-mils-as-degrees = Hinter alle { -azimuth(form: "many") } die Einheit schreiben.
advice-wrong-mil-circle = Die Strichteilung des Kompasses an den Kopf der Marschskizze schreiben.
advice-azimuth-digits = { -azimuth(form: "many") } Ziffer für Ziffer ansagen und wiederholen lassen.
advice-dial-misread = Die Skala zweimal ablesen, von beiden Nachbarstrichen aus.
advice-neighbour-azimuth = Jeden Abschnitt abhaken; vor jedem Aufbruch { -azimuth.gender ->
    [feminine] die neue
    [neuter] das neue
   *[masculine] den neuen
} { -azimuth } ansagen.
advice-magnetic-disturbance = Von Metall und Leitungen weggehen, das Telefon wegstecken, neu anvisieren.
advice-steady-bias = Erst den Kompass an einer bekannten Linie prüfen, dann den Gehenden auf einem markierten Abschnitt.
advice-hundred-miscounted = Bei jedem Hunderter eine Perle weiterschieben, einen Knoten machen oder einen Kiesel weglegen und ihn laut sagen.
advice-single-double-pace = Hinter jede Schrittzahl „einfach“ oder „doppelt“ schreiben.
advice-pace-long = Auf einer gemessenen Strecke in solchem Gelände neu zählen.
advice-pace-short = Auf einer gemessenen Strecke in solchem Gelände neu zählen.
advice-wrong-ruler = Den Maßstab auf Lineal und Karte lesen; zur Probe Gitterquadrate zählen.
advice-slope-paced = An steilen Abschnitten Schritte zugeben: 6 auf 100 bei 20°, 15 auf 100 bei 30°.
advice-early-stop = Erst die ganze Schrittzahl gehen, dann suchen.
advice-overshoot = Ein Merkmal hinter dem { -point } nennen, an dem zu sehen ist: zu weit.
advice-bypass-paced = Nur die Schritte in Marschrichtung zählen.
advice-veer = Von Zwischenziel zu Zwischenziel gehen und in der Gegenrichtung zurückvisieren.
advice-sidehill = Am Hang Zwischenziele etwas oberhalb der Linie wählen.
advice-handrail = Sagen, wo die Linie die Leitlinie kreuzt, und sie dort kreuzen.
advice-bypass-unequal = Hinaus und zurück gleich viele Schritte zählen.
advice-obstacle-one-side = Hindernisse abwechselnd links und rechts umgehen, oder rechtwinklig mit gleich langen Seiten.
advice-digits-transposed = Koordinaten paarweise lesen und zweimal eintragen.
advice-digit-wrong = Den eingetragenen { -point } mit der Beschreibung des Geländes vergleichen.
advice-easting-northing-swapped = Erst rechts, dann hoch.
advice-wrong-grid-line = Vor dem Messen die linke untere Ecke des Quadrats suchen.
advice-wrong-plotting-scale = Den Maßstab von Planzeiger und Karte laut lesen.
advice-datum = Das Bezugssystem von Liste, Karte und Empfänger vergleichen.
advice-point-misplaced = Hingehen und den { -point } prüfen, bevor jemand nach ihm beurteilt wird.
advice-wrong-start = Sich vergewissern, an welchem { -point } man steht, bevor man ihn verlässt.
advice-wrong-point = Code, Beschreibung und Entfernung prüfen, bevor man einen { -point } annimmt.
advice-point-skipped = Auf der Marschskizze jeden { -point } abhaken.
advice-order-changed = Auf der Marschskizze jeden { -point } abhaken.
advice-passed-unseen = Auf dem letzten Zehntel des Abschnitts langsamer gehen und sich umsehen.
