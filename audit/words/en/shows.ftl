# What a class shows and what there is to ask of it.

shows-place = { $across } { $east ->
    [yes] east
   *[no] west
}, { $up } { $north ->
    [yes] north
   *[no] south
}
shows-fewer-points = The standard { $standard } asks for { $asked } { -point(form: "many") }, but { $lanes } { $count ->
    [one] has
   *[other] have
} only { $has }: all of them are asked there. See whether it is the right standard.
shows-fault = { $lane }, { $point } (leg { $leg }): { $seen }{ $doubt } The marker, the plan or the card is wrong there, not the
    walkers: go and check it. The { -point } is left out of the grades.
shows-gathered = { $sharing } of the { $walkers } able walkers left it from one place, { $off } from where it is planned
    ({ $where }{ $told ->
    [yes] , ±{ $error }
   *[no] {""}
}); about that place they scatter by { $scatter }.
shows-alike = the { $walkers } able walkers end { $off } from it on average ({ $where }{ $told ->
    [yes] , ±{ $error }
   *[no] {""}
}), { $sharing } of them
    to that side; what each turns and paces on other legs is taken off, and they scatter by { $scatter }.
shows-read-alike = {" "}How far off it stands is not sure: all came the same way, and of the middle walk it is only { $sure } sure
    which part of it belongs to this leg; where one is read wrong, all are. It may stand elsewhere on their way on from { $start },
    or beside it.
shows-missed-by-all = { $lane }, { $point } (leg { $leg }): none of the { $walkers } able walkers found it, and { $missed } of them
    missed it; the nearest came within { $near }. They found most of the others. Does it stand where plan
    and card have it? Go and check before it counts against anyone: the walks do not show where it stands instead, and it stays in the grades.
shows-angle-alike = { $lane }: { $sharing } of the { $walkers } walkers show the same mistake, { $mistake }: it is the likeliest on { $named } of
    their { $legs } legs. The middle one (median) walked { $size } { $side ->
    [right] right
   *[left] left
} of the card’s { -azimuth(form: "many") }; the angle is { $angle } { $east ->
    [yes] east
   *[no] west
}. Where so many do the same, they may have been taught so, or plan, card or map may have it so: ask that first. Nobody is to blame for it alone.
shows-compass = { $thing ->
    [compass] Compass
   *[device] Device
} { $name }: the { $carriers } who carried it walked { $size } { $side ->
    [right] right
   *[left] left
} of their { -azimuth(form: "many") }, compared with the { $others } others (95 % interval { $low } to { $high }). Is the
    compass { $out } out, reading { $side ->
    [right] low
   *[left] high
}? Hold it against another on a known line before it goes out again.{ $angle ->
    [yes] {" "}It is as much as the grid-magnetic angle left out would give: ask first whether these walkers left it out.
   *[no] {""}
}
shows-broken = The recording of { $walker } is broken. { $note } Is the rest still on the device? Copy it again.
shows-harder = { $lane }, leg { $leg } ({ $start } to { $end }): its misses, without what was brought along from the leg before, are
    { $ratio } times those of the other legs once the skill of the walkers is taken out (95 % interval { $low } to { $high },
    { $walkers } walkers). That is { $more ->
    [yes] more
   *[no] no more
} than its length explains, which would make them { $length } times as large.
shows-too-few-legs = Too few legs were walked by enough walkers to compare them.
shows-turned-alike = { $lane }: legs are not compared where most made one mistake with the grid-magnetic angle; their misses are that.
shows-no-comparison = The misses do not bear a comparison of the legs.
shows-no-model = Whether a leg is harder than the rest, the walkers' skill taken out, was not worked out: that needs
    statsmodels (pip install "leg-audit[class]").
shows-company = Did { $second } walk with { $first }? Away from the { -point(form: "many") }, { $second } was within { $within }
    of where { $first } had been { $apart } s before for { $together } min, { $share } of the way. Of other pairs of
    whichever lane, set off as far apart, 95 in 100 would have been so for under { $usual } min. A pair that was sent out together,
    or a path that all took, looks the same: ask both.
shows-batch-clock = By the recordings the start was left { $minutes } min { $later ->
    [yes] later
   *[no] earlier
} than by the roster (middle of { $count }); { $taken ->
    [recording] the recording's own times were taken
    [both] the recording's own times were taken, and where the roster's start makes another verdict it is doubtful
   *[roster] the roster's start was taken
}. If the clocks are wrong, --shift puts the whole batch right; if everybody set out late, nothing is wrong.{ $hours ->
    [none] {""}
   *[other] {" "}It is near whole hours: recordings and roster may be of two zones (--shift { $hours }).
}
shows-clock = { $walker } left the start { $minutes } min { $later ->
    [yes] later
   *[no] earlier
} by the recording than by the roster, unlike the others; { $taken ->
    [recording] the recording's own times were taken
    [both] the recording's own times were taken, and where the roster's start makes another verdict it is doubtful
   *[roster] the roster's start was taken
}. Was the start late, or is a clock wrong?{ $hours ->
    [none] {""}
   *[other] {" "}It is near whole hours: the clock may be of another zone; { $hours } under shift in the roster puts it right.
}
shows-batch-day = The plan is for { $planned }, but { $count ->
    [one] the recording is
   *[other] { $count } recordings are
} of { $walked ->
    [none] another day
   *[other] { $walked }
}. Was the plan used again, or are these the recordings of another day? If it was used again, put its date right:
    the declination is that day's.
