# Beginnt den Satz über einen Fehler, den mehrere Abschnitte teilen; „auf den Abschnitten 1 bis 3“ folgt.

story-gm-angle-omitted = Die Nadelabweichung weggelassen
story-gm-angle-reversed = Die Nadelabweichung mit falschem Vorzeichen angebracht
story-gm-angle-doubled = Die Nadelabweichung zweimal angebracht
story-declination-for-gm-angle = Missweisung statt Nadelabweichung verwendet
story-gm-angle-stale = Eine veraltete Nadelabweichung verwendet
story-steady-bias = Kompass oder Gehender nach einer Seite gedreht, um keinen bekannten Winkel
story-reciprocal = Die Gegenrichtung gegangen
story-bezel-wrong-way = Den Drehring in die falsche Richtung gedreht
story-mils-as-degrees = Strich und Grad miteinander verwechselt
story-wrong-mil-circle = Der Kompass hat eine andere Strichteilung als die Marschskizze
story-sidehill = Die Linie am Hang talwärts abgerutscht
story-pace-long = Das Schrittmaß trug zu weit
story-pace-short = Das Schrittmaß trug zu kurz
story-single-double-pace = Einfach- und Doppelschritte verwechselt
story-wrong-ruler = Entfernungen mit dem Lineal eines anderen Maßstabs gemessen
story-slope-paced = Hangstrecke als Kartenstrecke abgeschritten
story-right-angle = Um einen rechten Winkel falsch gegangen
story-azimuth-digits = Ziffern in der { -azimuth } vertauscht oder falsch
story-neighbour-azimuth = Die { -azimuth } eines anderen Abschnitts eingestellt
story-hundred-miscounted = Hunderter beim Zählen verloren oder zu viel
story-early-stop = Die Zählung zu früh abgebrochen
story-overshoot = Über die Entfernung hinausgegangen
story-digits-transposed = Ziffern der Koordinate vertauscht
story-digit-wrong = Eine Ziffer der Koordinate falsch
story-easting-northing-swapped = Rechtswert und Hochwert verwechselt
story-wrong-plotting-scale = { -point(form: "many") } mit dem Planzeiger eines anderen Maßstabs eingetragen
story-wrong-point = Andere { -point(form: "many") } für die der Strecke gehalten

story-other = Mehrere Abschnitte teilen: { $cause }
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
