# Die Seite: Überschriften, Erklärungen der Bilder, Namen der Spalten.

page-title = Auswertung: { $course }
page-simulated = Simulierter Gang.
page-simulated-so = Niemand ist das gegangen.
page-short = Kurz gesagt
page-map = Plan und Weg
page-map-keys = Karte: Die Pfeiltasten verschieben sie, Plus und Minus ändern den Ausschnitt, 0 zeigt die ganze Bahn
page-more-or-less = Mehr oder weniger von der Karte zeigen
page-closer = Näher heran
page-farther = Weiter weg
page-west = Nach Westen
page-east = Nach Osten
page-north = Nach Norden
page-south = Nach Süden
page-whole-course = Ganze Bahn
page-map-note = Gitternord ist oben. GN Gitternord, MN magnetisch Nord; Nordrichtungen, die näher als { $apart }
    beieinander liegen, sind { $apart } auseinander gezeichnet. Gezeichnete Linien liegen höchstens { $within }
    neben der Aufzeichnung; die Zahlen sind aus der ganzen Aufzeichnung. Buchstaben, die einander verdecken würden, fehlen.
page-map-use = Die Karte ziehen oder mit gedrückter Strg-Taste das Rad drehen. Ist die Karte gewählt, verschieben sie
    die Pfeiltasten, + und − ändern den Ausschnitt und 0 zeigt die ganze Bahn. Auf Karte oder Streifen zeigen oder tippen setzt den Ring dorthin.
page-over-time = Der Weg über die Zeit
page-walk-note = Vom Aufbruch zu jedem Abschnitt (mit Nummer) bis zum angenommenen Ende: Abstand von der geplanten Linie, das
    Rauschen des Empfängers getönt, eine Standardabweichung ({ $noise }) nach beiden Seiten; darunter Höhe und
    Geschwindigkeit der ganzen Aufzeichnung. Geschwindigkeit und Richtung gelten für { $window } s; der Ring steht
    auf Zeitpunkten im Abstand von { $step } und dazwischen auf einer Geraden.{ $gaps ->
    [0] {""}
   *[other] {" "}Dünn gestrichelt: nicht aufgezeichnet, gerade überbrückt.
}{ $reckoned ->
    [0] {""}
   *[other] {" "}Wo ein Abschnitt darin beginnt oder endet, ist der Ort errechnet; ein solches Ende ist eine hohle Raute.
}
page-legs = Die Abschnitte
page-legs-note = Richtungen gegen Gitternord, gegangene mit dem halben 95-%-Bereich. Das angenommene Ende ist, wo die eigene
    Orientierung des Gehenden endete, vor jeder Suche; Entfernungen gehen gerade dorthin, bei einem Abschnitt mit Knicken längs seiner Linie. „Wie geplant“ heißt, dass die
    Abweichung kleiner ist, als diese Aufzeichnung zeigen kann.
page-leg = Abschnitt
page-status = Stand
page-azimuth = Gitterrichtung
page-distance = Entfernung
page-off-line = Neben der Linie
page-miss = Ablage vom { -point }
page-found = Gefun­den
page-consistent = Passt zu
page-planned = geplant
page-walked = gegangen
page-error = Abwei­chung
page-azimuth-planned = Gitterrichtung geplant
page-azimuth-walked = Gitterrichtung gegangen
page-azimuth-error = Richtungsabweichung
page-distance-planned = Entfernung geplant
page-distance-walked = Entfernung gegangen
page-distance-error = Entfernungsabweichung
page-off-line-long = Neben der Linie am Ende
page-each = Abschnitt für Abschnitt
page-each-note = Jeder Streifen zeigt den Abschnitt von oben, gegangen wird nach rechts: Abstand von der geplanten Linie gegen die
    Entfernung auf ihr, beide nicht im selben Maßstab. Getönt: das Rauschen des Empfängers, eine Standardabweichung
    ({ $noise }) nach beiden Seiten. Der senkrechte Balken am { -point } ist der Ankunftskreis. Unter jedem Streifen
    stehen die Pfeile der geplanten und der gegangenen Richtung, deren 95-%-Bereich getönt ist; daneben, woraus die
    Ablage entstand: Ihre Teile führen aneinandergereiht vom { -point } (Kreuz) zum angenommenen Ende (Raute) und ergeben zusammen die Ablage.
page-leg-title = Abschnitt { $leg }: { $ends }
page-gap = nicht aufgezeichnet.
page-reckoned = errechnet: Niemand hat den Gehenden dort gesehen.
page-own-line = eigene Linie: die geplante Richtung von dort, wo der Gehende wirklich begann.
page-drawn-within = Auf { $within } genau gezeichnet.
page-doubt = Nicht sicher.
page-causes-left = { $count ->
    [one] { $count } weniger wahrscheinliche Ursache steht in debrief.json.
   *[other] { $count } weniger wahrscheinliche Ursachen stehen in debrief.json.
}
page-settles = Was es klären würde:
page-practise = Zu üben:
page-run = Ablaufen
page-moment = Zeitpunkt des Weges
page-misses = Woraus die Ablagen entstanden
page-target-note = Jedes angenommene Ende (Raute mit der Nummer des Abschnitts), vom Gehenden aus auf seinen { -point } gesehen: Vorn ist
    oben. Balken: ein Standardfehler nach beiden Seiten. Der dicke Kreis ist der Ankunftskreis, { $radius }.{ $forecasts ->
    [none] {""}
    [only] {" "}Gepunktet: die Ellipse, in der 95 von 100 üblichen Gängen des Abschnitts enden.
    [easiest] {" "}Gepunktet: die Ellipse, in der 95 von 100 üblichen Gängen des leichtesten Abschnitts enden.
   *[both] {" "}Gepunktet: die Ellipsen, in denen 95 von 100 üblichen Gängen des leichtesten und des schwersten Abschnitts enden.
} Ein Abschnitt links vom Kreuz endete links von seinem { -point }.
page-ledger-note = { $unit ->
    [yards] Yard
   *[metres] Meter
} nach Ost oder West, Nord oder Süd im Gitter, gerundet; die fünf Teile ergeben zusammen die Ablage.
page-named = { $name }: { $meaning }
page-part-inherited = mitgebracht
page-part-plan = Plan
page-part-heading = Richtung
page-part-distance = Entfernung
page-part-detour = Umweg
page-part-total = Summe
page-meaning-inherited = neben dem { -point } begonnen
page-meaning-plan = Marschskizze gegen { -point(form: "many") }
page-meaning-heading = von der Richtung abgedreht
page-meaning-distance = zu weit oder zu kurz
page-meaning-detour = seitwärts, nicht zurückgegangen
page-meaning-total = die Ablage
page-coaching = Was beizubehalten und woran zu arbeiten ist
page-keep = Beibehalten
page-work-on = Daran arbeiten
page-recording = Die Aufzeichnung
page-plan = Der Plan
page-plan-agrees = Die Zahlen des Plans passen zueinander.
page-angle = Die Nadelabweichung
page-cautions = Sicherheitshinweise
page-made-by = Hergestellt von leg-audit { $version }.
page-rounded = Die Zahlen sind nach ihrem Standardfehler gerundet, auf höchstens zwei Stellen davon
    (JCGM 100:2008, 7.2.6); debrief.json enthält sie vollständig.
page-undrawn = Gezeichnet sind die { $drawn } von { $walked } gegangenen Abschnitten mit der größten Ablage; die übrigen stehen in wenigen
    Worten da, damit die Seite klein bleibt. Die Papierfassung (--pdf) zeichnet alle, und debrief.json enthält jede Zahl.
