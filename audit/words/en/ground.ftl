# The key of a piece of ground before the walk.

ground-planned = planned leg
ground-other-leg = the other legs
ground-point = { -point } with its arrival circle, { $radius }
ground-wrong = a way of going wrong
ground-claim = where the way of that number in the table ends
ground-ellipse = 95 of 100 ordinary walks end in it
ground-window = what the second picture shows
ground-no-go = no-go area
ground-no-go-line = no-go line
ground-hazard = hazard
ground-hazard-line = hazard that is a line
ground-unsafe = from here the safety bearing leads into a no-go area or a hazard
ground-bounds = bounds