shows-day = The recording of { $walker } is of { $walked ->
    [none] another day
   *[other] { $walked }
}, { $unlike ->
    [others] unlike the others; the plan is for { $planned }
   *[plan] but the plan is for { $planned }
}. Was it walked on another day, or is it the recording of another walk? It was graded all the same.
shows-shifted = All clocks were put { $minutes ->
    [0] {""}
   *[other] { $minutes } min{" "}
}{ $seconds } s { $later ->
    [yes] forward
   *[no] back
}: { $ground }.
shows-not-shifted = All clocks were left as they are: { $why ->
    [roster] without a roster the first crossing of the start has nothing to be held against
   *[starts] no row of the roster has a start and a recording that crosses it
}.
shows-shift-asked = as it was asked for
shows-shift-nothing = no start by the roster and by a recording to be compared
shows-shift-crossing = the first crossing of the start against the roster, { $count ->
    [1] of one walker alone
   *[other] middle of { $count } (half of them { $spread ->
        [0] the same to the second
       *[other] within { $spread } s of it
    })
}
shows-shift-alone = All clocks were put { $minutes } min { $later ->
    [yes] forward
   *[no] back
} by the start of one walker alone; no other row of the roster has a start and a recording that crosses it. Was that clock off, or
    did the walker set out at another time than the roster's? If the clocks are right, grade without --shift.
shows-code-times = The times noted with the codes are { $minutes } min { $later ->
    [yes] later
   *[no] earlier
} than the recordings, with their clocks shifted, are at those { -point(form: "many") } (middle of { $count }){ $unshifted ->
    [yes] ; with the clocks as they were they agree
   *[no] {""}
}. Is the shift right?
shows-lane-fitted = The roster names no lane; the walk was given the one it fits: { $lane }.
shows-left-again = By the recording the start was left { $times } times before the first leg, { $minutes } min apart. The first counts for the
    time that was needed; that it may be a later one is in the error of that time.
shows-own-shift = By the roster its clock was put { $minutes } min { $seconds } s { $later ->
    [yes] forward
   *[no] back
}, and by nothing else.
shows-another-unusable = Another recording could not be used: { $problem }
shows-two-radii = { $standard } counts a { -point } as found within { $radius }, { $plan } within { $planned }: the class and its
    debriefs go by { $standard }. Debriefed alone, the plan's holds.
shows-free-plan = { $plan } lets the { -point(form: "many") } be visited in any order, { $standard } asks for the planned one: the plan
    counts, and a { -point } is found whenever it was visited.
shows-twice = { $files } hold the very same recording. Whose is it?
shows-other-lane = The recording of { $walker } fits { $better } better than { $lane }: { $passed } of its { -point(form: "many") }
    passed against { $own }. Was the device swapped, or the wrong lane walked? It was graded on { $lane }.
shows-other-course = { $walker }: { $elsewhere } Whose recording is it?
shows-unusable = The recording of { $walker } cannot be used: { $problem }
shows-no-recording = { $walker } has no recording: no evidence, and no fail.
shows-codes-alone = { $walker } has no recording: of the walk only the codes brought back are known. That is no fail.
shows-codes-left-over = Of { $walker } the { $count ->
    [one] code in line { $lines } of the list of codes is
   *[other] codes in lines { $lines } of the list of codes are
} of no attempt, or of no lane, that is graded here, and { $count ->
    [one] was
   *[other] were
} left out. Are attempt and lane right?
shows-several-walks = { $files }: { $walks } walks, and the roster has { $known } of them ({ $rows }). Who walked the { $left ->
    [one] other
   *[other] others
}?
shows-perhaps-two = The recording of { $walker } comes by { -point(form: "many") } of the lane twice: it may be two walks in one file. Were there two?
    It was graded as one.
shows-file-missing = The roster gives { $walker } { $files }, but no such recording was handed in. Without a recording there is
    no evidence, and no fail.
shows-nobodys = { $file } is nobody's by the roster and was not graded.{ $fits } Whose is it?
shows-fits = {" "}It fits { $lane } best ({ $passed } of its { -point(form: "many") } passed).
shows-joined = { $second } goes on where { $first } breaks off, and the two were joined as one walk of { $walker }. If they
    are two people's, give a roster.
shows-roads = { $walker } walked within { $within } of { $roads } for { $seen }{ $minutes ->
    [none] {""}
   *[some] {" "}({ $minutes } min)
}, by the recording{ $sure ->
    [none] ; its error does not let that be sure
   *[some] , and for { $sure }{ $sure_minutes ->
    [none] {""}
   *[some] {" "}({ $sure_minutes } min)
} of it beyond all error
}. The standard { $rule ->
    [keep-off] asks to keep off roads; a crossing counts too
   *[cross-only] lets roads be crossed only, and what is short enough for that is not counted
}; what lies about the { -point(form: "many") } is left out. It changes no grade: ask.
