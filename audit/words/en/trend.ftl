# A walker's attempts over time.

trend-title = Attempts of { $walker }
trend-attempts = { $count ->
    [one] { $count } attempt
   *[other] { $count } attempts
}
trend-legs = { $count ->
    [one] { $count } leg
   *[other] { $count } legs
}
trend-walker = { $walker }: { $attempts }
trend-apart = { $attempts }. Day and night stand apart.
trend-day = By day
trend-twilight = In twilight
trend-night = By night
trend-unknown = Light not known
trend-light = { $light }: { $attempts }, { $legs }
trend-over = Over the attempts
trend-figure-note = From the top: { $figures }. Bars are 95 % intervals.{ $cut ->
    [yes] {" "}An arrow head: the interval goes on beyond the picture; the table has it whole.
   *[no] {""}
}
trend-drawn-bias = heading bias, right up
trend-drawn-scatter = heading scatter from leg to leg
trend-drawn-distance = distance, too far up
trend-drawn-paces = { -pace } to { $length }
trend-key-day = an attempt by day
trend-key-night = by night
trend-key-twilight = in twilight
trend-key-unknown = without times
trend-key-mean = mean over the attempts
trend-key-change = a change that the numbers carry
trend-picture = Figures over attempts
trend-picture-said = One sign an attempt, with its 95 % interval: heading bias, heading scatter, distance, and pace count where it was kept.
    The tables below hold the same figures.
trend-figures-of = Figures, { $light }
trend-attempts-of = Attempts, { $light }
trend-causes-of = Causes, { $light }
trend-each = Each attempt
trend-causes = Causes
trend-causes-begin = causes, by their probabilities:
trend-means = What this means
trend-in-full = The same with --json holds every figure in full.
trend-head-figure = Figure
trend-head-value = Value
trend-head-interval = 95 % interval
trend-head-change = Over the attempts
trend-head-number = No.
trend-head-day = Day
trend-head-course = Course
trend-head-legs = Legs
trend-head-heading = Heading bias
trend-head-scatter = Scatter
trend-head-distance = Distance
trend-head-paces = { -pace(form: "start-many") } to { $length }
trend-head-mistakes = Mistakes (legs)
trend-head-cause = Cause
trend-head-expected = Legs to be expected with it
trend-head-share = Of all legs
trend-column-number = no.
trend-column-day = day
trend-column-course = course
trend-column-legs = legs
trend-column-heading = heading
trend-column-scatter = scatter
trend-column-distance = distance
trend-column-paces = { -pace }/{ $length }
trend-column-causes = mistakes (legs)
trend-heading-bias = heading bias
trend-heading-scatter = heading scatter
trend-distance = distance
trend-distance-scatter = distance scatter
trend-pace-count = pace count
trend-of-legs = { $figure } ({ $used } of { $legs })
trend-on-one-side = { $figure }, { $side } in { $same } of { $told }
trend-side-left = left
trend-side-right = right
trend-side-short = short
trend-side-far = too far
trend-too-few = too few attempts to speak of change (from { $least } on)
trend-changes = changes: by { $moved } an attempt ({ $low } to { $high }) over { $attempts } attempts
trend-comes = changes: from { $first } to { $last } over { $attempts } attempts{ $toward ->
    [nearer] , nearer to the plan
    [farther] , farther from the plan
   *[none] {""}
} ({ $moved } an attempt, { $low } to { $high })
trend-no-change = no change that the numbers carry ({ $low } to { $high } an attempt)
trend-expected = { $legs } legs
trend-left-out = Legs left out: { $told }.
trend-left-out-one = { $count } { $reason }
trend-of-heading = heading: { $why }
trend-of-distance = distance: { $why }
trend-unsure = not surely matched
trend-mistaken = a mistake named
trend-far-off = too far off for ordinary error
trend-meaning = Bias is the mean over attempts, scatter the standard deviation from leg to leg within an attempt. In brackets: { $coverage }
    intervals, which count how attempts differ; ± is one standard error.
trend-meaning-change = A change is claimed only where chance would show one so large in fewer than { $alarm } of walkers who do not change, all
    { $questions } figures asked here together, and never with fewer than { $least } attempts.
trend-meaning-legs = Legs on which a mistake is named, or that are not surely matched, say nothing of bias and scatter and are left out of these. The causes count
    all walked legs, each by its probability. "3 of 4" beside a figure: the legs it rests on, of those walked.
trend-again = { $count ->
    [one] { $count } more result is
   *[other] { $count } more results are
} of walks that were done again; of each walk the result kept last counts.
trend-other-paces = Pace counts of { $count ->
    [one] { $count } attempt are
   *[other] { $count } attempts are
} brought to { $unit ->
    [single] single
   *[double] double
} paces.
trend-simulated = { $all ->
    [one] The one attempt is simulated: nobody walked it.
   *[other] { $made ->
        [one] { $made } of { $all } attempts is simulated: nobody walked it.
       *[other] { $made } of { $all } attempts are simulated: nobody walked them.
    }
}
trend-axis-attempt = attempt
trend-axis-bias = bias ({ $unit })
trend-axis-scatter = scatter ({ $unit })
trend-axis-distance = distance (%)
trend-axis-paces = { -pace }

trend-kept = Kept in the records: { $attempts }{ $until ->
    [none] {""}
   *[some] , until { $until }
}{ $again ->
    [0] {""}
   *[other] ; { $again } kept already
}.
trend-overdue = { $attempts } past the last day to keep deleted from the records.
trend-forgotten = { $walker }: { $attempts } deleted.
trend-forgotten-attempt = { $walker }: attempt { $number }{ $day ->
    [none] {""}
   *[some] , of { $day }
} ({ $course }) deleted{ $results ->
    [one] {""}
   *[other] , in { $results } results
}. Later attempts move up by one.
trend-forgotten-before = walked before { $day }: { $attempts } deleted.
trend-forgotten-of-before = { $walker }, walked before { $day }: { $attempts } deleted.
trend-forgotten-overdue = What is past its last day to keep is deleted; all else stays.
