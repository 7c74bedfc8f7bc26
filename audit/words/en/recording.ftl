# What was left out of a recording or put right in it, and what to know of it.

recording-spike = spike
recording-stray-end = stray end
recording-same-place = same place
recording-off-grid = off the grid
recording-out-of-order = out of order
recording-clock-jump = clock jump
recording-mixed-by-time = mixed by time
recording-parts-out-of-order = parts out of order
recording-side-by-side = side by side
recording-same-time = same time
recording-no-times = no times
recording-few-times = few times
recording-no-time = no time
recording-clock-not-set = clock not set
recording-before = Leg { $leg } lies before the recording begins: nothing is known of how it was walked, or whether.
recording-under-way = Leg { $leg } was under way when the recording began: its distance and where it started are those of the recording, not of the walk.
recording-straight-start = The recorder was silent when leg { $leg } was begun: the place is taken straight between the fixes before and after.
recording-straight-claim = The recorder was silent when leg { $leg } was ended: the place is taken straight between the fixes before and after.
recording-reckoned-start = The recorder was silent when leg { $leg } was begun: where and when was reckoned, { $gone } back along the way walked afterwards.
recording-reckoned-claim = The recorder was silent when leg { $leg } was ended: where and when was reckoned, { $gone } on along the way walked before.
recording-noise-usual = a usual value of { $usual } m, for want of halts and of straight walking
recording-noise-halts = halts of { $minutes } min in all, and a usual value of { $usual } m
recording-noise-walking = straight walking of { $walked } min in all, and a usual value of { $usual } m
recording-noise-both = halts of { $minutes } min in all, straight walking of { $walked } min, and a usual value of { $usual } m
recording-too-few = Only { $count } fixes of the recording can be used: no leg can be recognised in so few. Look for the whole recording.
recording-nearest = It comes within { $near } of { -point } { $point }, and no nearer to any.
recording-elsewhere = The walk may be of another course. { $near } Check that plan and recording are of the same walk, and that its { -point(form: "many") } are where they should be.
recording-nothing-walked = No leg of the plan was recognised in this recording. { $near } Check that plan and recording are of the same walk, and that its { -point(form: "many") } are where they should be.
recording-outings = The recording holds { $count } outings near the course; { $chosen ->
    [day] of those of the plan's day the one that fits it best
   *[fit] the one that fits it best
}, begun { $begun }, is taken for the walk.
recording-untimed = The recording carries no usable times: legs are matched by the order of fixes, halts cannot be seen, and there are no time figures.
recording-sparse = A fix only every { $interval } s: corners are cut and short bypasses vanish.
recording-wandered = The receiver wandered by about { $noise } m: short legs cannot be judged on heading.
recording-log-note = The walker's log: { $note }
recording-log-astray = The walker's log has entries for { $names }, which the plan has no leg for; they were left out.
recording-log-unseen = The walker's log has figures for { $count ->
    [one] leg { $legs }, which this recording does not show
   *[other] legs { $legs }, which this recording does not show
} walked: nothing was laid beside them. Ask the walker.
recording-walk-of-other-day = The plan is for { $plan }, but the walk that is taken is of { $walked }.
recording-other-day = The plan is for { $plan }, but the recording begins on { $begun }: check that they are of the same walk.
recording-log-numbers = its legs were taken by their numbers: { $pairs }.
recording-log-number = "{ $written }" as "{ $leg }"
recording-log-north = its { $north } { -azimuth(form: "many") } were turned into magnetic ones by the card's angles.
recording-log-other-north = its { -azimuth(form: "many") } of { $legs } are all { $size } { $side } of the card's magnetic ones, and the walk went by the card's: they were noted { $north ->
    [true] from true north
    [grid] from grid north
   *[other] otherwise than they were set
}, and were left out.
recording-log-time = Leg { $leg }: the walker's log ends it { $minutes } min { $side ->
    [later] later
   *[earlier] earlier
} than it is taken here, at { $time }.{ $settle }
recording-log-heard = { $now ->
    [known] { $alone ->
        [known] The walker's log moved the { $moved ->
            [from] start
           *[claim] end
        } of leg { $leg } from { $before } to { $time }. If the log is wrong there, settle it: { $pin }.
       *[not] By the walker's log leg { $leg } was walked, and ended at { $time }; by the recording alone it would count as not walked to its end.
    }
   *[not] { $alone ->
        [known] By the walker's log leg { $leg } does not count as walked to its end; by the recording alone it would have ended at { $before }. If the log is wrong there, settle it: { $pin }.
       *[not] The walker's log changed how leg { $leg } counts, which was not walked to its end either way.
    }
}
recording-log-watch = The walker's log ends the legs that it has a time for ({ $count }), or most of them, about { $minutes } min { $side ->
    [later] later
   *[earlier] earlier
} than they are taken here, all alike: his watch was { $side ->
    [later] fast
   *[earlier] slow
} by so much. The times are taken as if it had been right.{ $clock ->
    [utc] {""}
   *[other] {" "}It is taken to show { $clock }.
}
recording-log-count = Leg { $leg }: { $paces } { -pace } are { $rate } to 100 m of the leg, which nobody takes; the count was left out.
recording-log-day = Leg { $leg }: the walker's log ends it on { $noted }, but the recording on { $walked }: the log is taken for the time of day alone.
recording-log-settle = {" "}If the log is right, settle it: { $pin }.
recording-simulated = The recording says of itself that it is simulated.
recording-planned-route = The file also holds a planned route, which was not read here.
recording-called = The track that begins at point { $point } is called { $name }.
recording-detail-out-of-order = Fixes with an earlier time than the fix before them were put in order of time.
recording-detail-clock-jump = The clock was put back while the walk went on; the times of { $count } fixes were moved by up to { $minutes } min to the clock that the other fixes have.
recording-detail-clock-returned = The clock jumped and came back while the walk went on; the times of { $count } fixes were moved by up to { $minutes } min to the clock that the other fixes have.
recording-detail-mixed = Parts of the file that ran at the same time were mixed by time: too many to choose.
recording-detail-parts = Parts of the file that begin before the part ahead of them were put in order of time.
recording-detail-side-by-side = Recordings that ran at the same time, usually { $apart } apart: the one with most fixes was kept, and of the others what fills its silences.
recording-detail-same-time = Of fixes with one and the same time the first was kept{ $elsewhere ->
    [0] {""}
    [one] ; { $elsewhere } of the others was at another place
   *[other] ; { $elsewhere } of the others were at another place
}.
recording-detail-no-times = No fix carries a time. The order of the file is taken as the way walked.
recording-detail-never-set = The clock was never set: it shows years before 1980. Dates mean nothing here.
recording-detail-before-set = Times before 1980, from before the clock was set, were taken as missing.
recording-detail-few-times = Most of the way was recorded without times, so the order of the file is taken as the way walked; { $count } fixes in parts of the file that have times were left out.
recording-detail-no-time = Fixes without a time among others with times were left out.
recording-detail-no-time-parts = Fixes without a time among others with times were left out; part { $numbers }{ $more ->
    [0] {""}
   *[other] {" "}and { $more } more
} of the file has no times at all.
recording-detail-single-time = A single fix with a time: no time can be measured.
recording-detail-stood = The clock stood still: { $count } fixes carry { $times ->
    [1] one and the same time
   *[other] only { $times } different times
}. The order of the file is taken as the way walked.
recording-detail-off-grid = Fixes so far away that the grid of the course cannot show them were left out.
recording-detail-spike = Fixes that nobody on foot could have reached and left in the time were left out.
recording-detail-stray = Fixes where the recording begins, ends or pauses, from where nobody on foot gets to the next one in the time, were left out.
recording-detail-same-place = Fixes at the very place of the fix before, and without times, were left out.
recording-in-gaps = Leg { $leg }: { $share } of it lies in gaps of the recording, where the line drawn is not what was walked.
recording-silent = Leg { $leg }: { $share } of its time lies in gaps of the recording: what was done in them, a long rest or a way there and back, nobody saw.
recording-astray = { $count ->
    [one] { $count } point
   *[other] { $count } points
} of { $of } without a usable position left out (the first is point { $first }).
recording-without-zone = { $count ->
    [one] { $count } time
   *[other] { $count } times
} without a zone taken as UTC.
recording-unreadable = { $what } could not be read (the first is { $first }) and counted as missing.
recording-breaks-off = The file breaks off in line { $line }, after { $bytes } bytes
recording-lost = The file cannot be read beyond line { $line } ({ $reason }), and what follows is lost, { $lost } of { $of } bytes
recording-kept-before = { $where }; { $count ->
    [one] { $count } point
   *[other] { $count } points
} before that kept{ $unfinished ->
    [yes] , without the one being written there
   *[no] {""}
}.
recording-field-time = { $count ->
    [one] { $count } time
   *[other] { $count } times
}
recording-field-ele = { $count ->
    [one] { $count } elevation
   *[other] { $count } elevations
}
recording-field-hdop = { $count ->
    [one] { $count } dilution of precision
   *[other] { $count } dilutions of precision
}
recording-field-cadence = { $count ->
    [one] { $count } cadence
   *[other] { $count } cadences
}
recording-private = Private: names of files and tracks are left out, the recording begins where the first leg was left for and ends with the last, and times count from its start.
recording-private-log = The notes of the walker's log are left out too: in words of his own, they may name anybody.
recording-rounds = The recording is many times as long as the course. Only the rounds{ $chosen ->
    [day] {" "}of the plan's day
   *[fit] {""}
} that pass its { -point(form: "many") } best were weighed, and one after { $begun } is taken. Others passed their first { -point } at { $times }{ $later ->
    [0] {""}
   *[other] {" "}and { $later } later
}. To take another, pin its start with --from.
recording-other-letters = The file's letters are not in the encoding that it names: read as ISO-8859-1.
recording-gzip = The gzip packing is damaged after { $bytes } unpacked bytes.
recording-one-fix = { $file }: 1 usable fix is no walk.
