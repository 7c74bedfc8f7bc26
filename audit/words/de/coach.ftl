# Was beizubehalten und was zu üben ist.

coach-keep-azimuth = Die Richtung gehalten
coach-azimuth = { $legs }: Die gegangene Richtung lag höchstens { $worst } neben der der Marschskizze; das Maß für eine anvisierte Richtung ist { $standard }.
coach-keep-distance = Die Entfernung gezählt
coach-distance = { $legs }: Die gegangene Entfernung wich höchstens { $worst } von der Marschskizze ab.
coach-keep-arriving = Angekommen, wo die Schrittzahl es sagte
coach-arriving = { $legs }: Die Schrittzahl endete am { -point }, im Mittel { $mean } davon.
coach-keep-finding = Den { -point } nach einer Ablage gefunden
coach-finding = { $legs }: Die Schrittzahl endete bis zu { $farthest } daneben, und der { -point } wurde trotzdem gefunden.
coach-keep-through = Bis zum Ende gegangen
coach-through = { $count ->
    [one] Der eine Abschnitt des Plans wurde gegangen.
   *[other] Alle { $count } Abschnitte wurden gegangen, in der Reihenfolge des Plans.
}
coach-keep-log = Ein Marschtagebuch geführt
coach-log = Das Marschtagebuch sagt, was eingestellt und gezählt wurde; das entscheidet, was die Aufzeichnung nicht kann.
coach-keep-recording = Den Weg aufgezeichnet
coach-recording = { $count ->
    [one] { $count } Abschnitt wurde
   *[other] { $count } Abschnitte wurden
} gut genug aufgezeichnet, um gemessen zu werden.
coach-named = Was zu sehen war, passt dazu: { $legs } ({ $sure } auf Abschnitt { $leg }). { $evidence }
coach-entered = { $legs }, wo { $done }; Abschnitt { $leg }: { $said }
coach-done-given = die Koordinate aufgeschrieben wurde
coach-done-plotted = der { -point } eingetragen wurde
coach-done-measured = die Richtung gemessen wurde
coach-done-converted = Gitter in magnetisch umgerechnet wurde
coach-done-set = der Kompass eingestellt wurde
coach-done-walked = die Linie gehalten wurde
coach-done-distance-measured = die Entfernung gemessen wurde
coach-done-turned-into-paces = die Entfernung in { -pace } umgerechnet wurde
coach-done-paced = die { -pace } gezählt wurden
coach-done-recognised = der { -point } zu erkennen war
coach-part = Hier ist kein Fehler benannt; es ist der { $part ->
    [heading] Richtungsanteil
    [distance] Entfernungsanteil
    [start] Anteil des Anfangs
   *[point] Anteil am { -point }
} der Ablagen: im Mittel { $mean } je Abschnitt, { $most } auf Abschnitt { $leg }.
coach-unreached = { $count ->
    [one] { $legs }: { -point } nicht erreicht.
   *[other] { $legs }: die { -point(form: "many") } nicht erreicht.
}
coach-keep = { $what }. { $evidence }
coach-work-on = { $what }. { $evidence } Fünf Minuten: { $exercise }
coach-next = Als Nächstes anzusehen
