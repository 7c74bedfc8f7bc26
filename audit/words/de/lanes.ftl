# Bahnen nebeneinander: die Tabelle, die Seite und was auffällt.

lanes-title = Bahnen: { $title }
lanes-many = { $count } Bahnen
lanes-keep = Die Prüfung für die Bahnleger. Diese Seite den Gehenden nicht zeigen: Jeder { -point } steht darauf.
lanes-look = Anzusehen
lanes-things = { $count ->
    [one] { $count } Auffälligkeit ist
   *[other] { $count } Auffälligkeiten sind
} anzusehen.
lanes-nothing = Nichts fällt auf.
lanes-ground = Das Gelände
lanes-ground-note = Gitternord ist oben.
lanes-picture = Die Bahnen im Gelände
lanes-picture-said = { $count } Bahnen mit ihren { -point(form: "to") } und den angegebenen Gebieten.
lanes-table = Die Bahnen nebeneinander
lanes-in-full = lanes.json enthält die Zahlen vollständig.
lanes-method = Eine Bahn fällt auf, wo ihr Wert um mehr als { $share } von der Mitte (Median) der anderen Bahnen abweicht (Anstieg:
    { $climb_share } und { $climb }; Abschnitte: mehr als einer; mittlere Chance auf Sicht: { $chance }); ab { $lanes } Bahnen
    muss er auch mehr als { $sds } robuste Standardabweichungen (1,4826-mal der Median der Abweichungen) von ihnen
    liegen. Zeiten sind ohne Rast, jede nach der genannten Regel.

lanes-not-known = nicht bekannt
lanes-any-order = freie Reihenfolge
lanes-legs = Abschnitte
lanes-length = Länge
lanes-longest = längster Abschnitt
lanes-longest-said = { $size } (Abschnitt { $leg })
lanes-climb = Anstieg
lanes-descent = Abstieg
lanes-time = Zeit, { $rule }
lanes-chance = mittlere Chance auf Sicht
lanes-hardest = schwerster Abschnitt
lanes-hardest-said = Abschnitt { $leg }, { $chance } in Sicht
lanes-twins = verwechselbare { -point(form: "many") }
lanes-sun = Sonnenaufgang, -untergang
lanes-twilight = bürgerliche Dämmerung
lanes-ends-by = zu Ende bis
lanes-light-begins = Licht beim Aufbruch
lanes-light-left = Licht am Ende
lanes-hours = { $from } bis { $to } UTC
lanes-hour = { $at } UTC
lanes-none = keine
lanes-no-sunset = die Sonne geht nicht unter
lanes-no-sunrise = die Sonne geht nicht auf
lanes-light-to = { $time } bis zum Ende der bürgerlichen Dämmerung
lanes-light-on = hell, und an diesem Tag wird es nicht dunkel
lanes-dark-to = dunkel, { $time } bis zum Beginn der bürgerlichen Dämmerung
lanes-dark-on = dunkel, und an diesem Tag wird es nicht hell

lanes-uneven = { $lane }: { $what ->
    [length] Die Länge
    [legs] Die Zahl der Abschnitte
    [climb] Der Anstieg
    [time] Die Zeit ({ $rule })
   *[chance] Die mittlere Chance auf Sicht
} ist { $value }, bei { $others ->
    [one] der anderen
   *[other] den anderen
} { $middle }{ $more ->
    [none] {""}
    [more] {" "}({ $share } mehr)
   *[less] {" "}({ $share } weniger)
}. Angleichen oder der Bahn eine eigene Zeitgrenze geben.
lanes-point-in = { $lane }: { $point } liegt { $kind ->
    [no-go] im Sperrgebiet
   *[hazard] in der Gefahrenstelle
} { $area }.
lanes-leg-through = { $lane }: Abschnitt { $leg }, { $start } bis { $end }, geht durch { $kind ->
    [no-go] das Sperrgebiet
   *[hazard] die Gefahrenstelle
} { $area }{ $over ->
    [none] {""}
   *[some] , auf { $over }
}, { $from } nach seinem Anfang.
lanes-said = { $lane }: { $said }
lanes-point-out = { $lane }: { $point } liegt außerhalb der Grenze.
lanes-leg-out = { $lane }: Abschnitt { $leg }, { $start } bis { $end }, überschreitet die Grenze auf { $over }, { $from } nach seinem Anfang.
lanes-no-bearing = { $lane } gibt keine Sicherheitsrichtung an, andere Bahnen aber schon: auf ihre Marschskizze schreiben{ $right ->
[yes] {""}
   *[no] , sobald sie bei jenen berichtigt ist (siehe oben)
}.
lanes-bearings-differ = Die Sicherheitsrichtungen sind verschieden: { $first } hat { $one } Gitter, { $lane } { $other }. Allen Bahnen dieselbe geben.
lanes-led-into = Die Sicherheitsrichtung { $grid } Gitter ({ $magnetic } magnetisch) führt in { $kind ->
    [no-go] das Sperrgebiet
   *[hazard] die Gefahrenstelle
} { $area }, und zwar von { $hectares } ha aus, { $share } des Geländes innerhalb der Grenze.
lanes-of = { $point } von { $lane }
lanes-one-place = { $first } und { $second } sind eine Stelle mit zwei Namen.
lanes-near = { $first } und { $second } liegen { $apart } auseinander, näher als { $least }, der doppelte Ankunftsradius: Man wird den einen
    für den anderen halten.
