# The words of the trade that traditions differ in. A term named after another,
# as "-azimuth-bearing" after "-azimuth", may stand in its place.

-azimuth = { $form ->
    [many] azimuths
    [an] an azimuth
    [start] Azimuth
    [start-many] Azimuths
   *[one] azimuth
}
-azimuth-azimuth = { -azimuth }
-azimuth-bearing = { $form ->
    [many] bearings
    [an] a bearing
    [start] Bearing
    [start-many] Bearings
   *[one] bearing
}

-point = { $form ->
    [many] points
    [start] Point
    [start-many] Points
   *[one] point
}
-point-point = { -point }
-point-checkpoint = { $form ->
    [many] checkpoints
    [start] Checkpoint
    [start-many] Checkpoints
   *[one] checkpoint
}
-point-control = { $form ->
    [many] controls
    [start] Control
    [start-many] Controls
   *[one] control
}

-pace = { $form ->
    [start-many] Paces
    [one] pace
   *[many] paces
}
-pace-single-pace = { $form ->
    [start-many] Single paces
    [one] single pace
   *[many] single paces
}
-pace-double-pace = { $form ->
    [start-many] Double paces
    [one] double pace
   *[many] double paces
}
