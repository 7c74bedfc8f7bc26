# How the grid-magnetic angle was got.

angle-east = { $size } east
angle-west = { $size } west
angle-by-plan = The plan gives the grid-magnetic angle as { $angle }; the card uses that.
angle-computed = The plan gives no grid-magnetic angle; the card uses the computed one, { $angle }.
angle-day = { $date } ({ $source ->
    [plan] by the plan
    [option] as given with --date
   *[track] by the track
})
angle-day-unknown = the day of the walk, which is not known
angle-no-model = No magnetic model covers { $day }; the angle is not checked.
angle-error = {" "}(standard error { $error })
angle-norths = { $model } for { $day }: declination { $declination }{ $error }, grid convergence { $convergence };
    east is positive.
angle-sum = Grid-magnetic angle = declination − convergence = { $declination } − { $convergence } = { $angle }.
angle-rule = Magnetic { -azimuth } = grid { -azimuth } − angle. Leg { $leg }: { $grid } − { $angle } = { $magnetic }.
