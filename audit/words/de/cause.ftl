# Jede Ursache in einfachen Worten; ergänzt „Dazu passt: ...“.

cause-within-skill = übliche Ungenauigkeit
cause-cannot-tell = eine Ursache, die sich aus den Belegen nicht entscheiden lässt
cause-gm-angle-omitted = die Nadelabweichung weggelassen
cause-gm-angle-reversed = die Nadelabweichung mit falschem Vorzeichen angebracht
cause-gm-angle-doubled = die Nadelabweichung zweimal angebracht
cause-declination-for-gm-angle = Missweisung statt Nadelabweichung verwendet
cause-gm-angle-stale = eine veraltete Nadelabweichung
cause-reciprocal = in der Gegenrichtung gegangen, um 180° verkehrt
cause-right-angle = eine um 90° falsche Richtung
cause-bezel-clicks = der Drehring um einige Rasten falsch eingestellt
cause-bezel-wrong-way = der Drehring in die falsche Richtung gedreht
cause-mils-as-degrees = Strich und Grad miteinander verwechselt
cause-wrong-mil-circle = ein Kompass mit anderer Strichteilung
cause-azimuth-digits = eine falsche oder vertauschte Ziffer { -azimuth.gender ->
    [feminine] in der
    [neuter] im
   *[masculine] im
} { -azimuth }
cause-dial-misread = die Skala um einen Teilstrich falsch abgelesen
cause-neighbour-azimuth = { -azimuth.gender ->
    [feminine] die
    [neuter] das
   *[masculine] der
} { -azimuth } eines anderen Abschnitts
cause-magnetic-disturbance = Eisen oder Strom in der Nähe des Kompasses
cause-steady-bias = eine gleichbleibende Abweichung von Kompass oder Gehendem nach einer Seite
cause-hundred-miscounted = ein Hunderter beim Zählen verloren oder zu viel
cause-single-double-pace = Einfach- und Doppelschritte verwechselt
cause-pace-long = ein Schrittmaß, mit dem man zu weit kommt
cause-pace-short = ein Schrittmaß, mit dem man nicht weit genug kommt
cause-wrong-ruler = das Lineal eines anderen Kartenmaßstabs
cause-slope-paced = die Schrägstrecke als Kartenentfernung abgeschritten
cause-early-stop = zu früh angehalten
cause-overshoot = über die Entfernung hinaus weitergegangen
cause-bypass-paced = die seitlichen Schritte einer Umgehung mitgezählt
cause-veer = eine Linie, die sich beim Gehen krümmt
cause-sidehill = am Hang talwärts abgekommen
cause-handrail = von einer Leitlinie im Gelände mitgezogen
cause-bypass-unequal = eine Umgehung mit ungleich langen Seiten
cause-obstacle-one-side = Hindernisse immer auf derselben Seite umgangen
cause-digits-transposed = zwei Ziffern der Koordinate vertauscht
cause-digit-wrong = eine falsche Ziffer in der Koordinate
cause-easting-northing-swapped = Rechts- und Hochwert vertauscht
cause-wrong-grid-line = von der falschen Gitterlinie aus eingetragen
cause-wrong-plotting-scale = mit dem Planzeiger eines anderen Maßstabs eingetragen
cause-datum = eine Koordinate in einem anderen Bezugssystem
cause-point-misplaced = der { -point } selbst am falschen Ort
cause-wrong-start = vom falschen Ort aus begonnen
cause-wrong-point = ein anderer { -point } für diesen gehalten
cause-point-skipped = den { -point } ausgelassen
cause-order-changed = die { -point(form: "many") } in anderer Reihenfolge angelaufen
cause-passed-unseen = am { -point } vorbeigegangen, ohne ihn zu sehen
