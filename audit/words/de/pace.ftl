# Das Schrittmaß.

pace-strip = { $file }: { $length } ±{ $within }, { $by ->
    [given] wie angegeben
    [ends] gerade, von Ende zu Ende
   *[path] entlang des geglätteten Weges
} ({ $noise_from ->
    [none] Empfänger mit { $noise } m angenommen
   *[halts] Empfänger { $noise } m, nach seinen Halten
}){ $counted ->
    [none] {""}
   *[some] , { $counted } { $pace ->
    [single] Einfachschritte
   *[double] Doppelschritte
} gezählt
}
pace-counted = Gezählt: { $rate } { $pace ->
    [single] Einfachschritte
   *[double] Doppelschritte
} auf { $length }, über { $over } (±: 95 %)
pace-by-cadence = Nach der Schrittfrequenz: { $rate } { $pace ->
[single] Einfachschritte
   *[double] Doppelschritte
} auf { $length }, über { $over } (±: 95 %)
pace-uphill = bergauf
pace-level = eben
pace-downhill = bergab
pace-ground = { $ground }: { $rate }, über { $over }
pace-no-ground = { $file }: Gelände nicht unterschieden: { $why }.
pace-left-out = { $file }: { $length } ohne Schrittfrequenz blieben dabei weg.
pace-silent = { $file }: { $length } liegen in Lücken der Aufzeichnung.
pace-ridden = { $file }: { $length } wurden schneller zurückgelegt, als jemand geht.
pace-walk-each = Die Zählungen unterscheiden nicht zwischen bergauf, eben und bergab: von jedem eine Strecke gehen.
pace-nothing = Kein Schrittmaß: Nichts wurde gezählt, und keine Aufzeichnung enthält eine Schrittfrequenz.
pace-on-a-leg = Auf einem Abschnitt von { $leg } kann das Schrittmaß selbst um { $off } falsch sein (95 %), und um mehr auf anderem Gelände,
    bei Nacht oder mit Gepäck.
pace-receiver = Das meiste davon macht der Empfänger aus: eine längere Strecke gehen oder ihre Länge mit --strip angeben.
pace-for-plan = Für den Plan, unter [course]:
pace-few-elevations = zu wenige Höhen
pace-scattered = die Höhen streuen bei Halten um { $scatter } m
pace-few-on-leg = zu wenige Höhen auf diesem Abschnitt
pace-too-steep = { $share } des Weges wären steiler, als jemand geht
