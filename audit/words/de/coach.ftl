# Was beizubehalten und was zu üben ist.

coach-keep-azimuth = Die Richtung gehalten
coach-azimuth = Auf { $legs } wich die gegangene Richtung höchstens { $worst } von der Marschskizze ab; für eine anvisierte Richtung gelten { $standard } als Maß.
coach-keep-distance = Die Entfernung gezählt
coach-distance = Auf { $legs } wich die gegangene Entfernung höchstens { $worst } von der Marschskizze ab.
coach-keep-arriving = Mit dem Ende der Zählung am { -point } angekommen
coach-arriving = { $count ->
    [one] Auf { $legs } endete die Zählung am { -point }, { $mean } davon.
   *[other] Auf { $legs } endete die Zählung am { -point }, im Mittel { $mean } davon.
}
coach-keep-finding = Den { -point } gefunden, obwohl die Zählung daneben endete
coach-finding = { $count ->
    [one] Auf { $legs } endete die Zählung { $farthest } daneben, und der { -point } wurde trotzdem gefunden.
   *[other] Auf { $legs } endete die Zählung bis zu { $farthest } daneben, und der { -point } wurde trotzdem gefunden.
}
coach-keep-through = Bis zum Ende gegangen
coach-through = { $count ->
    [one] Der eine Abschnitt des Plans wurde gegangen.
   *[other] Alle { $count } Abschnitte wurden gegangen, in der Reihenfolge des Plans.
}
coach-keep-log = Ein Marschprotokoll geführt
coach-log = { $holds ->
    [both] Das Marschprotokoll sagt, was eingestellt und gezählt wurde; es entscheidet, was die Aufzeichnung nicht entscheiden kann.
    [set] Das Marschprotokoll sagt, was eingestellt wurde; es entscheidet, was die Aufzeichnung nicht entscheiden kann.
    [counted] Das Marschprotokoll sagt, was gezählt wurde; es entscheidet, was die Aufzeichnung nicht entscheiden kann.
   *[ends] Das Marschprotokoll sagt, wann die Abschnitte endeten; es trennt sie, wo die Aufzeichnung es nicht tut.
}
coach-keep-recording = Den Weg aufgezeichnet
coach-recording = { $count } von { $legs ->
    [one] { $legs } Abschnitt
   *[other] { $legs } Abschnitten
} gut genug aufgezeichnet, um beurteilt zu werden.
coach-named = Was auf { $legs } zu sehen war, passt dazu ({ $sure } auf Abschnitt { $leg }). { $evidence }
coach-named-one = Was auf { $legs } zu sehen war, passt dazu ({ $sure }). { $evidence }
coach-beside = Neben einem größeren Fehler wurde er wohl gemacht: { $legs } ({ $sure } auf Abschnitt { $leg }). { $evidence }
coach-either = { $one } oder { $other }
coach-one-of = Was auf { $legs } zu sehen war, passt zu beidem, und kein Abschnitt unterscheidet sie ({ $sure } zusammen auf Abschnitt { $leg }). { $evidence }
coach-one-of-one = Was auf { $legs } zu sehen war, passt zu beidem, und nichts dort unterscheidet sie ({ $sure } zusammen). { $evidence }
coach-exercises = { $one } Und für das andere: { $other }
coach-entered = { $legs }, beim { $done }; Abschnitt { $leg }: { $said }
coach-done-given = Aufschreiben der Koordinate
coach-done-plotted = Eintragen des { -point(form: "of") }
coach-done-measured = Messen der Richtung
coach-done-converted = Umrechnen von Gitter in magnetisch
coach-done-set = Einstellen des Kompasses
coach-done-walked = Halten der Linie
coach-done-set-or-walked = Einstellen des Kompasses oder Halten der Linie
coach-done-distance-measured = Messen der Entfernung
coach-done-turned-into-paces = Umrechnen der Entfernung in { -pace }
coach-done-paced = Zählen der { -pace }
coach-done-recognised = Erkennen des { -point(form: "of") }
coach-order = Auf { $legs } endeten die Zählungen bei den { -point(form: "to") } anderer Abschnitte, als wären sie in anderer Reihenfolge gegangen worden als auf der Marschskizze: { $went }.
coach-went = Abschnitt { $leg } bei { $point } statt { $planned }
coach-by-count = { $said } Die gegangene Entfernung bestätigt das nicht: Es liegt am Schrittmaß oder daran, wie gezählt wurde.
coach-part = Auf { $legs } ist kein Fehler benannt; zu üben ist der Teil der { $count ->
    [one] Ablage
   *[other] Ablagen
} dort, der { $part ->
    [heading] aus der Richtung kommt
    [distance] aus der Entfernung kommt
   *[start] schon am Beginn da war
}: { $count ->
    [one] { $most }.
   *[other] im Mittel { $mean } je Abschnitt, { $most } auf Abschnitt { $leg }.
}
coach-lean = Auf { $legs } lag der Weg { $side ->
    [right] rechts
   *[left] links
} der Richtung, im Mittel der { $count } Abschnitte, die kein benannter Fehler verschob, um { $mean }, auf { $error } genau.
    Dahinter können Nadelabweichung, Kompass oder der eigene Drall stehen; der Weg unterscheidet sie nicht.
coach-stretch = Auf { $legs } ging der Weg { $side ->
    [far] zu weit
   *[short] zu kurz
}, im Mittel der { $count } Abschnitte, deren Entfernung kein benannter Fehler verschob, um { $mean } der Entfernung, auf { $error } genau.
    Dahinter können der Schritt dieses Tages, das Schrittmaß der Marschskizze, die Art zu zählen oder das Gelände stehen; der Weg unterscheidet sie nicht.
coach-passed = { $count ->
    [one] Auf { $legs } ist kein Fehler benannt; dort kam der Weg bis auf { $near } an den { -point } heran, und die Zählung endete { $miss } davon.
   *[other] Auf { $legs } ist kein Fehler benannt; dort kam der Weg in Sichtweite der { -point(form: "many") }: auf Abschnitt { $leg } bis auf { $near }, und die Zählung endete { $miss } davon.
}
coach-keep = { $what }. { $evidence }
coach-work-on = { $what }. { $evidence } Fünf Minuten: { $exercise }
coach-next = Als Nächstes anzusehen
coach-nothing-else = { $walked ->
    [all] {""}
   *[some] Auf den gegangenen Abschnitten:{" "}
}{ $count ->
    [0] Nichts fällt auf.
   *[other] Sonst fällt nichts auf.
}
coach-left-aside = { $count ->
    [one] { $legs } bleibt hier beiseite: Es ist nicht sicher genug, wann er gegangen wurde oder wo er endete.
   *[other] { $legs } bleiben hier beiseite: Es ist nicht sicher genug, wann sie gegangen wurden oder wo sie endeten.
}
