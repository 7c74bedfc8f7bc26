# Every mistake walked down every leg, on paper.

rehearse-title = Rehearsal: { $course }
rehearse-heading = { $course }: rehearsal
rehearse-simulated = SIMULATED: { $ways } ways of going wrong on { $legs ->
    [one] { $legs } leg
   *[other] { $legs } legs
}, worked out from the plan; nobody walked them.
rehearse-resolution = Two ends nearer than { $resolution } are one place to a usual recording.
rehearse-keep = For those who set and lead the course. Keep it from the walkers: it shows every { -point }.
rehearse-planned = The course as planned: look at this first
rehearse-harm = Where a mistake may do harm
rehearse-no-harm = No mistake leads into the areas given, or out of the bounds given.
rehearse-harm-unknown = Not looked at: neither bounds nor areas were given.
rehearse-other-point = Where a mistake leads to another { -point }
rehearse-none = None.
rehearse-beside = Courses beside this one: { $courses }.
rehearse-leg-via = Leg { $leg }: { $start } to { $end }, { $length } along its via positions ({ $azimuth } grid straight across)
rehearse-leg = Leg { $leg }: { $start } to { $end }, { $azimuth } grid, { $length }
rehearse-at-point = At the { -point }
rehearse-picture-said = Where { $count } ways of going wrong end, numbered as in the table.
rehearse-figure-note = Grid north is up. Ends in the frame of the second picture have their numbers there; those further off than the leg is
    long are in the table only.
rehearse-alike = What this leg cannot tell apart
rehearse-alike-count = { $count ->
    [one] { $count } pair of mistakes ends at one place and runs alike; the likeliest:
   *[other] { $count } pairs of mistakes end at one place and run alike; the likeliest:
}
rehearse-alike-none = Nothing: all ends lie apart.
rehearse-alike-short = { $count ->
    [one] { $count } pair
   *[other] { $count } pairs
} of mistakes that this leg cannot tell apart.
rehearse-would-tell = What would tell them apart
rehearse-no-change = No change of the leg was tried: { $why }.
rehearse-where = Where each mistake ends
rehearse-column-number = No.
rehearse-column-mistake = Mistake
rehearse-column-size = Size
rehearse-column-ends = Ends at
rehearse-column-place = From the { -point }
rehearse-column-meets = Comes to
rehearse-column-others = Other sizes, and what they come to
rehearse-not-here = Shown is the likeliest way of each mistake; every way is in rehearsal.csv. Not made on this leg: { $causes }.
rehearse-not-here-none = none
rehearse-not-here-one = { $cause }: { $why }
rehearse-in-full = rehearsal.csv and rehearsal.json hold every way in full; the tracks are in the folder tracks.
rehearse-written = { $files }, and { $count } tracks in { $folder }

rehearse-itself-into = Leg { $leg } itself, walked as planned, leads into { $area }: move it.
rehearse-itself-out = Leg { $leg } itself, walked as planned, leads out of bounds: move it.
rehearse-danger = Leg { $leg } { $what }: { $causes }.
rehearse-ends-in = ends in { $area }
rehearse-leads-through = leads through { $area }
rehearse-through = through { $area }
rehearse-ends-out = ends out of bounds
rehearse-leaves = leaves the bounds on the way
rehearse-leaves-short = leaves the bounds
rehearse-out-of-bounds = out of bounds
rehearse-near = Leg { $leg } ends at { $point }: { $causes }.
rehearse-at = at { $point }
rehearse-of = { $point } of { $course }
rehearse-cause-way = { $cause } ({ $way })
rehearse-pair = { $first } and { $second }: { $apart } apart
rehearse-hidden = Hidden in ordinary error at any size: { $causes }.
rehearse-nothing-tells = No change that was tried tells these apart: { $pairs }. The walker's own card or log would, or another leg: leg-audit guide has a
    page for each.
rehearse-kept-off = A change that would tell them apart leads into { $areas } or too near, so it is not proposed, and no other that
    was tried will do: { $pairs }.
rehearse-make-longer = { $size } longer
rehearse-make-shorter = { $size } shorter
rehearse-make-right = turned { $size } right
rehearse-make-left = turned { $size } left
rehearse-then-apart = they then end { $apart } apart or more
rehearse-then-nowhere = one of the two then leads nowhere else
rehearse-proposal = { $first } and { $second }: make the leg { $moves }, its { -point } at { $reference }; { $then }. Pairs of
    mistakes that the leg cannot tell apart: { $before } now, { $after } then. The next leg changes with it.
rehearse-more = { $words } and { $count } more
rehearse-so-many = { $words } ({ $count } of them)
rehearse-some-more = { $words }; and { $count } more
rehearse-beyond = { $size } beyond
rehearse-short = { $size } short
rehearse-place-right = { $size } right
rehearse-place-left = { $size } left
rehearse-on-point = at the { -point }

rehearse-way-place = made for a place { $where } of it
rehearse-way-east = { $size } east
rehearse-way-west = { $size } west
rehearse-way-north = { $size } north
rehearse-way-south = { $size } south
rehearse-way-right = { $size } right
rehearse-way-left = { $size } left
rehearse-way-about = { $size }
rehearse-way-ratio = { $ratio } of the distance
rehearse-way-far = { $size } too far
rehearse-way-short = { $size } short
rehearse-way-on = { $size } on
rehearse-way-on-piece = { $way } on piece { $number } of { $count }
rehearse-way-pieces = piece by piece { $turns }
rehearse-way-as-planned = as planned
rehearse-way-straight = straight to { $point }
rehearse-way-first = to { $point } first
rehearse-way-to-right = to the right
rehearse-way-to-left = to the left

rehearse-not-steep = the leg is not steep enough, or its heights are not known
rehearse-no-heights = its heights are not known
rehearse-angle-of-day = the plan's angle is that of the day, or is worked out for it
rehearse-angles-alike = declination and angle are the same here, to the eye
rehearse-small-angle = the angle is too small to show
rehearse-no-other-point = no other known { -point } is near enough
rehearse-due-north = the leg runs to magnetic north or south
rehearse-none-follows = no leg follows that begins at its { -point }
rehearse-no-other-azimuth = no other leg has another { -azimuth }
rehearse-not-straight = the leg follows a line that is not straight
rehearse-nowhere-else = it leads nowhere else on this leg
rehearse-is-start = its { -point } is the start of the course

rehearse-note-bounds = No bounds were given: nothing is said of leaving them.
rehearse-note-areas = No no-go areas or hazards were given: nothing is said of coming into them.
rehearse-note-heights = Heights are not known: what slopes do to a walk is not rehearsed.
rehearse-note-datum = A datum or a marker that is off is rehearsed at a size that was chosen; the map in hand and a visit to the { -point }
    say how far it really is.
