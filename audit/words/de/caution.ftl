# Die Hinweise, die jede Auswertung zeigt.

caution-aid = Dies ist ein Ausbildungsmittel, kein Navigationsgerät und keine Überwachung: Niemand sieht zu.
caution-count = Vollzähligkeit durch Abzählen feststellen; wer nicht zurück ist, wird sofort gesucht.
caution-angle = Die Nadelabweichung und ihr Datum auf der mitgeführten Karte prüfen.
caution-rules = Örtliche Regeln und ausgebildete Leitende gehen vor.
caution-error = Positionen sind ungenau und eine Ursache ist eine Vermutung: Die Bewertung unterschreibt ein Mensch.
caution-data = Die Aufzeichnung eines Weges enthält personenbezogene Daten. Nur so weit weitergeben, wie die Ausbildung es braucht.
caution-short = Ein Ausbildungsmittel, keine Überwachung: Leute zählen und sofort suchen, wer nicht zurück ist; Nadelabweichung und Datum auf der Karte prüfen; örtliche Regeln gehen vor; Positionen und Ursachen sind ungewiss, und die Bewertung unterschreibt ein Mensch.
