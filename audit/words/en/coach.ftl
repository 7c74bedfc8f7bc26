# What to keep and what to work on.

coach-keep-azimuth = The { -azimuth } held
coach-azimuth = On { $legs } the { -azimuth } walked was within { $worst } of the card's; the standard for a sighted { -azimuth } is { $standard }.
coach-keep-distance = The distance counted
coach-distance = On { $legs } the distance walked was within { $worst } of the card's.
coach-keep-arriving = Arriving where the count said so
coach-arriving = On { $legs } the count ended at the { -point }, { $mean } from it on average.
coach-keep-finding = Finding the { -point } after a miss
coach-finding = On { $legs } the count ended up to { $farthest } off, and the { -point } was found all the same.
coach-keep-through = Seeing it through
coach-through = { $count ->
    [one] The one leg of the plan was walked.
   *[other] All { $count } legs were walked, in the order of the plan.
}
coach-keep-log = Keeping a log
coach-log = The log says what was set and counted, which decides what the track cannot.
coach-keep-recording = Recording the walk
coach-recording = { $count ->
    [one] { $count } leg was
   *[other] { $count } legs were
} recorded well enough to be measured.
coach-named = What was seen on { $legs } is consistent with it ({ $sure } on leg { $leg }). { $evidence }
coach-entered = { $legs }, where { $done }; on leg { $leg } { $said }
coach-done-given = the reference was taken down
coach-done-plotted = the { -point } was plotted
coach-done-measured = the { -azimuth } was measured
coach-done-converted = grid was turned into magnetic
coach-done-set = the compass was set
coach-done-walked = the line was held
coach-done-distance-measured = the distance was measured
coach-done-turned-into-paces = the distance was turned into { -pace }
coach-done-paced = the { -pace } were counted
coach-done-recognised = the { -point } was to be recognised
coach-part = No mistake is named here; it is the { $part ->
    [heading] heading
    [distance] distance
    [start] start
   *[point] { -point }
} part of the misses: { $mean } a leg on average, { $most } on leg { $leg }.
coach-unreached = { $count ->
    [one] { $legs } did not reach its { -point }.
   *[other] { $legs } did not reach their { -point(form: "many") }.
}
coach-keep = { $what }. { $evidence }
coach-work-on = { $what }. { $evidence } Five minutes: { $exercise }
coach-next = To look at next