lanes-night = { $lane }: Die Sonne kommt an diesem Tag nicht in die Nähe des Horizonts. Als Nachtbahn planen.
lanes-begun-after-dusk = { $lane }: Aufbruch um { $begins }, im Dunkeln, { $hours } h { $minutes } min nach dem Ende der bürgerlichen
    Dämmerung um { $dusk } UTC.
lanes-before-dawn = { $lane }: Aufbruch um { $begins }, vor Beginn der bürgerlichen Dämmerung um { $dawn } UTC.
lanes-all-dark = { $lane }: Aufbruch um { $begins }, nach der langsamsten Regel zu Ende um { $ends }, alles im Dunkeln: Die bürgerliche
    Dämmerung beginnt um { $dawn } UTC. Als Nachtbahn planen.
lanes-after-dusk = { $lane }: Aufbruch um { $begins }, nach der langsamsten Regel zu Ende um { $ends }, nach dem Ende der bürgerlichen
    Dämmerung um { $dusk } UTC.
lanes-light-short = { $lane }: Aufbruch um { $begins }, nach der langsamsten Regel zu Ende um { $ends }, { $minutes } min vor dem Ende der
    bürgerlichen Dämmerung um { $dusk } UTC: zu wenig Licht für alle, die langsamer sind, und um nach ihnen zu suchen.
    Früher beginnen, oder für die Dunkelheit planen.
lanes-note-bounds = Keine Grenze angegeben: Nichts wird darüber gesagt, ob sie überschritten wird, noch über die Sicherheitsrichtung.
lanes-note-areas = Keine Gebiete angegeben, die zu meiden sind: Nichts wird über Abschnitte durch sie gesagt.
lanes-note-safety = Kein Plan gibt eine Sicherheitsrichtung an: Nichts wird über sie gesagt.
lanes-note-heights = Höhen sind nicht überall bekannt: Der Anstieg fehlt, und die Zeiten gelten für ebenes Gelände.
lanes-note-any-order = Die Reihenfolge von { $lanes } ist frei, { $count ->
    [one] diese Bahn hat
   *[other] diese Bahnen haben
} also keine Abschnitte: Länge, Anstieg, Zeiten, Ende, Chancen auf Sicht, Abschnitte durch Gebiete oder über die Grenze und
    übliche Ungenauigkeit bei Gebieten bleiben weg. Geprüft sind { -point(form: "many") }, Sicherheitsrichtung und Licht beim Aufbruch.
lanes-note-one = Eine einzige Bahn hat keine anderen zum Vergleich.
lanes-note-date = Eine Bahn ohne Datum hat kein Tageslicht.
lanes-note-calendar = { $lane }: Der { $date } liegt zu nah an einem Ende des Kalenders, um das Licht der ganzen Bahn anzugeben. Das Jahr prüfen.
lanes-note-other-day = { $lane }: { $begins } UTC am { $date } ist dort nach der Sonne etwa { $there } am { $day }. Ist diese Stunde dort am
    { $date } gemeint, --date { $meant } angeben.

# Die Skizze des Geländes.
lanes-grid-east = Gitter Ost, km
lanes-grid-north = Gitter Nord, km
