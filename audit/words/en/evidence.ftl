# The one sentence of a cause: what it predicts, and what was seen.

evidence-predicted = Predicts { $predicted }{ $beside }; { $seen }{ $scatter }{ $log }.
evidence-scatter-heading = , and from leg to leg this walker scatters by some { $size }
evidence-scatter-distance = , and from leg to leg this walker's distances scatter by some { $share }
evidence-beside = {" "}by itself, { $both } together with the mistake that legs share
evidence-unpredicted = { $seen }, { $distance }{ $bias }{ $start }{ $log }{ $why }.
evidence-why-portion = ; whether this part of the walk is the leg's is in doubt
evidence-why-swerve = ; a stretch of { $length } on another bearing may be due to the ground, to iron or to an obstacle
evidence-why-more = ; no one mistake stands out from its look-alikes
evidence-line-left = The planned line was not followed: { $path } were walked over the ground, and the line is { $line } long. Neither { -azimuth } nor distance shows a cause.
evidence-carried = Carried over from the plot of the leg before: measured from where that had its end on the map, this one leads { $turn } of the planned { -azimuth }, { $far }; { $seen }, { $distance }{ $log }. No mistake of its own is told.
evidence-never-near = { $point } was never nearer than { $away }, and no part of the walk fits the leg.
evidence-looked-for = Between the { -point(form: "many") } before and after { $point } { $walked } were walked, and by way of it they are { $planned } apart: it may have been looked for or left out, and nothing tells which.
evidence-displaced = The starts of legs { $legs } lie alike, { $place } of their { -point(form: "many") }: the receiver, or the list of { -point(form: "many") }, may be on another datum, and then what is told of starts and { -point(form: "many") } is off by as much.
evidence-missed-by-little = { $passed } is as near as the walk came while it was on no other leg: missed by little or left out, and nothing tells which.
evidence-in-turn = Its { -point(form: "many") } were passed one after the other as planned, { $passed }: the leg may have been walked, and nothing between fits it well enough to tell.
evidence-free-turn = Its { -point(form: "many") } were passed, { $passed }, the order is free, and no part of the walk fits the leg well enough to tell.
evidence-out-of-turn = The { -point(form: "many") } were passed in another order than planned, { $passed }.
evidence-passed-elsewhere = Passed only elsewhere in the walk, on another leg or before or after the course, { $passed }; no part of the walk fits the leg.
evidence-passed-at = { $point } at { $time } ({ $away } off)
evidence-gave-up = The course may have been given up before this leg: the way then led by a later { -point } without a stop, as a way home may.
evidence-slipped-reference = The walk { $what ->
    [halts] halts
   *[bends] bends
}{ $time } { $away } from where { $point } would lie, { $place } of its place, with one slip among the digits of its { $axis ->
    [easting] easting
   *[northing] northing
}, { $slipped } for { $written }: the plan's slip, or the walker's.
evidence-at-time = {" "}at { $time }
evidence-not-recorded = The leg may have been walked where the recording does not show it.
evidence-together = ; this walker's own lean over all legs, mistakes taken off, is put at { $turn }
evidence-began-off = ; it began { $place } of its start
evidence-recorded-from = ; recorded from { $place } of its start on
evidence-log = ; by the log the compass was set { $setting }
evidence-log-as-card = ; by the log the compass was set { $setting }, but a log copied from the card would say so too
evidence-set-as-planned = as planned
evidence-set-off = { $turn } of the planned { -azimuth }
evidence-set-as-own-card = as the walker's own card says
evidence-set-off-own-card = { $turn } of what the walker's own card says
evidence-set-which-is = { $beside } ({ $planned })
evidence-no-turn = { $size } off
evidence-an-end = an end { $place } of the { -point }
evidence-ended = ended { $place } of it
evidence-an-end-from-start = an end { $place } of the planned one, counted from where the leg began
evidence-ratio = { $ratio } of the distance
evidence-walked-ratio = walked { $ratio } of it, give or take { $error }
evidence-seen-turn = seen { $turn }
evidence-ended-aside = ended { $aside } of the line held
evidence-walked-length = walked { $length }, give or take { $error }
evidence-on-card = { $begin ->
    [yes] Walked
   *[no] walked
} on the planned { -azimuth }, give or take { $error }
evidence-off-card = { $begin ->
    [yes] Walked
   *[no] walked
} { $turn } of the planned { -azimuth }, give or take { $error }
evidence-distance-right = the distance right
evidence-distance-in-part = its distance recorded in part
evidence-distance-long = { $share } long
evidence-distance-short = { $share } short
