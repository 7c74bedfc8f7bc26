# The pace count.

pace-strip = { $file }: { $length } ±{ $within }, { $by ->
    [given] as given
    [ends] straight, from end to end
   *[path] along the smoothed path
} ({ $noise_from ->
    [none] receiver taken as { $noise } m
   *[halts] receiver { $noise } m, by its halts
}){ $counted ->
    [none] {""}
   *[some] , { $counted } { $pace ->
    [single] single
   *[double] double
} paces counted
}
pace-counted = Counted: { $rate } { $pace ->
    [single] single
   *[double] double
} paces to { $length }, over { $over } (±: 95 %)
pace-by-cadence = By cadence: { $rate } { $pace ->
    [single] single
   *[double] double
} paces to { $length }, over { $over } (±: 95 %)
pace-uphill = uphill
pace-level = level
pace-downhill = downhill
pace-ground = { $ground }: { $rate }, over { $over }
pace-no-ground = { $file }: no grounds told apart: { $why }.
pace-left-out = { $file }: { $length } walked without a cadence were left out of it.
pace-silent = { $file }: { $length } in silences of the recording.
pace-ridden = { $file }: { $length } were faster than anybody walks.
pace-walk-each = The counts do not tell uphill, level and downhill apart: walk a strip of each.
pace-nothing = No pace count: nothing was counted, and no recording has a cadence.
pace-on-a-leg = On a leg of { $leg } the count itself may be { $off } off (95 %), and more on other ground, by night or with a load.
pace-receiver = Most of that is the receiver: walk a longer strip, or give its length with --strip.
pace-for-plan = For the plan, under [course]:
pace-few-elevations = too few elevations
pace-few-on-leg = too few elevations on this leg
pace-scattered = elevations scatter by { $scatter } m at halts
pace-too-steep = { $share } of the way would be steeper than anybody walks
