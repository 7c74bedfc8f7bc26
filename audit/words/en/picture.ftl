# Words in and behind the pictures.

picture-map-title = Map of { $course }, plan and walk
picture-walk-title = The walk over time
picture-target-title = All claims about their { -point(form: "many") }
picture-strip-title = Leg { $leg }: offset from the planned line, height and speed along the leg
picture-dial-title = Leg { $leg }: planned and walked { -azimuth }
picture-ledger-title = Leg { $leg }: where the miss came from
picture-named = { $name }: { $said }
picture-walk-said = Offset from the planned line, height and speed against time.
picture-walk-claims = { $said } At the claim of { $ends }.
picture-target-leg = Leg { $leg }: { $where }.
picture-dial-said = { $planned }. Walked: { $walked }.
picture-along = { $unit ->
    [yards] yards
   *[metres] metres
} along the planned line
picture-across = { $unit ->
    [yards] yards
   *[metres] metres
} west | east
picture-south-north = south | north
picture-left-right = left of the line | right of it
picture-short-beyond = short of the { -point } | beyond it
picture-since-start = hours and minutes since the start
picture-height = height, m
picture-speed = speed, km/h
picture-reckoned = { $said }, reckoned
picture-planned = planned { $azimuth }
picture-walked = walked { $azimuth }

picture-cursor-since-start = { $time } since the start
picture-cursor-no-time = no times in this recording
picture-cursor-leg = leg { $name }
picture-cursor-going = going { $azimuth } grid
picture-cursor-standing = standing
picture-cursor-left = { $size } left of the planned line
picture-cursor-right = { $size } right of the planned line
picture-cursor-on-line = on the planned line
picture-cursor-speed = { $speed } km/h
picture-cursor-height = height { $metres } m
