# The page: headings, notes below figures, names of columns.

page-title = Debrief: { $course }
page-simulated = Simulated walk.
page-simulated-so = Nobody walked this.
page-short = In short
page-map = Plan and walk
page-map-keys = Map: arrow keys move it, plus and minus zoom, 0 shows the whole course
page-more-or-less = Show more or less of the map
page-closer = Closer
page-farther = Farther
page-west = West
page-east = East
page-north = North
page-south = South
page-whole-course = Whole course
page-map-note = Grid north is up. GN grid north, MN magnetic north; norths closer than { $apart } are
    drawn { $apart } apart. Drawn lines keep within { $within } of the recording; the figures are
    made from all of it. Letters that would cover each other are left out.
page-map-use = Drag the map, or turn the wheel with Ctrl held. With the map chosen, arrow keys, + and − move it
    and 0 shows the whole course. Point at the map or a strip, or tap it, to put the ring there.
page-over-time = The walk over time
page-walk-note = From leaving for each leg (numbered) to its claim: offset from the planned line with the
    receiver’s noise shaded, one standard deviation ({ $noise }) either way; then height and speed of the
    whole recording. Speed and direction are those of { $window } s; the ring stands at moments { $step }
    apart and between them on a straight line.{ $gaps ->
    [0] {""}
   *[other] {" "}Thin dashes: not recorded, drawn straight across.
}{ $reckoned ->
    [0] {""}
   *[other] {" "}Where a leg begins or ends in them, that place is reckoned; such a claim is a hollow diamond.
}
page-legs = The legs
page-legs-note = Grid { -azimuth(form: "many") }, walked ones with half their 95 % interval. The claim is where the walker’s own
    navigation ended, before any search; distances run straight to it, of a leg with bends along its line. “As planned” means that the error is
    smaller than what this recording can show.
page-leg = Leg
page-status = Status
page-azimuth = { -azimuth(form: "start") }
page-distance = Distance
page-off-line = Off line at claim
page-miss = Miss
page-found = Found
page-consistent = Consistent with
page-planned = planned
page-walked = walked
page-error = error
page-azimuth-planned = { -azimuth(form: "start") } planned
page-azimuth-walked = { -azimuth(form: "start") } walked
page-azimuth-error = { -azimuth(form: "start") } error
page-distance-planned = Distance planned
page-distance-walked = Distance walked
page-distance-error = Distance error
page-off-line-long = Off the line at the claim
page-each = Leg by leg
page-each-note = Each strip shows the leg from above with the walker going to the right: offset from the planned line
    against distance along it, the two not to one scale. Shaded: receiver noise, one standard deviation
    ({ $noise }) either way. The upright bar at the { -point } is the arrival radius. Below each strip the
    arrows of the planned and the walked { -azimuth }, with the 95 % interval of the walked one shaded; beside
    them where the miss came from: its parts head to tail lead from the { -point } (cross) to the claim
    (diamond), and close on the miss.
page-leg-title = Leg { $leg }: { $ends }
page-gap = not recorded.
page-reckoned = reckoned: nobody saw the walker there.
page-own-line = own line: the planned { -azimuth } from where the walker really began.
page-drawn-within = Drawn within { $within }.
page-doubt = Not sure.
page-causes-left = { $count ->
    [one] { $count } less likely cause in debrief.json.
   *[other] { $count } less likely causes in debrief.json.
}
page-settles = What would settle it:
page-practise = To practise:
page-run = Run
page-moment = Moment of the walk
page-misses = Where the misses came from
page-target-note = Every claim (diamond, with the number of its leg) as seen from its { -point } by the walker: ahead is up.
    Bars: one standard error either way. The heavy circle is the arrival radius, { $radius }.{ $forecasts ->
    [none] {""}
    [only] {" "}Dotted: the ellipse that holds 95 of 100 ordinary walks of the leg.
    [easiest] {" "}Dotted: the ellipse that holds 95 of 100 ordinary walks of the easiest leg.
   *[both] {" "}Dotted: the ellipses that hold 95 of 100 ordinary walks of the easiest and of the hardest leg.
} A leg left of the cross ended left of its { -point }.
page-ledger-note = { $unit ->
    [yards] Yards
   *[metres] Metres
} east or west, north or south on the grid, rounded; the five parts add up to the miss.
page-named = { $name }: { $meaning }
page-part-inherited = inherited
page-part-plan = plan
page-part-heading = heading
page-part-distance = distance
page-part-detour = detour
page-part-total = total
page-meaning-inherited = began away from the { -point }
page-meaning-plan = card against { -point(form: "many") }
page-meaning-heading = turned off the { -azimuth }
page-meaning-distance = walked more or less
page-meaning-detour = sideways, not walked back
page-meaning-total = the miss
page-coaching = To keep and to work on
page-keep = Keep
page-work-on = Work on
page-recording = The recording
page-plan = The plan
page-plan-agrees = The figures of the plan agree with each other.
page-angle = The grid-magnetic angle
page-cautions = Cautions
page-made-by = Made by leg-audit { $version }.
page-rounded = Figures are rounded from their standard error, to two digits of it at most
    (JCGM 100:2008, 7.2.6); debrief.json holds them in full.
page-undrawn = Drawn are the { $drawn } of { $walked } walked legs that missed by most; the others are told in few words, so that the
    page stays small. The paper (--pdf) draws them all, and debrief.json has every figure.
