# At which step an error entered.

step-none = No step stands out: card, log and walk agree within ordinary error.
step-at = { $step }: { $said }
step-ordinary = { $said } Weighed with all legs, that is ordinary for this walker.
step-in-sight = { $said } The leg ended at its { -point } all the same: the walker may have seen it before the count was out, and walked up to it.
step-made-good = { $said } The leg ended at its { -point } all the same: another error took that back, or the { -point } was seen.
step-carried = Carried over from the leg before: { $said }
step-inherited = { $off }, as it comes of measuring from where that leg had its end on the map; no new mistake.
step-noted = Noted: { $said } The walk shows nothing of it: it was noted otherwise than it was done, or made good on the way.
step-ended-by-log = By count and time of the log the leg ended before it is taken to have ended: what was walked is not laid beside the count.
step-other-order = As if walked in another order, to or from { $point }: neither card nor log is laid beside it.
step-cannot-tell = Cannot tell which of { $steps }: { $said }
step-name-given = given
step-begin-given = Given
step-name-plotted = plotted
step-begin-plotted = Plotted
step-name-measured = measured
step-begin-measured = Measured
step-name-converted = converted
step-begin-converted = Converted
step-name-set = set
step-begin-set = Set
step-name-walked = walked
step-begin-walked = Walked
step-name-distance-measured = distance measured
step-begin-distance-measured = Distance measured
step-name-turned-into-paces = turned into paces
step-begin-turned-into-paces = Turned into paces
step-name-paced = paced
step-begin-paced = Paced
step-name-recognised = recognised
step-begin-recognised = Recognised
step-course-azimuth = the course's grid { -azimuth } { $azimuth }
step-card-magnetic = the card's magnetic { -azimuth } { $azimuth }
step-card-grid = the card's grid { -azimuth } { $azimuth }
step-own-references = its own references' { $azimuth }
step-set-by-log = the { -azimuth } set by the log ({ $azimuth } magnetic)
step-azimuth-walked = the { -azimuth } walked ({ $azimuth } grid)
step-turned = { $after } is { $size } { $side ->
    [left] left
   *[right] right
} of { $before }, which leads { $off } off.{ $fits }
step-course-length = the course's { $length }
step-length-walked = the { $length } walked
step-card-paces = the card's { $paces } { -pace } ({ $length })
step-counted = the { $paces } { -pace } counted ({ $length })
step-between-own = { $length } between its own references
step-card-length = the card's { $length }
step-more = { $after } are { $size } more than { $before }.{ $fits }
step-less = { $after } are { $size } less than { $before }.{ $fits }
step-reference = the card's reference for { $point }, "{ $given }", lies { $off } from the course's.{ $fits }
step-leads-elsewhere = { -azimuth } and distance of the card lead to a place { $off } from its own reference for the end.{ $fits }
step-other-point = the leg ended { $away } from { $other }, not at { $point }.
step-passed = the walk passed { $near } from { $point } and the count ended { $miss } from it.
step-reached = { $point } was reached.
step-line-bent = The leg has several pieces, and a log one { -azimuth } and one count: neither card nor log is laid beside it.
step-line-left = The planned line was not followed: neither card nor log is laid beside it.
