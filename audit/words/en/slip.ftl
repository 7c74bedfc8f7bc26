# Slips, said so that "It fits" goes before them.

slip-grid-as-it-stood = the grid { -azimuth } set as it stood
slip-clicks = { $count } clicks of a bezel
slip-dial = a dial read one graduation of { $size } off
slip-omitted = the grid-magnetic angle left out
slip-reversed = the grid-magnetic angle applied the wrong way
slip-doubled = the grid-magnetic angle applied twice
slip-declination = the declination used for the grid-magnetic angle
slip-back = the back { -azimuth }
slip-back-omitted = the back { -azimuth } with the grid-magnetic angle left out
slip-magnetic-for-grid = the magnetic { -azimuth } written for the grid one
slip-magnetic-for-true = the magnetic { -azimuth } written for the true one
slip-applied-reversed = the grid-magnetic angle applied, and the wrong way
slip-true-for-grid = the true { -azimuth } written for the grid one
slip-quarter = the protractor laid a quarter turn round
slip-convergence-omitted = the convergence left out
slip-convergence-reversed = the convergence applied the wrong way
slip-east-for-west = east written for west, or west for east
slip-declination-given = the declination given for the grid-magnetic angle
slip-of-leg = the { -azimuth } of leg { $leg }
slip-point-lost = a decimal point lost ({ $given } for { $meant })
slip-point-too-many = a decimal point too many ({ $given } for { $meant })
slip-mils = mils written as degrees ({ $given } for { $meant })
slip-point-and-side = a decimal point lost and the side changed ({ $given } for { $meant })
slip-swapped = two digits swapped ({ $given } for { $meant })
slip-one-wrong = one digit wrong ({ $given } for { $meant })
slip-mils-for-degrees = mils written as degrees ({ $given } mil is { $meant } degrees)
slip-degrees-for-mils = degrees written as mils ({ $given } degrees are { $meant } mil)
slip-mil-circle = mils of { $circle } to the circle ({ $given } for { $meant })
slip-fits = {" "}It fits { $slips }.
slip-another-scale = the ruler of another scale
slip-single-double = single and double paces taken for each other
slip-hundreds-many = { $count ->
    [1] a hundred
   *[other] { $count } hundred
} metres too many
slip-hundreds-lost = { $count ->
    [1] a hundred
   *[other] { $count } hundred
} metres lost
slip-pace-long = a pace count that carries too far
slip-pace-short = a pace count that falls short
slip-steady-turn = a steady turn to one side
slip-via = the way to the first via position
slip-kilometres = kilometres written for metres
slip-straight = the straight line, not the one through the via positions
slip-twice-scale = a ruler for maps of twice the scale
slip-half-scale = a ruler for maps of half the scale
slip-distance-of = the distance of leg { $leg }
slip-paces-of = the pace count of leg { $leg }
slip-single-for-double = single paces counted for double ones
slip-double-for-single = double paces counted for single ones
slip-points-distance = the distance between its { -point(form: "many") }
slip-paces-of-hundreds = the { -pace } of { $metres }
slip-hundreds-too-much = { $count ->
    [1] a hundred
   *[other] { $count } hundred
} metres too much
slip-hundreds-too-little = { $count ->
    [1] a hundred
   *[other] { $count } hundred
} metres too little
slip-axes-swapped = easting and northing swapped
slip-axis-swapped = two digits of its { $axis } swapped
slip-degrees-swapped = two digits of its { $axis } swapped
slip-degrees-wrong = one wrong digit in its { $axis } ({ $given } for { $meant })
slip-degrees-exchanged = latitude and longitude swapped
slip-degrees-side = { $axis ->
    [latitude] the wrong side of the equator
   *[longitude] the wrong side of Greenwich
}
slip-axis-next-line = its { $axis } taken from the next grid line
slip-axis-wrong = one wrong digit in its { $axis } ({ $given } for { $meant })
slip-axis-carried = one digit of its { $axis } off by one and carried ({ $given } for { $meant })
slip-another-square = the letters of another square of 100 km
slip-another-zone = the letters of another zone
slip-parts-doubled = the parts within the grid square doubled
slip-parts-halved = the parts within the grid square halved
