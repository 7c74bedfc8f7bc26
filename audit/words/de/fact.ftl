# Tatsachen neben den Bildern: Namen und was darunter steht.

fact-date = Datum
fact-date-unknown = nicht bekannt
fact-recording = Aufzeichnung
fact-not-named = ohne Namen
fact-grid = Kartengitter
fact-radius = Ankunftsradius
fact-pace-count = Schrittmaß
fact-pace-count-said = { $paces } { -pace } auf 100 m
fact-pace-count-by-log = nach den Zählungen des Marschprotokolls und dem gegangenen Weg { $paces }, auf { $error } genau

fact-planned = Geplant
fact-planned-said = Gitter { $grid }, magnetisch { $magnetic }, Gegenrichtung { $back } Gitter; { $distance }{ $paces ->
    [none] {""}
   *[some] , { $paces } { -pace }
}
fact-note = Vermerk
fact-log-note = Vermerk im Marschprotokoll
fact-azimuth = Gitterrichtung
fact-azimuth-said = { $walked } (95-%-Bereich { $interval }{ $doubted ->
    [yes] , wenn dieser Teil der Aufzeichnung der Abschnitt ist
   *[no] {""}
}): { $error }
fact-distance = Entfernung
fact-distance-line-left = { $straight } gerade, { $path } über Grund: Die geplante Linie von { $line } wurde nicht eingehalten
fact-distance-said = { $straight } gerade, { $path } über Grund{ $along ->
    [none] {""}
   *[some] , { $along } längs der geplanten Linie
}: { $error } ({ $ratio } der geplanten)
fact-distance-in-part = { $straight } gerade, { $path } über Grund: was davon aufgezeichnet ist, nicht der ganze Abschnitt
fact-paces = { -pace }
fact-paces-by-log = { $paces }, gezählt, laut Marschprotokoll
fact-paces-by-count = { $paces } nach dem Schrittmaß zu erwarten, nicht gezählt
fact-time = Zeit
fact-time-said = { $time }{ $standing ->
    [none] {""}
   *[some] , davon { $standing } gestanden
}{ $unseen ->
    [none] {""}
   *[some] , { $unseen } davon nicht aufgezeichnet
}{ $begin ->
    [none] {""}
   *[some] {" "}({ $begin } bis { $end } { $clock })
}
fact-off-line = Seitenabweichung
fact-off-line-said = { $end } am angenommenen Ende, höchstens { $most }, quadratisches Mittel { $rms }; gemessen an der geplanten Linie
fact-own-line = Eigene Linie
fact-own-line-on = { $began } von { $start } begonnen; am angenommenen Ende auf der eigenen Linie
fact-own-line-off = { $began } von { $start } begonnen; am angenommenen Ende { $side } der eigenen Linie
fact-miss = Ablage
fact-miss-said = { $miss } vom { -point }, ±{ $error } nach jeder Seite (Standardfehler): { $where }, in der Richtung der Marschskizze gesehen
fact-level-with = auf gleicher Höhe, { $across }
fact-beyond = { $along } dahinter, { $across }
fact-short-of = { $along } davor, { $across }
fact-nearest = Am nächsten
fact-nearest-reached = { $size }{ $time ->
    [none] {""}
   *[some] {" "}vom { -point }, { $time } { $clock }
}; erreicht
fact-nearest-not = { $size }{ $time ->
    [none] {""}
   *[some] {" "}vom { -point }, { $time } { $clock }
}; nicht erreicht
fact-nearest-too-close = { $size }{ $time ->
[none] {""}
   *[some] {" "}vom { -point }, { $time } { $clock }
}; zu knapp, um zu entscheiden, ob er erreicht wurde
fact-match = Zuordnung
fact-match-said = zu { $sure } sicher, dass dies der Teil der Aufzeichnung ist
fact-gaps = Lücken
fact-gaps-said = { $share } der Strecke wurden nicht aufgezeichnet{ $time ->
[none] {""}
   *[some] , dazu { $time } der Zeit
}{ $reckoned ->
    [start] ; wo der Abschnitt begann, ist errechnet
    [claim] ; wo er endete, ist errechnet
    [both] ; wo der Abschnitt begann und wo er endete, ist errechnet
   *[none] {""}
}
fact-step = Schritt
fact-what-if = Was wäre wenn
fact-what-if-said = mit der geplanten Richtung hätte die Zählung { $azimuth } geendet, mit der geplanten
    Entfernung { $distance }
