# The sheet of an appeal.

appeal-title = Appeal: { $title }
appeal-class = Class
appeal-debrief = Debrief of this leg
appeal-where = { $lane }, leg { $leg }: { $start } to { $end }. Standard: { $standard }.
appeal-says = The recording says:
appeal-left-out = ; the { -point } is left out of all grades
appeal-figure-note = Grid north up.
appeal-key-walked = the walk, one fix in ten seconds
appeal-key-ring = found within { $size } of the { -point }
appeal-key-whole = missed beyond { $size } (whole error added)
appeal-key-cross = the { -point }
appeal-key-claim = claim
appeal-key-nearest = nearest approach
appeal-about = The walk about { $point }, grid north up.
appeal-east = west | east of the { -point }
appeal-north = south | north
appeal-for = For having found it
appeal-against = Against
appeal-nothing = Nothing in the recording.
appeal-others = The others at this { -point }
appeal-nobody = Nobody else walked it.
appeal-others-said = Of { $walks ->
    [one] { $walks } other walk
   *[other] { $walks } other walks
} of the lane { $found } found the { -point }, { $missed } missed it, { $doubtful ->
    [one] { $doubtful } is
   *[other] { $doubtful } are
} doubtful; of { $unevidenced } there is no
    evidence.
appeal-recording = The recording
appeal-decision = Decision
appeal-limit = A recording may raise a question; it does not decide alone. Proof at the marker (code, punch, a person who sat there)
    comes first, and doubt speaks for the walker.
appeal-walker-says = The walker says:
appeal-decided = Decided (found, missed, left out), and why:
appeal-made-by = Made by leg-audit { $version }. A training aid: positions have error, and a human decides. Fingerprint

appeal-found-within = Found within
appeal-found-within-said = { $size } of the { -point }
appeal-missed-beyond = Missed beyond
appeal-missed-beyond-said = { $size } (whole error added)
appeal-nearest = Nearest approach
appeal-nearest-fix = Nearest single fix
appeal-nearest-fix-said = { $size }{ $time ->
    [none] {""}
   *[some] , { $time }
}, as recorded, of the whole recording
appeal-nearest-said = { $size }{ $time ->
    [none] {""}
   *[some] , { $time }
}{ $turn ->
    [yes] {""}
   *[no] , out of turn
}
appeal-unseen = Unseen
appeal-unseen-said = { $size } nearer at most, in silences of the recording
appeal-miss = Miss at the claim
appeal-miss-said = { $size } ({ $where })
appeal-proof = Proof brought back
appeal-proof-none = none
appeal-proof-right = code { $code }, the right one
appeal-proof-wrong = code { $code }, not that of the { -point }
appeal-proof-no-key = code { $code }, no key to hold it against
appeal-recorded = Recording
appeal-recorded-said = { $fixes } fixes, { $every ->
    [none] without times
   *[some] one every { $every } s
}, receiver noise { $noise } m
appeal-plan = Plan
appeal-plan-said = { $file }, grid { $grid }
