"""The score says right what is right, and wrong what is wrong; the figures add up."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from walks import CLEAN, make_walk

from accuracy.confidence import area_under_curve, bins, report
from accuracy.failures import what_is_wrong
from accuracy.figures import figures, quantile, share_with_error
from accuracy.nearest_points import nearest_points
from accuracy.scoring import score_walk
from accuracy.table import as_text
from accuracy.time_warping import time_warping


def truth_of(walk):
    return [
        None if leg.status in ("skipped", "not-started") else (leg.start_s, leg.claim_s)
        for leg in walk.truth.legs
    ]


@pytest.mark.parametrize("family", ["clean", "ordinary", "novice", "worst-day"])
def test_the_truth_scores_full_marks(family):
    for seed in range(15):
        walk = make_walk(seed, family)
        scores = score_walk(walk, truth_of(walk))
        assert scores.all_right
        assert scores.seconds_right == scores.seconds
        turns = [leg.heading_change_deg for leg in scores.legs if leg.heading_change_deg]
        assert not turns


def test_an_end_may_be_off_by_30_seconds_or_30_metres_but_not_by_both():
    walk = make_walk(1, CLEAN)
    leg = walk.truth.legs[1]
    path = walk.truth.path_m()
    for late_s in (10.0, 29.0, 45.0, 120.0, -45.0):
        portions = truth_of(walk)
        portions[1] = (leg.start_s, leg.claim_s + late_s)
        score = score_walk(walk, portions).legs[1]
        way = np.interp(leg.claim_s + late_s, walk.truth.time_s, path) - np.interp(
            leg.claim_s, walk.truth.time_s, path
        )
        assert score.right == (abs(late_s) <= 30.0 or abs(way) <= 30.0)
        assert score.claim_error_s == late_s
        assert score.claim_error_m == pytest.approx(way)
        if not score.right:
            assert what_is_wrong(score) == ("claim late" if late_s > 0 else "claim early")


def test_a_halt_takes_no_metres_so_its_seconds_do_not_count():
    walk = make_walk(1, replace(CLEAN, halt_at_point_s=(120.0, 120.0)))
    leg = walk.truth.legs[1]
    portions = truth_of(walk)
    portions[1] = (leg.start_s, leg.claim_s + 60.0)  # still at the point
    assert score_walk(walk, portions).legs[1].right


def test_not_walked_is_right_only_where_nothing_was_walked():
    family = replace(CLEAN, legs=(5, 9), skips=1.0)
    walk = next(
        w
        for w in (make_walk(seed, family) for seed in range(20))
        if any(leg.status == "skipped" for leg in w.truth.legs)
    )
    portions = truth_of(walk)
    skipped = next(leg.leg for leg in walk.truth.legs if leg.status == "skipped")
    walked = next(leg.leg for leg in walk.truth.legs if leg.status == "walked")
    portions[skipped] = portions[walked]
    portions[walked] = None
    scores = score_walk(walk, portions)
    assert what_is_wrong(scores.legs[skipped]) == "called walked"
    assert what_is_wrong(scores.legs[walked]) == "missed"
    assert scores.legs_right == len(scores.legs) - 2
    of = figures([scores], [0.1])
    assert of["called_walked"] == 1 / sum(not leg.walked for leg in scores.legs)
    assert of["cut_p90_s"] in (0.0, np.inf)


def test_either_attempt_at_a_leg_walked_twice_is_right():
    family = replace(CLEAN, legs=(4, 6), repeats=1.0)
    walk = make_walk(3, family)
    twice = next(leg for leg in walk.truth.legs if len(leg.attempts) == 2)
    portions = truth_of(walk)
    portions[twice.leg] = twice.attempts[0]
    scores = score_walk(walk, portions)
    assert scores.legs[twice.leg].right
    own = portions[twice.leg]
    assert scores.seconds_right < scores.seconds  # the second attempt is then nobody's
    assert scores.seconds - scores.seconds_right <= twice.claim_s - twice.start_s
    assert own[1] < twice.start_s


def test_seconds_count_where_the_receiver_ran():
    walk = make_walk(2, replace(CLEAN, gaps_per_h=4.0))
    nothing = score_walk(walk, [None] * len(walk.truth.legs))
    own = (walk.truth.label >= 0) & walk.truth.recorded
    assert nothing.seconds == np.count_nonzero(walk.truth.recorded)
    assert nothing.seconds - nothing.seconds_right == np.count_nonzero(own)


def test_the_number_of_portions_must_be_that_of_the_legs():
    walk = make_walk(1, CLEAN)
    with pytest.raises(ValueError, match="portions"):
        score_walk(walk, [])


# Figures


def test_with_one_leg_a_walk_the_error_is_the_binomial_one():
    right = [1] * 90 + [0] * 10
    share, error = share_with_error(right, [1] * 100)
    assert share == 0.9
    assert error == pytest.approx(np.sqrt(0.9 * 0.1 / 99.0))


def test_legs_that_fail_together_count_as_one_observation():
    """Ten walks of ten legs, whole walks wrong: no better than ten single legs."""
    _, clustered = share_with_error([10] * 8 + [0] * 2, [10] * 10)
    _, single = share_with_error([1] * 8 + [0] * 2, [1] * 10)
    assert clustered == pytest.approx(single)


def test_the_clustered_error_covers_the_truth():
    """Simulated: beta-binomial walks; the share lies within 2 errors about 95 times in 100."""
    rng = np.random.default_rng(4)
    within = 0
    for _ in range(600):
        sizes = rng.integers(3, 13, 80)
        right = rng.binomial(sizes, rng.beta(8.0, 2.0, 80))
        share, error = share_with_error(right, sizes)
        within += abs(share - 0.8) < 1.96 * error
    assert 0.91 < within / 600 < 0.98


def test_quantiles_count_the_infinite():
    assert quantile([1.0, 2.0, 3.0, np.inf], 0.5) == 2.0
    assert quantile([1.0, 2.0, 3.0, np.inf], 0.9) == np.inf
    assert np.isnan(quantile([], 0.5))
    assert np.isnan(share_with_error([], [])[0])


def test_bins_and_the_area_under_the_curve():
    said = [0.2, 0.2, 0.6, 0.96, 1.0]
    right = [False, True, True, True, True]
    filled = [of for of in bins(said, right) if of.legs]
    assert [(of.low, of.legs, of.right) for of in filled] == [
        (0.2, 2, 0.5),
        (0.6, 1, 1.0),
        (0.9, 2, 1.0),
    ]
    # One tie (a half) and three wins of four pairs.
    assert area_under_curve(said, right) == pytest.approx(3.5 / 4.0)


def test_the_chance_error_of_a_tenth_counts_walks_not_legs():
    said, right = [0.85] * 40, [True, True, True, False] * 10
    (alone,) = [of for of in bins(said, right) if of.legs]
    # Binomial, with the cluster estimator's n / (n - 1): sqrt(0.75 x 0.25 / 39).
    assert alone.right_se == pytest.approx(np.sqrt(0.75 * 0.25 / 39))
    # Ten walks of four legs that are all right or all wrong: as good as ten legs.
    right = [number // 4 < 8 for number in range(40)]
    (clustered,) = [of for of in bins(said, right, [n // 4 for n in range(40)]) if of.legs]
    assert clustered.right_se == pytest.approx(np.sqrt(0.8 * 0.2 / 9))
    text = report("made", said, [False] * 40, list(range(40)))
    assert "-0.850 off" in text
    # Two legs of 0.85 that are both right are no proof that 0.85 was too little.
    assert "+0.150 ?" in report("made", [0.85] * 2, [True] * 2, [0, 1])


# Rivals


def test_the_nearest_points_of_a_clean_walk_are_its_points():
    for seed in range(6):
        walk = make_walk(seed, CLEAN)
        if walk.course.shape in ("star", "out-and-back"):
            continue  # two legs on one line: order alone does not tell them apart
        assert score_walk(walk, nearest_points(walk)).all_right


def test_warping_finds_most_legs_of_a_clean_walk():
    pytest.importorskip("dtaidistance", reason="the rival's library is not installed")
    scores = [
        score_walk(walk, time_warping(walk)) for walk in (make_walk(s, CLEAN) for s in range(6))
    ]
    share, _ = share_with_error([s.legs_right for s in scores], [len(s.legs) for s in scores])
    assert share > 0.7


def test_the_table_can_be_read():
    scores = [score_walk(walk, truth_of(walk)) for walk in (make_walk(s, CLEAN) for s in range(3))]
    text = as_text({"clean": {"nearest points": figures(scores, [0.1] * 3)}})
    assert "100.00" in text
    assert "nan" not in text
