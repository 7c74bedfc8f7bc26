# What to keep and what to work on.

coach-keep-azimuth = The { -azimuth } held
coach-azimuth = On { $legs } the { -azimuth } walked was within { $worst } of the card's; the standard for a sighted { -azimuth } is { $standard }.
coach-keep-distance = The distance counted
coach-distance = On { $legs } the distance walked was within { $worst } of the card's.
coach-keep-arriving = Arriving where the count said so
coach-arriving = { $count ->
    [one] On { $legs } the count ended at the { -point }, { $mean } from it.
   *[other] On { $legs } the count ended at the { -point }, { $mean } from it on average.
}
coach-keep-finding = Finding the { -point } after a miss
coach-finding = { $count ->
    [one] On { $legs } the count ended { $farthest } off, and the { -point } was found all the same.
   *[other] On { $legs } the count ended up to { $farthest } off, and the { -point } was found all the same.
}
coach-keep-through = Seeing it through
coach-through = { $count ->
    [one] The one leg of the plan was walked.
   *[other] All { $count } legs were walked, in the order of the plan.
}
coach-keep-log = Keeping a log
coach-log = { $holds ->
    [both] The log says what was set and counted, which decides what the track cannot.
    [set] The log says what was set, which decides what the track cannot.
    [counted] The log says what was counted, which decides what the track cannot.
   *[ends] The log says when the legs ended, which tells them apart where the track does not.
}
coach-keep-recording = Recording the walk
coach-recording = { $count } of { $legs ->
    [one] { $legs } leg
   *[other] { $legs } legs
} { $count ->
    [one] was
   *[other] were
} recorded well enough to be judged.
coach-named = What was seen on { $legs } is consistent with it ({ $sure } on leg { $leg }). { $evidence }
coach-named-one = What was seen on { $legs } is consistent with it ({ $sure }). { $evidence }
coach-beside = Beside a larger mistake it was likely made on { $legs } ({ $sure } on leg { $leg }). { $evidence }
coach-either = { $one }, or { $other }
coach-one-of = What was seen on { $legs } is consistent with either, and no leg tells them apart ({ $sure } together on leg { $leg }). { $evidence }
coach-one-of-one = What was seen on { $legs } is consistent with either, and nothing there tells them apart ({ $sure } together). { $evidence }
coach-exercises = { $one } And for the other: { $other }
coach-entered = { $legs }, at the step of { $done }; on leg { $leg } { $said }
coach-done-given = taking down the reference
coach-done-plotted = plotting the { -point }
coach-done-measured = measuring the { -azimuth }
coach-done-converted = turning grid into magnetic
coach-done-set = setting the compass
coach-done-walked = holding the line
coach-done-set-or-walked = setting the compass or holding the line
coach-done-distance-measured = measuring the distance
coach-done-turned-into-paces = turning the distance into { -pace }
coach-done-paced = counting the { -pace }
coach-done-recognised = recognising the { -point }
coach-order = On { $legs } the counts ended at each other's { -point(form: "many") }, as if they had been taken in another order than the card's: { $went }.
coach-went = leg { $leg } at { $point } and not { $planned }
coach-by-count = { $said } The distance walked does not bear that out: it is a matter of the pace count, or of how it was counted.
coach-part = No mistake is named on { $legs }; to work on is that part of the { $count ->
    [one] miss
   *[other] misses
} there that comes from { $part ->
    [heading] the heading
    [distance] the distance
   *[start] where the { $count ->
        [one] leg
       *[other] legs
    } began
}: { $count ->
    [one] { $most }.
   *[other] { $mean } a leg on average, { $most } on leg { $leg }.
}
coach-lean = On { $legs } the walk lay { $side ->
    [right] right
   *[left] left
} of the { -azimuth }: by { $mean }, give or take { $error }, on average over the { $count } legs that no named mistake put out.
    The angle, the compass or the walker's own lean may be behind it; the walk does not tell them apart.
coach-stretch = On { $legs } the walk went { $side ->
    [far] too far
   *[short] short
}: by { $mean } of the distance, give or take { $error }, on average over the { $count } legs whose distance no named mistake put out.
    The pace of that day, the pace count of the card, the way of counting or the ground may be behind it; the walk does not tell them apart.
coach-passed = { $count ->
    [one] No mistake is named on { $legs }; the walk came within { $near } of the { -point } there, and its count ended { $miss } from it.
   *[other] No mistake is named on { $legs }; the walk came within sight of the { -point(form: "many") } there: on leg { $leg } within { $near }, and its count ended { $miss } from it.
}
coach-keep = { $what }. { $evidence }
coach-work-on = { $what }. { $evidence } Five minutes: { $exercise }
coach-next = To look at next
coach-nothing-else = { $count ->
    [0] Nothing stands out
   *[other] Nothing else stands out
}{ $walked ->
    [all] .
   *[some] {" "}on the legs that were walked.
}
coach-left-aside = { $count ->
    [one] { $legs } is left aside here: it is not sure enough when it was walked, or where it ended.
   *[other] { $legs } are left aside here: it is not sure enough when they were walked, or where they ended.
}
