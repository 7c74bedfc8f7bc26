# Der eine Satz zu einer Ursache: was sie voraussagt und was zu sehen war.

evidence-predicted = Zu erwarten: { $predicted }{ $beside }; { $seen }{ $scatter }{ $log }.
evidence-scatter-heading = , und von Abschnitt zu Abschnitt streuen die eigenen Richtungen um etwa { $size }
evidence-scatter-distance = , und von Abschnitt zu Abschnitt streuen die eigenen Entfernungen um etwa { $share }
evidence-beside = {" "}für sich, { $both } zusammen mit dem gemeinsamen Fehler mehrerer Abschnitte
evidence-unpredicted = { $seen }, { $distance }{ $bias }{ $start }{ $log }{ $why }.
evidence-why-portion = ; ob dieser Teil des Weges zum Abschnitt gehört, ist zweifelhaft
evidence-why-swerve = ; ein Stück von { $length } in anderer Richtung kann am Gelände, an Eisen oder an einem Hindernis liegen
evidence-why-more = ; kein einzelner Fehler hebt sich von ähnlichen ab
evidence-line-left = Die geplante Linie wurde nicht eingehalten: { $path } wurden über Grund gegangen, die Linie ist { $line } lang. Weder Richtung noch Entfernung zeigen eine Ursache.
evidence-carried = Übernommen vom Eintrag des Abschnitts davor: Von dort gemessen, wo dessen Ende auf der Karte stand, führt dieser { $turn } von der geplanten Richtung, { $far }; { $seen }, { $distance }{ $log }. Ein eigener Fehler wird nicht genannt.
evidence-never-near = { $point } war nie näher als { $away }, und kein Teil des Ganges passt zu diesem Abschnitt.
evidence-looked-for = Zwischen den { -point(form: "to") } vor und nach { $point } wurden { $walked } gegangen; über { $point } sind es { $planned }: Vielleicht wurde danach gesucht, vielleicht wurde es ausgelassen; das lässt sich nicht unterscheiden.
evidence-displaced = Die Anfänge der Abschnitte { $legs } liegen alle gleich, { $place } ihrer { -point(form: "many") }: Empfänger oder Liste der { -point(form: "many") } haben vielleicht ein anderes Bezugssystem; dann ist um ebenso viel falsch, was von Anfängen und { -point(form: "to") } gesagt wird.
evidence-missed-by-little = { $passed }: Näher kam der Gang nicht, solange er auf keinem anderen Abschnitt war. Knapp verfehlt oder ausgelassen, das lässt sich nicht sagen.
evidence-in-turn = Seine { -point(form: "many") } wurden nacheinander passiert wie geplant, { $passed }: Der Abschnitt kann gegangen worden sein, und nichts dazwischen passt gut genug, um es zu sagen.
evidence-free-turn = Seine { -point(form: "many") } wurden passiert, { $passed }, die Reihenfolge ist frei, und kein Teil des Ganges passt gut genug zu diesem Abschnitt.
evidence-out-of-turn = Die { -point(form: "many") } wurden in anderer Reihenfolge passiert als geplant, { $passed }.
evidence-passed-elsewhere = Nur anderswo im Gang passiert, auf einem anderen Abschnitt oder vor oder nach der Bahn, { $passed }; kein Teil des Ganges passt zu diesem Abschnitt.
evidence-passed-at = { $point } um { $time } ({ $away } daneben)
evidence-gave-up = Die Bahn kann vor diesem Abschnitt aufgegeben worden sein: Der Weg führte dann ohne Halt an einem späteren { -point } vorbei, wie es auch ein Heimweg kann.
evidence-slipped-reference = Der Gang hat{ $time } einen { $what ->
[halts] Halt
   *[bends] Knick
}, { $away } von der Stelle entfernt, an der { $point } mit einem Versehen in den Ziffern seines { $axis ->
[easting] Rechtswerts
   *[northing] Hochwerts
} läge ({ $slipped } statt { $written }; { $place } von seinem Platz): ein Versehen im Plan oder des Gehenden.
evidence-at-time = {" "}um { $time }
evidence-not-recorded = Der Abschnitt kann dort gegangen worden sein, wo die Aufzeichnung nichts davon zeigt.
evidence-together = ; die eigene Abweichung nach einer Seite über alle Abschnitte, ohne die Fehler, wird auf { $turn } geschätzt
evidence-began-off = ; begonnen { $place } vom Ausgangspunkt
evidence-recorded-from = ; aufgezeichnet ab { $place } vom Ausgangspunkt
evidence-log = ; laut Marschprotokoll war der Kompass { $setting } eingestellt
evidence-log-as-card = ; laut Marschprotokoll war der Kompass { $setting } eingestellt, aber das sagte auch eines, das von der Marschskizze abgeschrieben ist
evidence-set-as-planned = wie geplant
evidence-set-off = { $turn } von der geplanten Richtung
evidence-set-as-own-card = wie auf der eigenen Marschskizze
evidence-set-off-own-card = { $turn } von der eigenen Marschskizze
evidence-set-which-is = { $beside } ({ $planned })
evidence-no-turn = { $size } daneben
evidence-an-end = ein Ende { $place } vom { -point }
evidence-ended = geendet { $place } davon
evidence-an-end-from-start = ein Ende { $place } vom geplanten, gezählt von dort, wo der Abschnitt begann
evidence-ratio = { $ratio } der Entfernung
evidence-walked-ratio = gegangen { $ratio } davon, auf { $error } genau
evidence-seen-turn = gesehen { $turn }
evidence-ended-aside = geendet { $aside } der gehaltenen Linie
evidence-walked-length = gegangen { $length }, auf { $error } genau
evidence-on-card = { $begin ->
    [yes] Gegangen
   *[no] gegangen
} in der geplanten Richtung, auf { $error } genau
evidence-off-card = { $begin ->
    [yes] Gegangen
   *[no] gegangen
} { $turn } von der geplanten Richtung, auf { $error } genau
evidence-distance-right = die Entfernung richtig
evidence-distance-in-part = die Entfernung nur zum Teil aufgezeichnet
evidence-distance-long = { $share } zu lang
evidence-distance-short = { $share } zu kurz
