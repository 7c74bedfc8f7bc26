# The check of a plan.

check-agrees = Nothing to put right: the plan agrees with its own sums.
check-first = { $count ->
    [one] { $count } thing
   *[other] { $count } things
} to put right in { $plan }: see { $command }
check-things = { $count ->
    [one] { $count } thing
   *[other] { $count } things
} to put right.
check-shared = { $slip }: legs { $names }.
check-agrees-mark = agrees
check-differs-mark = DIFFERS
check-course-mark = DIFFERS by the course's angle
check-plan = plan
check-grid-azimuth-deg = grid { -azimuth }
check-magnetic-azimuth-deg = magnetic { -azimuth }
check-back-magnetic-azimuth-deg = its back { -azimuth }
check-true-azimuth-deg = true { -azimuth }
check-grid-from-true-deg = grid of the true
check-across = straight across, where nobody walks
check-whole-leg = the whole leg
check-distance-m = distance
check-paces = { -pace }
check-root = root of { $east }² + { $north }²
check-via = along the via positions
check-pacing = { $distance } x { $rate } / 100
check-mils = { $given } mil
check-less = { $azimuth } - { $angle }
check-plus = { $azimuth } + { $angle }
