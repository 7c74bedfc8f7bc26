# Versehen; davor steht „Dazu passt:“.

slip-grid-as-it-stood = die unverändert eingestellte Gitterrichtung
slip-clicks = { $count } Rasten eines Drehrings
slip-dial = eine um einen Teilstrich von { $size } falsch abgelesene Teilung
slip-omitted = die Nadelabweichung weggelassen
slip-reversed = die Nadelabweichung mit falschem Vorzeichen angebracht
slip-doubled = die Nadelabweichung zweimal angebracht
slip-declination = die Missweisung statt der Nadelabweichung verwendet
slip-back = die Gegenrichtung
slip-back-omitted = die Gegenrichtung mit weggelassener Nadelabweichung
slip-magnetic-for-grid = die magnetische Richtung statt der Gitterrichtung
slip-magnetic-for-true = die magnetische Richtung statt der geographischen
slip-applied-reversed = die Nadelabweichung angebracht, aber mit falschem Vorzeichen
slip-true-for-grid = die geographische Richtung statt der Gitterrichtung
slip-quarter = der Winkelmesser um eine Vierteldrehung verdreht
slip-convergence-omitted = die Meridiankonvergenz weggelassen
slip-convergence-reversed = die Meridiankonvergenz mit falschem Vorzeichen
slip-east-for-west = Ost und West verwechselt
slip-declination-given = die Missweisung statt der Nadelabweichung angegeben
slip-of-leg = die Richtung von Abschnitt { $leg }
slip-point-lost = ein Komma verloren ({ $given } statt { $meant })
slip-point-too-many = ein Komma zu viel ({ $given } statt { $meant })
slip-mils = Strich als Grad geschrieben ({ $given } statt { $meant })
slip-point-and-side = ein Komma verloren und die Seite vertauscht ({ $given } statt { $meant })
slip-swapped = zwei Ziffern vertauscht ({ $given } statt { $meant })
slip-one-wrong = eine Ziffer falsch ({ $given } statt { $meant })
slip-mils-for-degrees = Strich als Grad geschrieben ({ $given } Strich sind { $meant } Grad)
slip-degrees-for-mils = Grad als Strich geschrieben ({ $given } Grad sind { $meant } Strich)
slip-mil-circle = eine Strichteilung mit { $circle } auf den Kreis ({ $given } statt { $meant })
slip-fits = {" "}Dazu passt: { $slips }.
slip-another-scale = das Lineal eines anderen Maßstabs
slip-single-double = Einfach- und Doppelschritte verwechselt
slip-hundreds-many = { $count ->
    [1] hundert
   *[other] { $count }00
} Meter zu viel
slip-hundreds-lost = { $count ->
    [1] hundert
   *[other] { $count }00
} Meter verloren
slip-pace-long = ein Schrittmaß, mit dem man zu weit kommt
slip-pace-short = ein Schrittmaß, mit dem man nicht weit genug kommt
slip-steady-turn = eine gleichbleibende Abweichung nach einer Seite
slip-via = der Weg zum ersten Zwischenpunkt
slip-kilometres = Kilometer statt Metern geschrieben
slip-straight = die gerade Linie statt der über die Zwischenpunkte
slip-twice-scale = ein Lineal für doppelten Maßstab
slip-half-scale = ein Lineal für halben Maßstab
slip-distance-of = die Entfernung von Abschnitt { $leg }
slip-paces-of = die Schrittzahl von Abschnitt { $leg }
slip-single-for-double = Einfachschritte statt Doppelschritten gezählt
slip-double-for-single = Doppelschritte statt Einfachschritten gezählt
slip-points-distance = die Entfernung zwischen seinen { -point(form: "to") }
slip-paces-of-hundreds = die { -pace } für { $metres }
slip-hundreds-too-much = { $count ->
    [1] hundert
   *[other] { $count }00
} Meter zu viel
slip-hundreds-too-little = { $count ->
    [1] hundert
   *[other] { $count }00
} Meter zu wenig
slip-axes-swapped = Rechts- und Hochwert vertauscht
slip-axis-swapped = zwei Ziffern vertauscht im { $axis ->
    [easting] Rechtswert
   *[northing] Hochwert
}
slip-degrees-swapped = zwei Ziffern vertauscht in der { $axis ->
    [latitude] Breite
   *[longitude] Länge
}
slip-degrees-wrong = eine falsche Ziffer ({ $given } statt { $meant }) in der { $axis ->
    [latitude] Breite
   *[longitude] Länge
}
slip-degrees-exchanged = Breite und Länge vertauscht
slip-degrees-side = { $axis ->
[latitude] die falsche Seite des Äquators
   *[longitude] die falsche Seite von Greenwich
}
slip-axis-next-line = von der nächsten Gitterlinie genommen: { $axis ->
    [easting] Rechtswert
   *[northing] Hochwert
}
slip-axis-wrong = eine falsche Ziffer ({ $given } statt { $meant }) im { $axis ->
    [easting] Rechtswert
   *[northing] Hochwert
}
slip-axis-carried = eine Ziffer um eins daneben, mit Übertrag ({ $given } statt { $meant }), im { $axis ->
    [easting] Rechtswert
   *[northing] Hochwert
}
slip-another-square = die Buchstaben eines anderen 100-km-Quadrats
slip-another-zone = die Buchstaben einer anderen Zone
slip-parts-doubled = die Teile im Gitterquadrat verdoppelt
slip-parts-halved = die Teile im Gitterquadrat halbiert
