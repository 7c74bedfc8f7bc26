# What is said of one leg, in phrases.

leg-walked = walked
leg-walked-from-off = walked, begun { $size } from its start
leg-recorded-from = walked, recorded from { $size } on
leg-skipped = skipped
leg-before-recording = before the recording began
leg-after-recording = after the recording ended
leg-unfinished = not finished
leg-not-started = not started

leg-not-found = missed by { $size }, { -point } not found (came no nearer than { $nearest })
leg-too-close = missed by { $size }, too close to call whether the { -point } was found (seen no nearer than { $nearest })
leg-reckoned-near = reckoned to have ended { $size } off and seen no nearer than { $nearest }: too close to call whether the { -point } was found
leg-arrived = arrived, { $size } off
leg-at-edge = at the edge of the arrival circle, { $size } off
leg-then-found = missed by { $size }, then found
leg-passed = missed by { $size }; the { -point } was passed before, { $nearest } off
leg-then-past = { $ended }; after the claim up to { $past } past the { -point }
leg-near-elsewhere = { $ended }; outside the part taken for this leg the recording comes within { $near } of it
leg-along-line = { $size } along the line

leg-found-no = no
leg-found-too-close = too close to call
leg-found-yes = yes
leg-found-later = yes, later
leg-found-passed = passed before

leg-undecided-two = undecided: { $causes }
leg-one-of-two = one of two ({ $sure } together): { $causes }
leg-undecided-none = undecided: no cause stands out ({ $sure })
leg-undecided-length = undecided: { $cause }, but nothing explains a distance { $off }
leg-no-cause = no cause that stands out
leg-carried = carried over from the plot of { $leg }
leg-cause = { $cause } ({ $sure })
leg-cause-left-over = { $cause }, { $left } of what it predicts
leg-left-out = { $point } left out
leg-inherited = a start away from its { -point }; of its own, ordinary error

leg-azimuth = { -azimuth } { $error } ({ $interval })
leg-azimuth-unmeasured = { -azimuth } cannot be measured
leg-distance = distance { $error }
leg-began-off = began { $size } off the { -point }
leg-recorded-on = recorded from { $size } on
