# The walk in two or three sentences, at the head of the debrief.

verdict-nothing = No leg of the plan was found in this recording.
verdict-all-arrived = Every leg that was walked ended within { $radius } of its { -point };
    the largest miss is { $size }, on leg { $leg }.
verdict-seen-arrived = Every leg whose end was recorded ended within { $radius } of its { -point };
    the largest miss is { $size }, on leg { $leg }.
verdict-sure-arrived = Every leg whose part of the recording and whose end are sure ended within { $radius } of its { -point };
    the largest miss is { $size }, on leg { $leg }.
verdict-worst-unsure = Leg { $leg } may have ended { $miss } of { $end }; that this part of the recording is the leg is only { $sure } sure.
verdict-worst-reckoned = Leg { $leg } may have ended { $miss } of { $end }; where it was begun or ended is not sure enough to tell.
verdict-worst = { $of ->
    [sure] Of the legs that are sure, the worst
   *[all] The worst
} is { $named ->
    [yes] the leg to { $leg }
   *[no] leg { $leg }
}: its count ended { $miss } of { $end }, { $part }{ $found ->
    [no] ; the { -point } was not found
    [close] ; whether the { -point } was found is too close to call
   *[yes] {""}
}.
verdict-led-there = { $named ->
    [yes] The leg to { $leg }
   *[no] Leg { $leg }
} led there: its count ended { $miss } of { $end }, { $part }.
verdict-mostly = mostly because { $why }
verdict-partly = partly because { $why }, partly because { $other }
verdict-why-azimuth = it was walked { $error } of the planned { -azimuth }
verdict-why-distance = it was walked { $error }
verdict-why-inherited = it began away from its { -point }
verdict-why-plan = the card and the { -point(form: "many") } of the plan disagree
verdict-why-detour = a detour was not walked back
verdict-no-part = and no part of that stands out from the error of measuring it
verdict-line-left = { $legs } { $count ->
    [one] was
   *[other] were
} not walked along the planned line.
verdict-no-why = { $rest ->
    [own] What { $leg } itself added the evidence does not explain.
   *[no] The evidence does not say why.
}
verdict-led-by = Leg { $before } before it is consistent with { $cause }; with { $point } in the wrong place, leg { $leg } may have been measured from there.
verdict-beside-shared = The evidence does not say why: it was walked { $left } of what { $legs } share.
verdict-undecided = { $rest ->
    [own] Of what { $leg } itself added the cause is { $cause }.
    [yes] Of the rest of it the cause is { $cause }.
   *[no] The cause is { $cause }.
}
verdict-consistent = { $rest ->
    [own] What { $leg } itself added
    [yes] The rest of it
   *[no] That
} is consistent with { $cause }.
verdict-consistent-shared = { $rest ->
    [own] What { $leg } itself added
    [yes] The rest of it
   *[no] That
} is consistent with { $cause }, and so { $many ->
    [yes] are
   *[no] is
} { $legs }.
verdict-left-over = Leg { $leg } was walked { $left } of what that predicts, which it does not explain.
verdict-beside = Beside that, what was seen on { $legs } is consistent with { $cause } ({ $sure }).
verdict-other-order = The { -point(form: "many") } were taken in another order than planned: { $points } ({ $sure }).
verdict-left-out = { $points } { $count ->
    [one] was
   *[other] were
} left out ({ $sure }).
verdict-count = { $walked } of { $legs ->
    [one] { $legs } leg
   *[other] { $legs } legs
} walked, { $reached } of { $legs ->
    [one] { $legs } { -point }
   *[other] { $legs } { -point(form: "many") }
} reached on { $legs ->
    [one] its own leg
   *[other] their own legs
}{ $rest }.
verdict-too-close = , { $count } too close to call
verdict-also-passed = ; passed, but not on { $count ->
    [one] its own leg
   *[other] their own legs
}: { $points }
verdict-rest = ; { $legs } { $status }
verdict-plan-angle = The plan’s grid-magnetic angle, { $angle }, does not agree with a check of it. Put it right
    before blaming a walker for an error of that size.
verdict-unsure = Which part of the recording belongs to { $legs } is not sure: look at the map before
    trusting those figures.
