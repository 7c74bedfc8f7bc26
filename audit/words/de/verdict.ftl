# Der Weg in zwei, drei Sätzen, am Kopf der Auswertung.

verdict-nothing = Kein Abschnitt des Plans wurde in dieser Aufzeichnung gefunden.
verdict-all-arrived = Jeder gegangene Abschnitt endete im Umkreis von { $radius } um seinen { -point };
    die größte Ablage ist { $size }, auf Abschnitt { $leg }.
verdict-seen-arrived = Jeder Abschnitt, dessen Ende aufgezeichnet wurde, endete im Umkreis von { $radius } um seinen { -point };
    die größte Ablage ist { $size }, auf Abschnitt { $leg }.
verdict-sure-arrived = Jeder Abschnitt, dessen Teil der Aufzeichnung und dessen Ende sicher sind, endete im Umkreis von { $radius } um seinen { -point };
    die größte Ablage ist { $size }, auf Abschnitt { $leg }.
verdict-worst-unsure = Abschnitt { $leg } endete vielleicht { $miss } von { $end }; dass dieser Teil der Aufzeichnung zu ihm gehört, ist nur zu { $sure } sicher.
verdict-worst-reckoned = Abschnitt { $leg } endete vielleicht { $miss } von { $end }; wo er begann oder endete, ist dafür nicht sicher genug.
verdict-worst = { $of ->
    [sure] Von den Abschnitten, die sicher sind, liegt am weitesten daneben
   *[all] Am weitesten daneben liegt
} { $named ->
    [yes] der Abschnitt nach { $leg }
   *[no] Abschnitt { $leg }
}: Die Zählung endete { $miss } von
    { $end }, { $part }{ $found ->
    [no] ; der { -point } wurde nicht gefunden
    [close] ; ob der { -point } gefunden wurde, ist zu knapp, um es zu entscheiden
   *[yes] {""}
}.
verdict-mostly = vor allem, weil { $why }
verdict-partly = teils, weil { $why }, teils, weil { $other }
verdict-why-azimuth = { $error } von der geplanten Richtung gegangen wurde
verdict-led-there = Dorthin führte { $named ->
    [yes] der Abschnitt nach { $leg }
   *[no] Abschnitt { $leg }
}: Seine Zählung endete { $miss } von { $end }, { $part }.
verdict-why-distance = { $error } gegangen wurde
verdict-why-inherited = der Abschnitt neben seinem { -point } begonnen wurde
verdict-why-plan = Marschskizze und { -point(form: "many") } des Plans nicht zusammenpassen
verdict-why-detour = ein Umweg nicht zurückgegangen wurde
verdict-no-part = und kein Teil davon hebt sich vom Messfehler ab
verdict-line-left = { $legs } { $count ->
    [one] wurde
   *[other] wurden
} nicht entlang der geplanten Linie gegangen.
verdict-no-why = { $rest ->
    [own] Was auf { $leg } selbst hinzukam, erklären die Belege nicht.
   *[no] Die Belege sagen nicht, warum.
}
verdict-led-by = Zu Abschnitt { $before } davor passt: { $cause }; mit { $point } an falscher Stelle wurde Abschnitt { $leg } vielleicht von dort aus gemessen.
verdict-beside-shared = Die Belege sagen nicht, warum: Gegangen wurde { $left } von dem, was { $legs } gemeinsam haben.
verdict-undecided = { $rest ->
    [own] Für das, was auf { $leg } selbst hinzukam, ist die Ursache { $cause }.
    [yes] Für den übrigen Teil ist die Ursache { $cause }.
   *[no] Die Ursache ist { $cause }.
}
verdict-consistent = { $rest ->
    [own] Zu dem, was auf { $leg } selbst hinzukam,
    [yes] Zum übrigen Teil
   *[no] Dazu
} passt: { $cause }.
verdict-consistent-shared = { $rest ->
    [own] Zu dem, was auf { $leg } selbst hinzukam,
    [yes] Zum übrigen Teil
   *[no] Dazu
} passt: { $cause }; ebenso zu { $many ->
    [yes] den Ablagen
   *[no] der Ablage
} auf { $legs }.
verdict-left-over = Abschnitt { $leg } wurde { $left } von dem gegangen, was das voraussagt; so viel erklärt es nicht.
verdict-beside = Daneben passt, was zu sehen war, auf { $legs } zu: { $cause } ({ $sure }).
verdict-other-order = Die { -point(form: "many") } wurden in anderer Reihenfolge angelaufen als geplant: { $points } ({ $sure }).
verdict-left-out = { $points } { $count ->
    [one] wurde
   *[other] wurden
} ausgelassen ({ $sure }).
verdict-count = { $walked } von { $legs ->
    [one] { $legs } Abschnitt
   *[other] { $legs } Abschnitten
} gegangen, { $reached } von { $legs ->
    [one] { $legs } { -point }
   *[other] { $legs } { -point(form: "to") }
} auf dem eigenen Abschnitt erreicht{ $rest }.
verdict-too-close = , { $count } zu knapp, um es zu entscheiden
verdict-also-passed = ; vorbeigekommen, aber nicht auf { $count ->
    [one] dem eigenen Abschnitt
   *[other] den eigenen Abschnitten
}: { $points }
verdict-rest = ; { $legs } { $status }
verdict-plan-angle = Die Nadelabweichung des Plans, { $angle }, hält einer Prüfung nicht stand. Sie berichtigen,
    ehe einem Gehenden eine Abweichung dieser Größe angelastet wird.
verdict-unsure = Welcher Teil der Aufzeichnung zu { $legs } gehört, ist nicht sicher: erst auf der Karte
    ansehen, dann diesen Zahlen trauen.
