# The cautions that every debrief, card and guide shows.

caution-aid = This is a training aid. It is no navigation aid and no tracker: nobody watches it.
caution-count = Account for people by head-count, and start a search at once for anyone not back.
caution-angle = Check the grid-magnetic angle and its date on the map in hand.
caution-rules = Follow local rules and qualified instructors.
caution-error = Positions have error and a cause is a hypothesis: a human signs the grade.
caution-data = A recording of a walk is personal data. Share it no further than the training needs.
caution-short = A training aid, no tracker: count heads, and search at once for anyone not back; check the angle and its date on the map; follow local rules; positions and causes are uncertain, and a human signs the grade.
