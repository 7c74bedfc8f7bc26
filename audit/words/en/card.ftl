# The card to carry.

card-title = { $course }: leg card
card-day = { $day }, { $legs ->
    [one] { $legs } leg
   *[other] { $legs } legs
}, { $distance }
card-day-unknown = day not given
card-grid = grid { $grid }
card-angle = grid-magnetic angle { $angle } ({ $from })
card-angle-computed = computed for { $day }
card-angle-of = of { $day }
card-angle-no-year = its year is not given
card-count = { $paces } { $pace ->
    [single] single
   *[double] double
} paces to { $length }
card-count-blank = pace count: ______ to { $length }

card-warnings = Warnings
card-not-yet = Not to be carried yet: { $count ->
    [one] { $count } thing
   *[other] { $count } things
} to put right; see leg-audit check.
card-free = The { -point(form: "many") } may be visited in any order; these legs are in that of the file.
card-no-year = The plan does not say of what year the angle is: look at the map's margin.
card-old = The angle is { $years } years old: do not go by it. Take it from a new map, or leave it out of the plan to have
    it computed.
card-in-doubt = Everything marked ! is worked out with the angle as the plan gives it, { $angle }: put the angle right before
    you set it.
card-disputed = The check does not bear out what is marked ! on { $legs }, or it was worked out from such a number: put it
    right before you set or count it.
card-in-doubt-both = What is marked ! is worked out with the angle as the plan gives it, { $angle }, or is a number of { $legs }
    that the check does not bear out, or was worked out from one: put angle and numbers right before you set or count them.
card-marked = ! { $value }

card-safety = Safety bearing
card-safety-none = none in the plan. Ask for it: ______ magnetic, leads to __________________
card-safety-said = { $magnetic } magnetic ({ $total })
card-safety-magnetic = given as magnetic; grid { $grid }
card-safety-grid = grid { $grid } − { $angle } = { $magnetic }
card-safety-true = given as true; { $total }
card-safety-bezel = bezel: { $setting }

card-leg = Leg { $title }
card-leg-title = { $leg }: { $start } to { $end }
card-ends = { $start } to { $end }
card-ends-reckoned = { $start } to { $end } (where { -azimuth } and distance lead)
card-via = via { $number }
card-piece = { $start } to { $end }: { $from_reference } to { $to_reference }
card-all-pieces = in all: { $what }
card-plan-gives = { $value } (plan { $given })
card-magnetic = magnetic
card-grid-azimuth = grid
card-true = true
card-back = back magnetic
card-distance = distance
card-paces = { $pace ->
    [single] single
   *[double] double
} paces
card-clicks = bezel clicks
card-clicks-said = { $count }{ $hand ->
    [left] {" "}left
    [right] {" "}right
   *[none] {""}
}
card-climb = climb
card-climb-said = +{ $up } −{ $down } m
card-paces-walked = { $pace ->
    [single] single
   *[double] double
} paces walked
card-left-at = left at
card-reached-at = reached at
card-time = time: { $times }
card-note = note: { $note }

card-setting = { $count ->
    [0] no click sets
    [one] { $count } click { $hand ->
        [left] left
       *[right] right
    } sets
   *[other] { $count } clicks { $hand ->
        [left] left
       *[right] right
    } set
} { $azimuth }{ $off }
card-setting-off = , { $size } { $side ->
    [left] left
   *[right] right
}
card-ends-on-line = { $setting }: ends on the line
card-ends-near = { $setting }: ends { $size } from { $point }
card-ends-off = { $setting }: ends { $size } { $side ->
    [left] left
   *[right] right
} of { $point }; look { $side ->
    [left] right
   *[right] left
}

card-all-legs = All legs
card-whole = { $distance }; { $climb }
card-climb-unknown = climb: not known, no heights given
card-climb-whole = climb { $up } m, descent { $down } m ({ $from })
card-times = Times without rests: { $times }.
card-level = The ground is taken for level in the times.
card-level-legs = The ground is taken for level in the times of { $legs }.

card-angle-heading = Grid-magnetic angle
card-bezel = Bezel
card-bezel-turning = Clicks of { $click }°, { $round } round the bezel. Line of the bezel over the index line is 0. Left
    (anticlockwise, seen from above) adds, right takes off. Then turn until the north arrow lies under the line.
card-bezel-ten = So 10 right is { $left } left.
card-bezel-angle = The angle alone, { $angle }: { $clicks } clicks{ $hand ->
    [left] , to the left
    [right] , to the right
   *[none] {""}
}.
card-bezel-leg = On leg { $leg }, from grid { $grid } as set: { $ways }.
card-bezel-or = { $before }. Or { $last }
card-bezel-dark = Who can read the dial sets the { -azimuth } itself: clicks are for the dark.
card-rules = Times, without rests
