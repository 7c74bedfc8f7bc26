# Wo ein Plan seinen eigenen Rechnungen widerspricht.

finding-by-points = seine { -point(form: "many") } ergeben
finding-by-magnetic = seine magnetische Richtung ergibt
finding-by-angle = Gitter { $grid } mit der Nadelabweichung von { $angle } ergibt
finding-by-convergence = Gitter { $grid } mit der Meridiankonvergenz von { $angle } ergibt
finding-azimuth = Abschnitt { $leg }: Der Plan gibt die { $north ->
    [magnetic] magnetische Richtung
    [true] geographische Richtung
   *[grid] Gitterrichtung
} mit { $given } an; { $because } { $expected }, das sind { $off } Unterschied.{ $slips }{ $right }{ $explained }
finding-azimuth-right = { $north ->
    [grid] {" "}Die Gitterrichtung
    [magnetic] {" "}Die magnetische Richtung
   *[true] {" "}Die geographische Richtung
}, { $azimuth }, stimmt mit ihnen überein.
finding-distance = Abschnitt { $leg }: Der Plan gibt { $given } an; zwischen seinen { -point(form: "to") } sind es { $along }.{ $slips }{ $explained }
finding-distance-via = Abschnitt { $leg }: Der Plan gibt { $given } an; über seine Zwischenpunkte sind es { $along }.{ $slips }{ $explained }
finding-paces = Abschnitt { $leg }: Der Plan gibt { $given } { -pace } an; { $distance } mit { $rate } { -pace(form: "to") } je 100 m sind { $expected }.{ $slips }
finding-reference = {" "}Die Koordinate von { $point } erklärt es.
finding-via-name = Zwischenpunkt { $number } von Abschnitt { $leg }
finding-via-astray = Abschnitt { $leg }: Der Weg über Zwischenpunkt { $number }, „{ $given }“, ist { $over } lang, an ihm vorbei { $past }. Seine Koordinate prüfen.{ $explained }
finding-line-long = Abschnitt { $leg }: Über seine Zwischenpunkte sind es { $along }, in gerader Linie { $straight }. Ihre Koordinaten prüfen.{ $explained }
finding-overlong = Abschnitt { $leg }: Zwischen { $start } und { $end } liegen { $km } km. Ihre Zone und ihr 100-km-Quadrat prüfen.{ $explained }
finding-so-would = {" "}Ebenso mit { $text } für { $point }: { $what }.
finding-reference-slip = Die Koordinate von { $point }, „{ $given }“, enthält wohl ein Versehen ({ $what }): Mit { $text } würde stimmen: { $legs }.{ $also }
finding-namesake = Der Name { $point } steht für zwei Orte, { $apart } auseinander: „{ $given }“ in { $legs } und „{ $other }“ in { $others }.{ $slip } Den falschen berichtigen oder jedem Ort seinen eigenen Namen geben; bis dahin heißt der in { $legs } „{ $name }“.
finding-namesake-in-capitals = Die Namen { $point } und { $name } sind nur verschieden groß geschrieben und stehen für zwei Orte, { $apart } auseinander: „{ $other }“ in { $others } und „{ $given }“ in { $legs }.{ $slip } Den falschen berichtigen oder jedem Ort seinen eigenen Namen geben.
finding-parted-by = {" "}Der Unterschied: { $what }.
finding-angle-age = Die Nadelabweichung ist vom { $of }, { $years } Jahre vor dem Weg.
finding-angle-years = Die Nadelabweichung ist von { $of }, { $years ->
    [one] ein Jahr
   *[other] { $years } Jahre
} vor dem Weg.
finding-angle-bring-up = { $said } Mit der jährlichen Änderung am Kartenrand auf den heutigen Stand bringen.{ $model }
finding-angle-model = {" "}Für den Weg ergeben Magnetfeldmodell und Gitter { $model } (Standardfehler { $error }).
finding-angle-moves = { $said } Nach dem Magnetfeldmodell hat sie sich seither um { $moved } geändert: Aus { $given } wird { $current }. Modell und Gitter selbst ergeben für den Weg { $model } (Standardfehler { $error }).
finding-angle-nearer = { $said } Magnetfeldmodell und Gitter ergeben für dieses Datum { $then } und für den Weg { $model } (Standardfehler { $error }): { $given } liegt näher am zweiten und ist vielleicht schon auf dem heutigen Stand. Am Rand der mitgeführten Karte nachsehen.
finding-angle-later = Die Nadelabweichung ist von { $of }, der Weg vom { $walk }. Eines der beiden Daten ist falsch.
finding-angle-at-odds = Der Plan gibt eine Nadelabweichung von { $given } an, mit dem Datum { $of }; dafür ergeben Magnetfeldmodell und Gitter { $then } (Standardfehler { $error }). Winkel und Datum passen nicht zusammen.{ $slips }{ $walk } Die mitgeführte Karte und ihr Datum prüfen.
finding-angle-legs = { $said } Mit dem richtigen Winkel stimmt, was abweicht: { $cleared }.
finding-angle-of-walk = {" "}Zum Tag des Weges würde er passen: { $now }.
finding-undated = Der Plan gibt eine Nadelabweichung von { $given } und kein Datum dazu an; { $year } ergeben Magnetfeldmodell und Gitter { $model }, und keine Karte in Gebrauch liegt so weit davon entfernt.{ $slips }
finding-shared-angle = Die { $count } Abschnitte, die beide Richtungen angeben, rechnen Gitter mit { $shared } in magnetisch um; die Nadelabweichung der Bahn ist { $given }.
finding-own-sum = {" "}Die eigene Rechnung verwendet { $angle }.
finding-angle-cleared = { $legs }{ $what ->
    [magnetic_azimuth_deg] {" "}({ $count ->
        [one] magnetische Richtung
       *[other] magnetische Richtungen
    })
    [grid_azimuth_deg] {" "}({ $count ->
        [one] Gitterrichtung
       *[other] Gitterrichtungen
    })
   *[other] {""}
}
finding-west-of = { $size } westlich
finding-east-of = { $size } östlich
finding-south-of = { $size } südlich
finding-north-of = { $size } nördlich
finding-sheet-swapped = Die Ecken des Blatts sind vertauscht: „{ $first }“ ist seine Nordostecke, „{ $second }“ seine Südwestecke. Die Südwestecke steht zuerst.
finding-sheet-corners = Die Ecken des Blatts, „{ $first }“ und „{ $second }“, sind nicht seine Südwest- und seine Nordostecke. Diese beiden gehören hin, in dieser Reihenfolge.
finding-off-sheet = { $point } liegt { $beyond } des Kartenblatts. Die Koordinate oder die Blattecken prüfen.
finding-fix-azimuth = seine Richtung nur auf ±{ $to } (95 %), und ein Kompass hält { $holds }
finding-fix-end = sein Ende nur auf { $to } nach jeder Seite, und der Ankunftsradius ist { $radius }
finding-coarse = Abschnitt { $leg }, { $length }: Die Koordinaten seiner { -point(form: "many") }{ $figures } legen fest: { $needs }. Genauere Koordinaten angeben.
finding-figures = {" "}({ $figures } Stellen, Quadrate von { $square } m)
finding-off-grid = { $point } liegt { $off } außerhalb des Gebiets des Gitters { $grid } ({ $name }); das UTM-Gitter dort ist { $usual }.
finding-angle = Der Plan gibt eine Nadelabweichung von { $given } an; für { $date } ergeben Magnetfeldmodell und Gitter { $model } (Standardfehler { $error }).{ $slips }{ $age } Die mitgeführte Karte und ihr Datum prüfen.
finding-map-age = {" "}Auf einer etwa { $years } Jahre alten Karte könnte sie so stehen: Der Winkel ändert sich um { $yearly } im Jahr.
