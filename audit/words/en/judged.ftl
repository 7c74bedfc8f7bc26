# What a verdict rests on.

judged-inside = The recording comes within { $near } of the { -point }, inside the radius of { $radius }.
judged-outside = The recording comes within { $near } of the { -point }: { $outside } outside the radius of { $radius }.
judged-reaches = The recording’s whole error is { $error } and reaches that far.
judged-reaches-not = The recording’s whole error is { $error }, which does not reach that far.
judged-fix = Of all fixes as they were recorded, at whatever time, the nearest lies { $fix } from the { -point }; the { $near } are of
    the cleaned recording, in the part of the walk that counts for this { -point }.
judged-unseen = In a silence of the recording the walker may have come { $nearer } nearer; that is counted in the error.
judged-out-of-turn = That was not on the way to this { -point }, but at another time of the walk.
judged-begins-here = The recording begins at this { -point }: the way to it was not recorded.
judged-not-recorded = The recording does not show the way to this { -point } to its end: it may have been walked before the recording
    begins or after it ends. What the debrief says of it counts the recorded part alone.
judged-elsewhere = Which part of the recording was the way to this { -point } is not sure ({ $doubt } against the one taken here), and in
    another the walker came within { $near } of it.
judged-debrief-close = The debrief, which weighs what else may have been the way to this { -point }, holds it too close to call.
judged-debrief-missed = The debrief says missed: it counts the way to this { -point } alone, and no error of its survey.
judged-code-wrong = The code brought back, "{ $code }", is not that of this { -point }.
judged-code-right = The code "{ $code }" is that of this { -point }.
judged-code-no-key = The code "{ $code }" was brought back; no key tells whether it is right.
judged-nothing = There is no evidence of this walk; that is no fail. Ask, or repeat it.
judged-points = { $found } of { $counted } { -point(form: "many") } found{ $others }; { $needed } asked for.
judged-others = , { $list }
judged-doubtful = { $count } doubtful
judged-missed = { $count } missed
judged-unevidenced = { $count } without evidence
judged-fewer = The standard asks for { $asked } { -point(form: "many") }, but the lane has { $has }.
judged-left-out = { $count } left out of the grade: the course itself is in doubt there.
judged-time-unknown = How long it took cannot be told; the limit is { $limit }.
judged-time-noted = How long it took cannot be told from a recording; the code of the last { -point } was noted at { $noted }. The
    limit is { $limit }.
judged-in-time = It took { $time } of { $limit }.
judged-grace = It took { $time } of { $limit }: late, but within the grace; see the score.
judged-clocks = It took { $time } of { $limit }: late, but by no more than that time itself may be off ({ $error }).
judged-late = It took { $time } of { $limit }: too late.
judged-two-starts = By its own clock the recording took { $own }, from the roster's start { $roster }; the limit is { $limit }. The start
    was late, or a clock is wrong: ask.
