# Wörter in den Bildern und hinter ihnen.

picture-map-title = Karte von { $course }, Plan und Weg
picture-walk-title = Der Weg über die Zeit
picture-target-title = Alle angenommenen Enden um ihre { -point(form: "many") }
picture-strip-title = Abschnitt { $leg }: Abstand von der geplanten Linie, Höhe und Geschwindigkeit entlang des Abschnitts
picture-dial-title = Abschnitt { $leg }: geplante und gegangene Richtung
picture-ledger-title = Abschnitt { $leg }: woraus die Ablage entstand
picture-named = { $name }: { $said }
picture-walk-said = Abstand von der geplanten Linie, Höhe und Geschwindigkeit gegen die Zeit.
picture-walk-claims = { $said } Am angenommenen Ende von { $ends }.
picture-target-leg = Abschnitt { $leg }: { $where }.
picture-dial-said = { $planned }. Gegangen: { $walked }.
picture-along = { $unit ->
    [yards] Yard
   *[metres] Meter
} entlang der geplanten Linie
picture-across = { $unit ->
    [yards] Yard
   *[metres] Meter
} West | Ost
picture-south-north = Süd | Nord
picture-left-right = links der Linie | rechts davon
picture-short-beyond = vor dem { -point } | dahinter
picture-since-start = Stunden und Minuten seit dem Beginn
picture-height = Höhe, m
picture-speed = Geschwindigkeit, km/h
picture-reckoned = { $said }, errechnet
picture-planned = geplant { $azimuth }
picture-walked = gegangen { $azimuth }

picture-cursor-since-start = { $time } seit dem Beginn
picture-cursor-no-time = keine Zeiten in dieser Aufzeichnung
picture-cursor-leg = Abschnitt { $name }
picture-cursor-going = Richtung { $azimuth } Gitter
picture-cursor-standing = steht
picture-cursor-left = { $size } links der geplanten Linie
picture-cursor-right = { $size } rechts der geplanten Linie
picture-cursor-on-line = auf der geplanten Linie
picture-cursor-speed = { $speed } km/h
picture-cursor-height = Höhe { $metres } m
