# Where the figures of the shipped standards are from, word for word as they stand there.

source-day-points = 4 of 5 points by day: Expert Infantry Badge, test station B, point B-1, day
source-day-time = 3 hours, return included: Expert Infantry Badge, recent unit rules
source-cheek = within 3 degrees with compass-to-cheek: STP 21-1-SMCT, land navigation tasks
source-straight = straight distance within 5 per cent: STP 21-1-SMCT, land navigation tasks
source-common = common practice, no source
source-woods = chosen: how far off a marker is seen in open woods; common practice, no source
source-surveyed = chosen: points surveyed to a few metres; common practice, no source
source-human = common practice, no source; a human judges it
source-road = 25 to 100 m: common practice, no source
source-no-grace = chosen: none; common practice, no source
source-late-fails = chosen: none, since lateness fails the walk
source-weights = points 50 to 70 per cent: common practice, no source
source-night-points = 2 of 3 points by night: Expert Infantry Badge, task summary, night
source-night-time = 2 hours by night: Expert Infantry Badge, task summary, night
source-centre-hold = within 10 degrees with centre-hold: STP 21-1-SMCT, land navigation tasks
source-dark = chosen: twice the 5 per cent of a straight distance in STP 21-1-SMCT, since paces change in the dark
source-chosen = chosen; common practice, no source
source-all-points = all points: searchers' exam, 5 of 5 points (SARTECH II exam outline)
source-circuit-time = chosen: a circuit of 600 to 2000 m at 3000 m an hour (STP 21-1-SMCT, 071-329-1006), with an hour to look and to learn
source-unplaced = more than 30 minutes late is unplaced: IRF rules of score events on foot, B28
source-minute = often 10 points a minute: score events on foot, IRF rules B28
source-wheel-radius = chosen: legs of no more than 200 m, laid with a measuring wheel (Cibola SAR land navigation evaluation)
source-wheel = chosen: laid with a measuring wheel; common practice, no source
source-none = chosen: none
