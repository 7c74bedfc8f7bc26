# What to know of a plan and its card.

note-scale-longer = A distance on the grid { $grid } is { $share } longer than on the ground here.
note-scale-shorter = A distance on the grid { $grid } is { $share } shorter than on the ground here.
note-datum = Between GPS positions and the grid { $grid } ({ $name }) { $size } m are uncertain.
note-coarse = The reference of { $point } names a square of { $square }, wider than the arrival radius of { $radius }; its centre is taken.
note-angle-changes = Over the course the grid-magnetic angle changes by up to { $most }; the card uses that of { $point } for every leg.
note-track-date = The plan has no date; the track's own, { $date }, is taken.
note-no-date = Neither plan nor track has a date: the grid-magnetic angle given stands unchecked.
note-carried-back = No magnetic model at hand covers { $date }: { $model } is carried back to it by its yearly change, with a standard error of { $error }. The plan gives no { -azimuth(form: "many") } that hang on it; magnetic ones told here are no better than that.
note-no-model = No magnetic model at hand covers { $date }: the grid-magnetic angle given stands unchecked.
note-angle-computed = The grid-magnetic angle is computed ({ $model }, { $date }): { $angle }, standard error { $error }. Check it against the map in hand.
note-weak-field = The horizontal magnetic field is weak here ({ $field } nT): a compass is sluggish and can be far off.
note-other-day = The plan is for { $plan } and the track is of { $track }: the grid-magnetic angle changed by about { $change } between them.
note-paces-for = Leg { $leg } has no distance; its { -pace } stand for { $length }.
note-line-long = Leg { $leg }: along its via positions it is { $along }, straight { $straight }. If no round is meant, check their references.
note-step = { $rate } { $pace ->
    [single] single
   *[double] double
} paces to 100 m make a step of { $step } m; people walk with steps of { $shortest } to { $longest } m. See which pace is
    counted: a double pace is two steps.