fact-from-the-point = { $size } vom { -point } (±{ $error } nach jeder Seite)

fact-line-kept = Linie gehalten
fact-line-kept-said = auf { $share } des Weges auf der geplanten Linie, soweit sich { $band } unterscheiden lassen; auf { $inside } höchstens { $corridor } daneben
fact-line-left = { $line }; ab { $from } endgültig daneben, nach { $side ->
    [left] links
   *[right] rechts
}
fact-drift = Richtungsänderung
fact-drift-said = vom ersten zum letzten Drittel { $turn } ({ $interval })
fact-point = { -point }
fact-point-said = { $verdict }; Wahrscheinlichkeit, dass der Gehende auf { $radius } herankam: { $sure } nach dem, was zu sehen ist{ $silence }{ $elsewhere }
fact-point-silence = ; in einer Lücke der Aufzeichnung kann er bis auf { $size } herangekommen sein
fact-point-elsewhere = ; mit einer Wahrscheinlichkeit von { $chance } ist ein anderer Teil der Aufzeichnung dieser Abschnitt, und dort kam er auf { $size } heran
fact-verdict-found = gefunden
fact-verdict-missed = verfehlt
fact-verdict-too-close-to-call = zu knapp, um es zu entscheiden
fact-climb = Höhenmeter
fact-climb-said = { $up } m hinauf, { $down } m hinab, laut Aufzeichnung
fact-bypass = Umgehung
fact-bypass-said = { $side ->
    [left] links
   *[right] rechts
}: { $out } hinaus, { $on } voran, { $back } zurück; { $even ->
    [yes] so weit zurück wie hinaus
   *[no] nicht so weit zurück wie hinaus
}
fact-passed-aside = { $side ->
[left] links
   *[right] rechts
}: { $out } zur Seite auf { $on }, und nicht zurück auf die Linie
fact-search = Suche
fact-search-said = { $shape }, { $time }, { $path } gegangen, bis { $reach } vom Beginn der Suche entfernt{ $past }
fact-search-none = keine: geradewegs zum { -point } gegangen, { $time }, { $path } gegangen
fact-search-past = ; bis { $past } über den { -point } hinaus, entlang der geplanten Linie: Vielleicht lief die Zählung weiter, und es war keine Suche
fact-search-square = im wachsenden Quadrat
fact-search-fan = hin und zurück wie ein Fächer
fact-search-straight-on = geradeaus weiter
fact-search-wandering = ohne Muster
fact-stops = Halte
fact-stops-said = unterwegs { $count }, wie zum neuen Anvisieren

fact-fixes = Ortungen
fact-fixes-said = { $recorded } aufgezeichnet, { $kept } behalten
fact-times = Zeiten
fact-times-none = keine; es gibt keine Zeitangaben
fact-from = Von
fact-from-said = { $begin } bis { $end }
fact-interval = Abstand
fact-interval-said = { $interval } s (Median)
fact-noise = Empfängerrauschen
fact-noise-said = { $noise } (Standardabweichung nach jeder Seite; aus { $source })
fact-cleaned = Bereinigt
fact-cleaned-said = { $what }: { $count } ({ $detail })
fact-cleaned-nothing = nichts zu bereinigen
fact-clock-utc = UTC
fact-clock-from-start = seit Beginn der Aufzeichnung
fact-no-gaps = keine
fact-gaps-listed = { $count }: { $gaps } { $clock }
fact-forecast = Vorhersage
fact-forecast-inside = innerhalb der 50-%-Ellipse
fact-forecast-between = zwischen der 50-%- und der 95-%-Ellipse
fact-forecast-outside = außerhalb der 95-%-Ellipse
fact-forecast-said = { $where } (die äußere reicht { $major } der Länge nach und { $minor } quer dazu): { $nearer } der üblichen Gänge enden näher
fact-forecast-began = { $said }. Gezählt von dort, wo der Abschnitt begonnen wurde, { $off } von seinem Anfang; vom Anfang selbst enden { $whole } näher
