# The class: its page, its short picture on a terminal, its tables.

class-title = Class: { $name }
class-simulated = Simulated class.
class-simulated-so = Recordings say of themselves that they are simulated.
class-day = Day
class-day-unknown = not known
class-walks = Walks
class-lanes = Lanes
class-standard = Standard
class-fingerprint = Fingerprint
class-clocks = Clocks
class-clocks-said = put { $minutes ->
    [0] {""}
   *[other] { $minutes } min{" "}
}{ $seconds } s { $later ->
    [yes] forward
   *[no] back
}: { $ground }

class-short = In short
class-met = { $met } of { $walks ->
    [one] { $walks } walk
   *[other] { $walks } walks
} on { $lanes ->
    [one] { $lanes } lane
   *[other] { $lanes } lanes
} met the standard{ $rest }.
class-not-met = ; { $count } did not
class-too-close = ; { $count ->
    [one] { $count } is
   *[other] { $count } are
} too close to call
class-untold = ; for { $count } it cannot be told: evidence is missing
class-unevidenced = ; for { $count } there is no evidence, which is not a fail
class-course-fault = { $point } (leg { $leg } of { $lane }): the fault is the course’s; the { -point } is left out of the grades, see below.
class-plan-angle = { $lane }: the plan’s grid-magnetic angle, { $angle }, does not agree with a check of it. Put it right
    before blaming walkers for errors of that size.
class-all-found = Every { -point } was found by everybody of whom there is evidence.
class-caught = { $point } (leg { $leg } of { $lane }) was missed most often: { $found } of { $walkers } found it, { $missed } missed it{ $doubtful ->
[0] {""}
   *[other] , { $doubtful } doubtful
}{ $unevidenced ->
[0] {""}
   *[other] , for { $unevidenced } there is no evidence
}.
class-caught-alike = Missed most often, all alike: { $legs }; on each of them { $share } of the walkers missed the { -point }.
class-leg-of = { $legs ->
    [one] leg { $names } of { $lane }
   *[other] legs { $names } of { $lane }
}
class-none-missed = No { -point } was missed for sure; { $count ->
    [one] { $count } is
   *[other] { $count } are
} doubtful.
class-commonest = The commonest named mistake is { $cause }: on { $legs ->
    [one] { $legs } leg
   *[other] { $legs } legs
} of { $walkers ->
    [one] { $walkers } walker
   *[other] { $walkers } walkers
}.
class-asked = { $count ->
    [one] { $count } question below waits
   *[other] { $count } questions below wait
} for a person.

class-shows = What the class shows
class-shows-nothing = Nothing that only a class can show stands out.
class-to-ask = To ask
class-matrix = Walkers by { -point(form: "many") }
class-matrix-note = Lane by lane, in the order of the roster or, without one, of the files: nobody is ranked. A { -point } is found where the nearest approach lies within the
    radius, by the whole recording (the walker’s debrief counts a { -point } only on its own leg, and where the two counts differ
    both are told), missed only where it lies outside by more than the whole error, and doubtful between. No track is no evidence,
    and no fail. Lengths are the miss: from the { -point } to where the walker’s own navigation ended, before any search.
    Each { -point } opens the walker’s debrief at its leg; “appeal” opens the evidence for and against.
class-found = found
class-doubtful = doubtful
class-missed = missed
class-no-evidence = no evidence
class-hatched = hatched: left out of the grades
class-walker = Walker
class-leg = leg { $leg }{ $out ->
    [yes] , left out
   *[no] {""}
}
class-left-out = { $point } (left out)
class-appeal = appeal
class-attempt = { $name }, attempt { $number }
class-verdict-pass = standard met
class-verdict-fail = standard not met
class-verdict-doubtful = too close to call
class-verdict-untold = cannot be told
class-verdict-no-evidence = no evidence
class-result = { $verdict }: { $found } found, { $needed } needed{ $hours ->
    [none] {""}
   *[some] , { $hours } h
}{ $late ->
    [none] {""}
    [untold] ; the time it took is in doubt
   *[some] , { $late } late
}
class-own-legs = the debrief counts { $count }, on their own legs

class-caught-all = Leg by leg
class-caught-points = { -point(form: "start") } by { -point }
class-any-order = none planned: { $count } { -point(form: "many") } in any order
class-caught-note = Mean miss of all who walked the leg, with twice its standard error.
class-lane-leg = Lane, leg
class-lane-point = Lane, { -point }
class-ends = From – to
class-azimuth = Grid { -azimuth }
class-distance = Distance
class-climb = Climb
class-counts = Found, doubtful, missed, no evidence
class-mean-miss = Mean miss
class-mean-miss-said = { $place } (±{ $error })
class-fault-mark = (the course’s fault)

class-tracks = All tracks on one leg
class-tracks-note = Each leg turned so that everybody walks to the right, one scale both ways; who went farther aside runs off the
    picture.
class-key-planned = planned line
class-key-point = { -point } and arrival radius
class-key-found-track = walked by one who found the { -point }, and his claim
class-key-missed-track = by one who did not, and his claim with his number
class-key-left = where a walker left for the next leg
class-tracks-said = { $found } of { $walks ->
    [one] { $walks } walk
   *[other] { $walks } walks
} found the { -point }, { $missed } missed it, { $doubtful ->
    [one] { $doubtful } is
   *[other] { $doubtful } are
} doubtful.
class-picture-title = { $lane }, { $leg }
class-side = right | left of the line

