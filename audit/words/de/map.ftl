# Legende und Wörter der Karte.

map-planned = geplanter Abschnitt
map-walked = auf einem Abschnitt gegangen, vom Aufbruch bis zum angenommenen Ende
map-bypass = Umgehung: um ein Hindernis und zurück auf die Linie
map-search = Suche nach dem { -point }
map-other = zwischen oder außerhalb der Abschnitte gegangen
map-gap = nicht aufgezeichnet
map-point = { -point } der Bahn, Ankunftskreis { $radius }
map-claim = angenommenes Ende: wo die Zählung „hier“ sagte oder der { -point } in Sicht kam
map-reckoned = angenommenes Ende in einer Lücke der Aufzeichnung errechnet: Niemand hat es gesehen
map-miss = Ablage, vom { -point } zum angenommenen Ende
map-halt = Halt
map-leg = Abschnitt { $leg }
map-leg-off = Abschnitt { $leg }: { $size } daneben
map-angle = Nadelabweichung { $angle }
map-km-east = km Ost in { $grid }, Hunderter weggelassen
map-km-north = km Nord
map-ground-elevation = Unter der Karte: Höhen{ $source ->
    [none] {""}
   *[some] {" "}aus { $source }
}, mit Licht von Nordwesten schattiert.
map-ground-picture = Unter der Karte: { $source }, aufgehellt.
map-ground-a-picture = Unter der Karte: ein Bild, aufgehellt.
map-utm = UTM-Zone { $zone } { $half ->
    [north] Nord
   *[south] Süd
}, { $datum }
map-ups = UPS { $half ->
    [north] Nord
   *[south] Süd
}, WGS 84
