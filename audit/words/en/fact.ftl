# Facts beside the pictures: names, and what is said under them.

fact-date = Date
fact-date-unknown = not known
fact-recording = Recording
fact-not-named = not named
fact-grid = Grid
fact-radius = Arrival radius
fact-pace-count = Pace count
fact-pace-count-said = { $paces } { -pace } to 100 m
fact-pace-count-by-log = by the counts of the log and the ground walked { $paces }, give or take { $error }

fact-planned = Planned
fact-planned-said = grid { $grid }, magnetic { $magnetic }, back { $back } grid; { $distance }{ $paces ->
    [none] {""}
   *[some] , { $paces } { -pace }
}
fact-note = Note
fact-log-note = Noted in the log
fact-azimuth = { -azimuth(form: "start") }
fact-azimuth-said = { $walked } grid (95 % interval { $interval }{ $doubted ->
    [yes] , if this part of the recording is the leg
   *[no] {""}
}): { $error }
fact-distance = Distance
fact-distance-line-left = { $straight } straight, { $path } over the ground: the planned line of { $line } was not followed
fact-distance-said = { $straight } straight, { $path } over the ground{ $along ->
    [none] {""}
   *[some] , { $along } made good along the planned line
}: { $error } ({ $ratio } of plan)
fact-distance-in-part = { $straight } straight, { $path } over the ground: what was recorded of it, and not the whole leg
fact-paces = { -pace(form: "start-many") }
fact-paces-by-log = { $paces }, counted, by the log
fact-paces-by-count = { $paces } to be expected by the pace count, not counted
fact-time = Time
fact-time-said = { $time }{ $standing ->
    [none] {""}
   *[some] , of it { $standing } standing
}{ $unseen ->
    [none] {""}
   *[some] , { $unseen } of it not recorded
}{ $begin ->
    [none] {""}
   *[some] {" "}({ $begin } to { $end } { $clock })
}
fact-off-line = Off the line
fact-off-line-said = { $end } at the claim, { $most } at most, { $rms } root mean square; measured from the planned line
fact-own-line = Own line
fact-own-line-on = began { $began } from { $start }; on the own line at the claim
fact-own-line-off = began { $began } from { $start }; { $side } of the own line at the claim
fact-miss = Miss
fact-miss-said = { $miss } of the { -point }, ±{ $error } each way (standard error): { $where }, by the card’s { -azimuth }
fact-level-with = level with it, { $across }
fact-beyond = { $along } beyond it, { $across }
fact-short-of = { $along } short of it, { $across }
fact-nearest = Nearest
fact-nearest-reached = { $size }{ $time ->
    [none] {""}
   *[some] {" "}from the { -point }, at { $time } { $clock }
}; reached
fact-nearest-not = { $size }{ $time ->
    [none] {""}
   *[some] {" "}from the { -point }, at { $time } { $clock }
}; not reached
fact-nearest-too-close = { $size }{ $time ->
    [none] {""}
   *[some] {" "}from the { -point }, at { $time } { $clock }
}; too close to call whether it was reached
fact-match = Match
fact-match-said = { $sure } sure of this part of the recording
fact-gaps = Gaps
fact-gaps-said = { $share } of the distance was not recorded{ $time ->
    [none] {""}
   *[some] , and { $time } of the time
}{ $reckoned ->
    [start] ; where the leg began is reckoned
    [claim] ; where it ended is reckoned
    [both] ; where the leg began and where it ended is reckoned
   *[none] {""}
}
fact-step = Step
fact-what-if = What if
fact-what-if-said = with the planned { -azimuth } the count would have ended { $azimuth }, with the planned
    distance { $distance }
fact-from-the-point = { $size } from the { -point } (±{ $error } each way)

fact-line-kept = Line kept
fact-line-kept-said = on the planned line for { $share } of the way (to { $band }: no closer can be told); within { $corridor } of it for { $inside }
fact-line-left = { $line }; off it for good from { $from } on, to the { $side ->
    [left] left
   *[right] right
}
fact-drift = Drift
fact-drift-said = turned { $turn } from the first third to the last ({ $interval })
fact-point = { -point(form: "start") }
fact-point-said = { $verdict }; that the walker came within { $radius } is { $sure } likely by what was seen{ $silence }{ $elsewhere }
fact-point-silence = ; in a silence of the recording the walker may have come within { $size }
fact-point-elsewhere = ; with a chance of { $chance } another part of the recording is this leg, and there the walker came within { $size }
fact-verdict-found = found
fact-verdict-missed = missed
fact-verdict-too-close-to-call = too close to call
fact-climb = Climb
fact-climb-said = { $up } m up, { $down } m down, by the recording
fact-bypass = Bypass
fact-bypass-said = on the { $side ->
    [left] left
   *[right] right
}: { $out } out, { $on } on, { $back } back; { $even ->
    [yes] as far back as out
   *[no] not as far back as out
}
fact-passed-aside = on the { $side ->
    [left] left
   *[right] right
}: { $out } aside over { $on }, and not back to the line
fact-search = Search
fact-search-said = { $shape }, { $time }, { $path } walked, up to { $reach } from where it began{ $past }
fact-search-none = none: walked straight up to the { -point }, { $time }, { $path } walked
fact-search-past = ; up to { $past } past the { -point } along the planned line, which may be the count going on and no search
fact-search-square = in a widening square
fact-search-fan = out and back like a fan
fact-search-straight-on = straight on
fact-search-wandering = without a pattern
fact-stops = Stops
fact-stops-said = { $count } on the way, as for a new sight

fact-fixes = Fixes
fact-fixes-said = { $recorded } recorded, { $kept } kept
fact-times = Times
fact-times-none = none; no figure of time is given
fact-from = From
fact-from-said = { $begin } to { $end }
fact-interval = Interval
fact-interval-said = { $interval } s (median)
fact-noise = Receiver noise
fact-noise-said = { $noise } (standard deviation each way; from { $source })
fact-cleaned = Cleaned
fact-cleaned-said = { $what }: { $count } ({ $detail })
fact-cleaned-nothing = nothing to clean
fact-clock-utc = UTC
fact-clock-from-start = after the first fix
fact-no-gaps = none
fact-gaps-listed = { $count }: { $gaps } { $clock }
fact-forecast = Forecast
fact-forecast-inside = inside the 50 % ellipse
fact-forecast-between = between the 50 % and the 95 % ellipse
fact-forecast-outside = outside the 95 % ellipse
fact-forecast-said = { $where } (the outer one reaching { $major } along its length and { $minor } across): of ordinary walks { $nearer } end nearer
fact-forecast-began = { $said }. Counted from where the leg was begun, { $off } from its start; from the start itself { $whole } end nearer
