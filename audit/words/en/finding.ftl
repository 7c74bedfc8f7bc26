# Where a plan disagrees with its own sums.

finding-by-points = its { -point(form: "many") } give
finding-by-magnetic = its magnetic { -azimuth } gives
finding-by-angle = grid { $grid } with the grid-magnetic angle of { $angle } gives
finding-by-convergence = grid { $grid } with the convergence of { $angle } gives
finding-azimuth = Leg { $leg }: the plan gives a { $north } { -azimuth } of { $given }; { $because } { $expected }, { $off } away.{ $slips }{ $right }{ $explained }
finding-azimuth-right = {" "}Its { $north } { -azimuth }, { $azimuth }, agrees with them.
finding-distance = Leg { $leg }: the plan gives { $given }; between its { -point(form: "many") } it is { $along }.{ $slips }{ $explained }
finding-distance-via = Leg { $leg }: the plan gives { $given }; along its via positions it is { $along }.{ $slips }{ $explained }
finding-paces = Leg { $leg }: the plan gives { $given } { -pace }; { $distance } at { $rate } { -pace } per 100 m is { $expected }.{ $slips }
finding-reference = {" "}The reference of { $point } explains it.
finding-via-name = via { $number } of leg { $leg }
finding-via-astray = Leg { $leg }: the way over via { $number }, "{ $given }", is { $over }, past it { $past }. Check its reference.{ $explained }
finding-line-long = Leg { $leg }: along its via positions it is { $along }, straight { $straight }. Check their references.{ $explained }
finding-overlong = Leg { $leg }: between { $start } and { $end } lie { $km } km. Check their zone and 100 km square.{ $explained }
finding-so-would = {" "}So would { $text } for { $point }: { $what }.
finding-reference-slip = The reference of { $point }, "{ $given }", has { $what }, it seems: { $text } would make { $legs } right.{ $also }
finding-namesake = The name { $point } stands for two places, { $apart } apart: "{ $given }" in { $legs } and "{ $other }" in { $others }.{ $slip } Put the wrong one right, or give each place its own name; until then the one in { $legs } is called "{ $name }".
finding-namesake-in-capitals = The names { $point } and { $name } differ in capitals only and stand for two places, { $apart } apart: "{ $other }" in { $others } and "{ $given }" in { $legs }.{ $slip } Put the wrong one right, or give each place its own name.
finding-parted-by = {" "}The difference: { $what }.
finding-angle-age = The grid-magnetic angle is of { $of }, { $years } years before the walk.
finding-angle-years = The grid-magnetic angle is of { $of }, { $years ->
    [one] a year
   *[other] { $years } years
} before the walk.
finding-angle-bring-up = { $said } Bring it up to date by the annual change in the map's margin.{ $model }
finding-angle-model = {" "}For the walk the magnetic model and the grid give { $model } (standard error { $error }).
finding-angle-moves = { $said } By the magnetic model it moved { $moved } since then: { $given } becomes { $current }. The model itself and the grid give { $model } for the walk (standard error { $error }).
finding-angle-nearer = { $said } The magnetic model and the grid give { $then } for that date, and { $model } for the walk (standard error { $error }): { $given } lies nearer to the latter, and may be up to date already. Check the margin of the map in hand.
finding-angle-later = The grid-magnetic angle is of { $of }, and the walk of { $walk }. One of the two dates is wrong.
finding-angle-at-odds = The plan gives a grid-magnetic angle of { $given } and dates it { $of }; for that date the magnetic model and the grid give { $then } (standard error { $error }). Angle and date do not go together.{ $slips }{ $walk } Check the map in hand and its date.
finding-angle-legs = { $said } With the right angle nothing is wrong with { $cleared }.
finding-angle-cleared = { $what ->
    [magnetic_azimuth_deg] { $count ->
        [one] the magnetic { -azimuth } of { $legs }
       *[other] the magnetic { -azimuth(form: "many") } of { $legs }
    }
    [grid_azimuth_deg] { $count ->
        [one] the grid { -azimuth } of { $legs }
       *[other] the grid { -azimuth(form: "many") } of { $legs }
    }
   *[other] what differs on { $legs }
}
finding-angle-of-walk = {" "}It would fit the day of the walk: { $now }.
finding-undated = The plan gives a grid-magnetic angle of { $given } and no date; in { $year } the magnetic model and the grid give { $model }, and no map in use is so far from that.{ $slips }
finding-shared-angle = The { $count } legs that give both { -azimuth(form: "many") } turn grid into magnetic with { $shared }; the angle of the course is { $given }.
finding-own-sum = {" "}Its own sum uses { $angle }.
finding-west-of = { $size } west
finding-east-of = { $size } east
finding-south-of = { $size } south
finding-north-of = { $size } north
finding-sheet-swapped = The corners of the sheet are swapped: "{ $first }" is its north-east and "{ $second }" its south-west. The south-west one comes first.
finding-sheet-corners = The corners of the sheet, "{ $first }" and "{ $second }", are not its south-west and its north-east. Those are wanted, in this order.
finding-off-sheet = { $point } lies { $beyond } of the map sheet. Check its reference, or the corners of the sheet.
finding-fix-azimuth = its { -azimuth } only to ±{ $to } (95 %), and a compass holds { $holds }
finding-fix-end = its end only to { $to } either way, and the arrival radius is { $radius }
finding-coarse = Leg { $leg }, { $length }: the references of its { -point(form: "many") }{ $figures } fix { $needs }. Give finer references.
finding-figures = {" "}({ $figures } figures, squares of { $square } m)
finding-off-grid = { $point } lies { $off } outside the area of the grid { $grid } ({ $name }); the UTM grid there is { $usual }.
finding-angle = The plan gives a grid-magnetic angle of { $given }; for { $date } the magnetic model and the grid give { $model } (standard error { $error }).{ $slips }{ $age } Check the map in hand and its date.
finding-map-age = {" "}A map about { $years } years old could carry it: the angle moves { $yearly } a year.
