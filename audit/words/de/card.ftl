# Die Marschskizze zum Mitnehmen.

card-title = { $course }: Marschskizze
card-day = { $day }, { $legs ->
    [one] { $legs } Abschnitt
   *[other] { $legs } Abschnitte
}, { $distance }
card-day-unknown = Tag nicht angegeben
card-grid = Gitter { $grid }
card-angle = Nadelabweichung { $angle } ({ $from })
card-angle-computed = berechnet für { $day }
card-angle-of = von { $day }
card-angle-no-year = ihr Jahr ist nicht angegeben
card-count = { $paces } { $pace ->
    [single] Einfachschritte
   *[double] Doppelschritte
} auf { $length }
card-count-blank = Schrittmaß: ______ auf { $length }

card-warnings = Warnungen
card-not-yet = Noch nicht mitnehmen: { $count ->
    [one] { $count } Angabe ist
   *[other] { $count } Angaben sind
} zu berichtigen; siehe leg-audit check.
card-free = Die { -point(form: "many") } dürfen in beliebiger Reihenfolge angelaufen werden; diese Abschnitte folgen der Datei.
card-no-year = Der Plan sagt nicht, aus welchem Jahr die Nadelabweichung ist: am Kartenrand nachsehen.
card-old = Die Nadelabweichung ist { $years } Jahre alt: nicht danach gehen. Sie einer neuen Karte entnehmen oder im Plan
    weglassen, damit sie berechnet wird.
card-in-doubt = Alles mit dem Zeichen ! ist mit der Nadelabweichung gerechnet, wie der Plan sie angibt, { $angle }: diese
    richtigstellen, bevor etwas davon eingestellt wird.
card-disputed = Was das Zeichen ! trägt ({ $legs }), bestätigt die Prüfung nicht, oder es ist aus einer solchen Zahl gerechnet:
    richtigstellen, bevor etwas davon eingestellt oder gezählt wird.
card-in-doubt-both = Was das Zeichen ! trägt, ist mit der Nadelabweichung gerechnet, wie der Plan sie angibt, { $angle }, oder
    ist eine Zahl ({ $legs }), die die Prüfung nicht bestätigt, oder daraus gerechnet: Nadelabweichung und Zahlen
    richtigstellen, bevor etwas davon eingestellt oder gezählt wird.
card-marked = ! { $value }

card-safety = Sicherheitsrichtung
card-safety-none = steht nicht im Plan. Danach fragen: ______ magnetisch, führt zu __________________
card-safety-said = { $magnetic } magnetisch ({ $total })
card-safety-magnetic = magnetisch angegeben; Gitter { $grid }
card-safety-grid = Gitter { $grid } − { $angle } = { $magnetic }
card-safety-true = gegen geographisch Nord angegeben; { $total }
card-safety-bezel = Drehring: { $setting }

card-leg = Abschnitt { $title }
card-leg-title = { $leg }: { $start } bis { $end }
card-ends = { $start } bis { $end }
card-ends-reckoned = { $start } bis { $end } (wohin Richtung und Entfernung führen)
card-via = Zwischenpunkt { $number }
card-piece = { $start } bis { $end }: { $from_reference } bis { $to_reference }
card-all-pieces = zusammen: { $what }
card-plan-gives = { $value } (Plan { $given })
card-magnetic = magnetisch
card-grid-azimuth = Gitter
card-true = wahr
card-back = zurück (magn.)
card-distance = Entfernung
card-paces = { $pace ->
    [single] Einfachschritte
   *[double] Doppelschritte
}
card-clicks = Drehring-Rasten
card-clicks-said = { $count }{ $hand ->
    [left] {" "}links
    [right] {" "}rechts
   *[none] {""}
}
card-climb = Anstieg
card-climb-said = +{ $up } −{ $down } m
card-paces-walked = { $pace ->
    [single] Einfachschritte
   *[double] Doppelschritte
} gegangen
card-left-at = Aufbruch
card-reached-at = Ankunft
card-time = Zeit: { $times }
card-note = Vermerk: { $note }

card-setting = { $count ->
    [0] keine Raste stellt
    [one] { $count } Raste nach { $hand ->
        [left] links
       *[right] rechts
    } stellt
   *[other] { $count } Rasten nach { $hand ->
        [left] links
       *[right] rechts
    } stellen
} { $azimuth } ein{ $off }
card-setting-off = , { $size } zu weit { $side ->
    [left] links
   *[right] rechts
}
card-ends-on-line = { $setting }: endet auf der Linie
card-ends-near = { $setting }: endet { $size } von { $point } entfernt
card-ends-off = { $setting }: endet { $size } { $side ->
    [left] links
   *[right] rechts
} von { $point }; { $side ->
    [left] rechts
   *[right] links
} suchen

card-all-legs = Alle Abschnitte
card-whole = { $distance }; { $climb }
card-climb-unknown = Anstieg: nicht bekannt, keine Höhen angegeben
card-climb-whole = Anstieg { $up } m, Abstieg { $down } m ({ $from })
card-times = Zeiten ohne Rast: { $times }.
card-level = Für die Zeiten gilt das Gelände als eben.
card-level-legs = Für die Zeiten dieser Abschnitte gilt das Gelände als eben: { $legs }.

card-angle-heading = Nadelabweichung
card-bezel = Drehring
card-bezel-turning = Rasten von { $click }°, { $round } rund um den Drehring. Liegt der Strich des Drehrings über dem Ablesestrich,
    ist 0 eingestellt. Nach links (gegen den Uhrzeigersinn, von oben gesehen) zählt dazu, nach rechts zieht ab. Dann
    sich mit dem Kompass drehen, bis der Nordpfeil unter dem Strich liegt.
card-bezel-ten = Also ist 10 rechts gleich { $left } links.
card-bezel-angle = Die Nadelabweichung allein, { $angle }: { $clicks } Rasten{ $hand ->
    [left] , nach links
    [right] , nach rechts
   *[none] {""}
}.
card-bezel-leg = Auf Abschnitt { $leg }, vom eingestellten Gitter { $grid } aus: { $ways }.
card-bezel-or = { $before }. Oder { $last }
card-bezel-dark = Wer die Skala ablesen kann, stellt die Richtung selbst ein: Rasten sind für die Dunkelheit.
card-rules = Zeiten, ohne Rast
