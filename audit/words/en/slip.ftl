# Slips, said so that "It fits" goes before them.

slip-grid-as-it-stood = the grid { -azimuth } set as it stood
slip-clicks = { $count } clicks of a bezel
slip-omitted = the grid-magnetic angle left out
slip-reversed = the grid-magnetic angle applied the wrong way
slip-doubled = the grid-magnetic angle applied twice
slip-declination = the declination used for the grid-magnetic angle
slip-back = the back { -azimuth }
slip-back-omitted = the back { -azimuth } with the grid-magnetic angle left out
slip-magnetic-for-grid = the magnetic { -azimuth } written for the grid one
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
slip-pace-short = a pace count that carries too short
