# Begins the sentence about a mistake that several legs share; "on legs 1 to 3" follows.

story-gm-angle-omitted = The grid-magnetic angle was left out
story-gm-angle-reversed = The grid-magnetic angle was applied the wrong way
story-gm-angle-doubled = The grid-magnetic angle was applied twice
story-declination-for-gm-angle = Declination was used in place of the grid-magnetic angle
story-gm-angle-stale = An out-of-date grid-magnetic angle was used
story-steady-bias = Compass or walker was off to one side, by no angle that is known
story-reciprocal = The back { -azimuth } was walked
story-bezel-wrong-way = The bezel was turned the wrong way
story-mils-as-degrees = Mils and degrees were taken for each other
story-wrong-mil-circle = A compass with another mil circle than the card's was used
story-sidehill = The line drifted downhill
story-pace-long = The pace count carried too far
story-pace-short = The pace count fell short
story-single-double-pace = Single and double paces were taken for each other
story-wrong-ruler = Distances were measured with the ruler of another map scale
story-slope-paced = Slope distance was paced as map distance
story-right-angle = The { -azimuth } was a right angle off
story-azimuth-digits = Digits of the { -azimuth } were swapped or wrong
story-neighbour-azimuth = The { -azimuth } of another leg was set
story-hundred-miscounted = Hundreds were lost or added in the count
story-early-stop = The count was broken off too soon
story-overshoot = The walk went on past its distance
story-digits-transposed = Digits of the reference were swapped
story-digit-wrong = A digit of the reference was wrong
story-easting-northing-swapped = Easting and northing were taken for each other
story-wrong-plotting-scale = { -point(form: "start-many") } were plotted with the tool of another map scale
story-wrong-point = Other { -point(form: "many") } were taken for those of the course

# The rest of that sentence.
story-other = Legs have in common: { $cause },
story-told = { $story }{ $size ->
    [none] {""}
   *[some] {" "}({ $size })
} { $where }{ $after ->
    [yes] , then put right
   *[no] {""}
} ({ $sure } likely).
story-size-ratio = { $ratio } of the distance
story-on-every = on every leg
story-from = from leg { $first } on
story-on-run = on legs { $first } to { $last }
story-on = on legs { $names }
