# Figures and short phrases that many sentences share.

figure-under-one = under 1 %
figure-over-ninety-nine = over 99 %
figure-and = { $before } and { $last }
figure-or = { $before } or { $last }
figure-leg = leg { $name }
figure-legs = legs { $names }
figure-legs-run = legs { $first } to { $last }
figure-left = { $size } left
figure-right = { $size } right
figure-too-far = { $size } too far
figure-short = { $size } short
figure-as-planned = as planned
figure-on-line = on the line
figure-east = { $size } east
figure-west = { $size } west
figure-range = { $low } to { $high }
figure-north = north
figure-north-east = north-east
figure-eastward = east
figure-south-east = south-east
figure-south = south
figure-south-west = south-west
figure-westward = west
figure-north-west = north-west
figure-at-direction = { $size } { $direction }
# Letters of the eight directions, for tables.
figure-letters-north = N
figure-letters-north-east = NE
figure-letters-eastward = E
figure-letters-south-east = SE
figure-letters-south = S
figure-letters-south-west = SW
figure-letters-westward = W
figure-letters-north-west = NW
figure-length = { $size }
figure-sentence = { $first } { $second }
