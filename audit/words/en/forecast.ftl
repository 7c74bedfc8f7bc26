# Where ordinary walks end, before anyone walks.

forecast-head-leg = leg
forecast-head-length = { $unit ->
    [yards] yards
   *[metres] metres
}
forecast-head-along = along
forecast-head-across = across
forecast-head-near = 50 % within
forecast-head-far = 95 % within
forecast-head-sight = in sight
forecast-head-offset = sure offset
forecast-taken = Walker: { $source }. A leg is turned by { $turn }{ $side ->
    [left] , { $mean } left on average
    [right] , { $mean } right on average
   *[none] {""}
}, and its distance is { $far ->
    [short] { $size } short on average and{" "}
    [far] { $size } too far on average and{" "}
   *[none] {""}
}out by { $ratio } (standard deviations).
forecast-ordinary = an ordinary walker, by the settings of the program
forecast-earlier = { $count ->
    [one] { $count } earlier leg
   *[other] { $count } earlier legs
} of the walker{ $left ->
    [0] {""}
   *[other] ; { $left } left out as too far off for ordinary error
}
forecast-changed = { $source }, changed by the options given
forecast-clicks = { -azimuth(form: "start-many") } are set in clicks of { $click }°: each straight leg is turned by what rounding leaves.
forecast-middle = { $middle } ± { $error }
forecast-axes = { $major } by { $minor }
forecast-meaning-places = Along and across: middle and standard deviation of where walks of the leg end, beyond (+) and right (+) of
    the { -point }, each begun at the start of the leg.
forecast-meaning-within = Within: semi-axes of the ellipse that holds so many walks.
forecast-meaning-sight = In sight: within { $sight } of the { -point } at the end of the count.
forecast-meaning-offset = Sure offset: aimed off by so much, 95 walks in 100 end on that side.
forecast-all = { $count ->
    [one] The one { -point }
   *[other] All { $count } { -point(form: "many") }
} in sight: { $share }.
forecast-off = Aimed off { $size } to the { $side ->
    [left] left
   *[right] right
}:
forecast-off-leg = leg { $leg }: { $turn } { $side ->
    [left] left; ends left
   *[right] right; ends right
} of the { -point } { $chance }; in sight at once { $sight }
forecast-no-legs = the earlier debriefs hold no leg of ordinary error; the usual is taken.
forecast-near-area = { $point } lies { $away } from { $kind ->
    [no-go] the no-go area
   *[hazard] the hazard
} { $area }, nearer than { $near }: { $leg ->
    [none] the arrival radius
   *[other] the arrival radius and the ordinary error of leg { $leg }
}.{ $walks ->
    [none] {""}
   *[other] {" "}{ $walks } in 100 ordinary walks of leg { $leg } reach it.
}
forecast-walks-reach = { $walks } in 100 ordinary walks of leg { $leg }, { $start } to { $end }, reach { $kind ->
    [no-go] the no-go area
   *[hazard] the hazard
} { $area }.
