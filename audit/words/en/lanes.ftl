# Lanes held against each other: the table, the page, and what stands out.

lanes-title = Lanes: { $title }
lanes-many = { $count } lanes
lanes-keep = The course setter’s check. Keep this page from the walkers: it shows every { -point }.
lanes-look = To look at
lanes-things = { $count ->
    [one] { $count } thing
   *[other] { $count } things
} to look at.
lanes-nothing = Nothing stands out.
lanes-ground = The ground
lanes-ground-note = Grid north is up.
lanes-picture = The lanes on the ground
lanes-picture-said = { $count } lanes with their { -point(form: "many") }, and the areas given.
lanes-table = The lanes side by side
lanes-in-full = lanes.json holds the figures in full.
lanes-method = A lane stands out where its figure is off the middle (median) of the other lanes by more than { $share } (climb:
    { $climb_share } and { $climb }; legs: more than one; mean chance in sight: { $chance }); from { $lanes } lanes on it must
    also lie beyond { $sds } robust standard deviations (1.4826 times the median absolute deviation) of them. Times are
    without rests, each by the rule named.

lanes-not-known = not known
lanes-any-order = any order
lanes-legs = legs
lanes-length = length
lanes-longest = longest leg
lanes-longest-said = { $size } (leg { $leg })
lanes-climb = climb
lanes-descent = descent
lanes-time = time, { $rule }
lanes-chance = mean chance in sight
lanes-hardest = hardest leg
lanes-hardest-said = leg { $leg }, { $chance } in sight
lanes-twins = twin { -point(form: "many") }
lanes-sun = sunrise, sunset
lanes-twilight = civil twilight
lanes-ends-by = ends by
lanes-light-begins = light at the start
lanes-light-left = light at the end
lanes-hours = { $from } to { $to } UTC
lanes-hour = { $at } UTC
lanes-none = none
lanes-no-sunset = the sun does not set
lanes-no-sunrise = the sun does not rise
lanes-light-to = { $time } to civil dusk
lanes-light-on = light, and no dusk that day
lanes-dark-to = dark, { $time } to civil dawn
lanes-dark-on = dark, and no dawn that day

lanes-uneven = { $lane }: its { $what ->
    [length] length
    [legs] number of legs
    [climb] climb
    [time] time ({ $rule })
   *[chance] mean chance to end in sight
} is { $value } and that of the { $others ->
    [one] other
   *[other] others
} { $middle }{ $more ->
    [none] {""}
    [more] {" "}({ $share } more)
   *[less] {" "}({ $share } less)
}. Even it out, or give the lane a time limit of its own.
lanes-point-in = { $lane }: { $point } lies in { $kind ->
    [no-go] the no-go area
   *[hazard] the hazard
} { $area }.
lanes-leg-through = { $lane }: leg { $leg }, { $start } to { $end }, goes through { $kind ->
    [no-go] the no-go area
   *[hazard] the hazard
} { $area }{ $over ->
    [none] {""}
   *[some] , over { $over }
}, { $from } from its start.
lanes-said = { $lane }: { $said }
lanes-point-out = { $lane }: { $point } lies out of bounds.
lanes-leg-out = { $lane }: leg { $leg }, { $start } to { $end }, leaves the bounds for { $over }, { $from } from its start.
lanes-no-bearing = { $lane } gives no safety bearing, but other lanes do: put it on its card{ $right ->
    [yes] {""}
   *[no] {" "}once it is put right on theirs (see above)
}.
lanes-bearings-differ = The safety bearings differ: { $first } has { $one } grid, { $lane } { $other }. Give all lanes one.
lanes-led-into = The safety bearing { $grid } grid ({ $magnetic } magnetic) leads into { $kind ->
    [no-go] the no-go area
   *[hazard] the hazard
} { $area } from { $hectares } ha, { $share } of the ground inside the bounds.
lanes-of = { $point } of { $lane }
lanes-one-place = { $first } and { $second } are one place under two names.
lanes-near = { $first } and { $second } are { $apart } apart, nearer than { $least }, twice the arrival radius: one will be taken
    for the other.
lanes-night = { $lane }: the sun does not come near the horizon that day. Plan it as a night lane.
lanes-begun-after-dusk = { $lane }: set out on at { $begins }, in the dark, { $hours } h { $minutes } min after civil dusk at { $dusk } UTC.
lanes-before-dawn = { $lane }: set out on at { $begins }, before civil dawn at { $dawn } UTC.
lanes-all-dark = { $lane }: set out on at { $begins }, it ends by the slowest rule at { $ends }, all of it in the dark: civil dawn
    is at { $dawn } UTC. Plan it as a night lane.
lanes-after-dusk = { $lane }: set out on at { $begins }, it ends by the slowest rule at { $ends }, after civil dusk at { $dusk } UTC.
lanes-light-short = { $lane }: set out on at { $begins }, it ends by the slowest rule at { $ends }, { $minutes } min before civil dusk at
    { $dusk } UTC: too little light for anyone slower, or to look for them. Begin sooner, or plan for the dark.
lanes-note-bounds = No bounds were given: nothing is said of leaving them, nor of the safety bearing.
lanes-note-areas = No areas were given to keep out of: nothing is said of legs through them.
lanes-note-safety = No plan gives a safety bearing: nothing is said of it.
lanes-note-heights = Heights are not known everywhere: climb is left out, and times are for level ground.
lanes-note-any-order = The { -point(form: "many") } of { $lanes } may be visited in any order, so { $count ->
    [one] it has
   *[other] they have
} no legs: length, climb, times, the end, chances in sight, legs through areas or out of bounds, and ordinary error
    near areas are left out. The { -point(form: "many") }, the safety bearing, and light at the start are looked at.
lanes-note-one = One lane has no others to be compared with.
lanes-note-date = A lane without a date has no daylight.
lanes-note-calendar = { $lane }: { $date } is too near an end of the calendar to tell the light of the whole course. Check the year.
lanes-note-other-day = { $lane }: { $begins } UTC of { $date } is about { $there } by the sun there, on { $day }. If that hour there
    on { $date } is meant, give --date { $meant }.

# The sketch of the ground.
lanes-grid-east = grid east, km
lanes-grid-north = grid north, km
