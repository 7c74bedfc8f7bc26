# Keys and words of the map.

map-planned = planned leg
map-walked = walked on a leg, from leaving to the claim
map-bypass = bypass: round an obstacle and back to the line
map-search = search for the { -point }
map-other = walked between or outside the legs
map-gap = not recorded
map-point = { -point } of the course, arrival circle { $radius }
map-claim = claim: where the count said “here”, or the { -point } came into sight
map-reckoned = claim reckoned into a silence of the recording: nobody saw it
map-miss = miss, from the { -point } to the claim
map-halt = halt
map-leg = leg { $leg }
map-leg-off = leg { $leg }: { $size } off
map-angle = grid-magnetic angle { $angle }
map-km-east = km east on { $grid }, hundreds left out
map-km-north = km north
map-ground-elevation = Under the map: elevation{ $source ->
    [none] {""}
   *[some] {" "}from { $source }
}, shaded with light from the north-west.
map-ground-picture = Under the map: { $source }, paled.
map-ground-a-picture = Under the map: a picture, paled.
map-utm = UTM zone { $zone } { $half ->
    [north] north
   *[south] south
}, { $datum }
map-ups = UPS { $half ->
    [north] north
   *[south] south
}, WGS 84
