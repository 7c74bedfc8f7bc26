# Beginnings of the lines of the short debrief.

terminal-simulated = SIMULATED: { $note }
terminal-plan = plan: { $finding }
terminal-leg = leg { $leg }: { $sentence }
terminal-keep = keep: { $what }. { $evidence }
terminal-work-on = work on: { $what }. { $evidence } Exercise: leg-audit guide { $cause }
terminal-what-remains = what remains
