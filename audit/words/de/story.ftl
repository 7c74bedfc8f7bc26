# Beginnt den Satz über einen Fehler, den mehrere Abschnitte teilen; „auf den Abschnitten 1 bis 3“ folgt.

story-gm-angle-omitted = Die Nadelabweichung wurde weggelassen
story-gm-angle-reversed = Die Nadelabweichung wurde mit falschem Vorzeichen angebracht
story-gm-angle-doubled = Die Nadelabweichung wurde zweimal angebracht
story-declination-for-gm-angle = Missweisung wurde statt der Nadelabweichung verwendet
story-gm-angle-stale = Eine veraltete Nadelabweichung wurde verwendet
story-steady-bias = Kompass oder Gehender wich nach einer Seite ab, um keinen bekannten Winkel
story-reciprocal = Gegangen wurde in der Gegenrichtung
story-bezel-wrong-way = Der Drehring wurde in die falsche Richtung gedreht
story-mils-as-degrees = Strich und Grad wurden miteinander verwechselt
story-wrong-mil-circle = Der Kompass hat eine andere Strichteilung als die Marschskizze
story-sidehill = Die Linie kam am Hang talwärts ab
story-pace-long = Mit dem Schrittmaß kam man zu weit
story-pace-short = Mit dem Schrittmaß kam man nicht weit genug
story-single-double-pace = Einfach- und Doppelschritte wurden verwechselt
story-wrong-ruler = Entfernungen wurden mit dem Lineal eines anderen Maßstabs gemessen
story-slope-paced = Die Schrägstrecke wurde als Kartenentfernung abgeschritten
story-right-angle = Die Richtung war um einen rechten Winkel falsch
story-azimuth-digits = Ziffern { -azimuth.gender ->
    [feminine] in der
    [neuter] im
   *[masculine] im
} { -azimuth } waren vertauscht oder falsch
story-neighbour-azimuth = { -azimuth.gender ->
    [feminine] Die
    [neuter] Das
   *[masculine] Der
} { -azimuth } eines anderen Abschnitts wurde eingestellt
story-hundred-miscounted = Hunderter gingen beim Zählen verloren oder waren zu viel
story-early-stop = Die Zählung wurde zu früh abgebrochen
story-overshoot = Es wurde über die Entfernung hinaus weitergegangen
story-digits-transposed = Ziffern der Koordinate waren vertauscht
story-digit-wrong = Eine Ziffer der Koordinate war falsch
story-easting-northing-swapped = Rechtswert und Hochwert wurden verwechselt
story-wrong-plotting-scale = { -point(form: "many") } wurden mit dem Planzeiger eines anderen Maßstabs eingetragen
story-wrong-point = Andere { -point(form: "many") } wurden für die der Bahn gehalten

story-other = Mehreren Abschnitten gemeinsam: { $cause }
story-told = { $story }{ $size ->
    [none] {""}
   *[some] {" "}({ $size })
}, { $where }{ $after ->
    [yes] , danach richtig
   *[no] {""}
} ({ $sure } wahrscheinlich).
story-size-ratio = { $ratio } der Entfernung
story-on-every = auf jedem Abschnitt
story-from = ab Abschnitt { $first }
story-on-run = auf den Abschnitten { $first } bis { $last }
story-on = auf den Abschnitten { $names }