class-side-by-side = Lanes side by side
class-lane = Lane
class-standard-met = Standard met
class-of = { $count } of { $all }
class-legs = Legs
class-length = Length
class-out-of-sight = An ordinary walk ends out of sight of its { -point }
class-middle-time = Middle time
class-plan = Plan
class-not-known = not known

class-causes = Causes counted
class-causes-note = Mistakes that a debrief names as likelier than not. A cause is a hypothesis; ordinary error and what the
    evidence does not decide are not counted.
class-consistent = Consistent with
class-walkers = Walkers
class-legs-drawn = Legs, drawn
class-no-causes = No mistake is named on any leg.

class-time = Where the time went
class-time-note = Hours and minutes from leaving the start to the last claim, with the search for its { -point } where there was one.
    The rest before and after is left out. It is not the time of the standard, which stands by the walker’s name above and
    ends within the radius of the last { -point }.
class-moving = moving
class-searching = searching
class-halted = halted
class-moving-begin = Moving
class-searching-begin = Searching
class-halted-begin = Halted
class-together = Together
class-drawn = Drawn to one scale

class-the-standard = The standard
class-locked = Locked by the fingerprint of plans, standard and program version:
class-asks-points = { -point(form: "start-many") } to find
class-asks-all = all
class-asks-within = Found within
class-asks-time = Time limit
class-asks-late = For each minute late
class-asks-late-said = { $off } off the score
class-asks-azimuth = { -azimuth(form: "start") } within
class-asks-distance = Distance within
class-asks-order = Order
class-asks-planned = as planned
class-asks-free = free
class-asks-roads = Roads
class-figure-points-to-find = { -point(form: "many") } to find
class-figure-radius-m = the radius
class-figure-survey-sd-m = the survey of the { -point(form: "many") }
class-figure-time-limit-min = the time limit
class-figure-late-grace-min = the grace for lateness
class-figure-late-penalty-per-min = what a minute late costs
class-figure-azimuth-tolerance-deg = the { -azimuth }
class-figure-distance-tolerance-percent = the distance
class-figure-order = the order
class-figure-road-rule = the rule for roads
class-figure-road-distance-m = the distance from roads
class-figure-weights = the weights of the score
class-no-source = The standard names no source for: { $figures }.
class-source = { $figure }: { $source }
class-roads-none = not asked
class-roads-cross-only = crossed only
class-roads-keep-off = kept off
class-roads-said = { $rule }{ $by ->
    [none] {""}
   *[some] ; nearer than { $by } counts as on the road
}; a person judges

class-recordings = To know of the recordings
class-notes = Notes
class-signs = A human signs
class-signs-note = The grades above are proposals. Proof at the marker comes before a track, and whoever signs has looked at the
    questions.
class-name = Name
class-signature = Signature
class-sign-day = Day
class-made-by = Made by leg-audit { $version }. Figures are rounded from their standard error; class.json holds them in full.

class-terminal-title = { $name }: { $walkers ->
    [one] { $walkers } walker
   *[other] { $walkers } walkers
}, { $lanes ->
    [one] { $lanes } lane
   *[other] { $lanes } lanes
}
class-terminal-standard = Standard: { $standard }. Fingerprint: { $fingerprint }.
class-terminal-key = A proposal: a human signs. + found, x missed, ? doubtful, . no evidence; (left out).
class-terminal-asked = asked: { $message }
class-terminal-found = found: { $message }
class-terminal-begun = { $lanes ->
    [one] { $lanes } lane
   *[other] { $lanes } lanes
} ({ $names }), { $recordings ->
    [one] { $recordings } recording
   *[other] { $recordings } recordings
}, standard: { $standard }.
class-terminal-not-kept = Not kept in the records, for it is asked above whose walk it is: { $walkers }. Put the roster,
    the recording or the date of the plan right and grade again.
class-terminal-old = { $folder } holds { $count } that are not of this class, from an earlier run. They stay; take them away before
    you share the folder.
class-terminal-replaced = { $folder } holds another class, or this one graded otherwise: { $name }{ $days ->
    [none] {""}
   *[other] {" "}of { $days }
} ({ $walkers ->
    [one] { $walkers } walker
   *[other] { $walkers } walkers
}, fingerprint { $fingerprint }): this one takes its place. With --out DIR both are kept.
class-terminal-replaced-unknown = { $file } stood there already and is no class that could be read: this one takes its place.
class-terminal-written = Written to { $folder }: { $files }, { $sheets ->
    [0] and a folder for each walker in debriefs
    [one] a folder for each walker in debriefs, and { $sheets } sheet in { $appeals }
   *[other] a folder for each walker in debriefs, and { $sheets } sheets in { $appeals }
}.
class-terminal-taken = { $file }: taken as a { $kind ->
    [plan] plan
   *[recording] recording
}; { $why ->
    [both-first] it holds a route and a track, and comes first
    [route-aside] its route was left aside
    [no-track] it holds points and no track
   *[no-points] it holds no points at all
}.
class-terminal-aside = { $folder }: its recordings were taken, and { $plans } left aside; name a plan itself, or its own folder.
class-terminal-looked-through = Looked through: { $done } of { $all }, { $last }, { $rate } a second, { $left } s left
class-terminal-graded = Graded: { $done } of { $all }, { $last }, { $rate } a second, { $left } s left
class-terminal-kept = { $done } of { $all } walkers are done already and were kept.
class-terminal-stopped = Stopped: { $done } of { $all } walkers are done and kept in { $folder }. The same command goes on from there.
class-terminal-no-roads = { $file } holds no road: draw roads as lines with the kind "road".
class-terminal-no-road-rule = The standard { $standard } has no rule for roads: nothing is said of them.
