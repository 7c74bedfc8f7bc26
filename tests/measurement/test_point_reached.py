"""Found, missed or too close to call: against scipy's non-central chi-square, and by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import HandWalk, clean_of
from scipy import stats

from audit.matching.leg_match import LegMatch, Match
from audit.measurement.point_reached import (
    Approach,
    judge_point,
    other_readings,
    share_within,
    unseen_approach,
)
from audit.settings import MeasuringSettings

S = MeasuringSettings()


@pytest.mark.parametrize("distance_m", [0.0, 12.0, 30.0, 41.0, 80.0])
@pytest.mark.parametrize("sd_m", [1.0, 6.0, 25.0])
def test_share_within_a_circle_is_the_non_central_chi_square(distance_m, sd_m) -> None:
    expected = stats.ncx2.cdf((30.0 / sd_m) ** 2, 2, (distance_m / sd_m) ** 2)
    assert share_within(distance_m, 30.0, sd_m) == pytest.approx(expected, abs=2e-3)


@pytest.mark.parametrize(
    ("nearest_m", "unseen_m", "verdict"),
    [
        (29.0, 0.0, "found"),  # within the radius: the benefit of the doubt
        (30.0, 0.0, "found"),
        (33.0, 0.0, "too close to call"),
        (60.0, 0.0, "missed"),  # six standard errors beyond
        (60.0, 40.0, "too close to call"),  # nobody saw how near he came in a silence
    ],
)
def test_verdicts(nearest_m, unseen_m, verdict) -> None:
    here = Approach(nearest_m=nearest_m, unseen_m=unseen_m)
    assert judge_point(here, (), 30.0, 5.0, S).verdict == verdict


@pytest.mark.parametrize(
    ("doubt", "elsewhere_m", "verdict"),
    [
        (0.02, 5.0, "missed"),  # 2 in 100 that another portion was the leg: certain enough
        (0.04, 5.0, "too close to call"),
        (0.04, 80.0, "missed"),  # that other portion came no nearer either
        (0.90, 80.0, "missed"),
    ],
)
def test_doubt_about_the_portion_counts(doubt, elsewhere_m, verdict) -> None:
    others = [(doubt, Approach(nearest_m=elsewhere_m))]
    found = judge_point(Approach(nearest_m=60.0), others, 30.0, 5.0, S)
    assert found.verdict == verdict
    there = stats.ncx2.cdf(36.0, 2, (elsewhere_m / 5.0) ** 2)
    assert found.probability == pytest.approx(doubt * there, abs=1e-4)
    assert found.doubt == doubt


def test_readings_that_agree_are_one() -> None:
    here = Approach(nearest_m=33.0)
    alone = judge_point(here, (), 30.0, 5.0, S).probability
    both = judge_point(here, [(0.4, here)], 30.0, 5.0, S)
    assert both.probability == pytest.approx(alone)
    assert alone == pytest.approx(stats.ncx2.cdf(36.0, 2, 6.6**2), abs=2e-3)


def test_a_wide_error_does_not_make_another_reading_less_likely() -> None:
    """Under another reading, 7 in 100, the walker stood at the point: no miss is certain."""
    others = [(0.07, Approach(nearest_m=1.0))]
    assert judge_point(Approach(nearest_m=900.0), others, 30.0, 40.0, S).verdict != "missed"


def test_a_leg_in_doubt_may_lie_between_the_others_in_their_order_of_time() -> None:
    """The second leg of the card was walked first; both are sure, the third is not."""
    clean = HandWalk().walk(90, 250).walk(270, 125).clean()
    begin, end = float(clean.time_s[0]), float(clean.time_s[-1])
    legs = tuple(
        LegMatch(leg=leg, status="walked", start_s=begin + start, claim_s=begin + start + 60.0,
                 confidence=sure)
        for leg, (start, sure) in enumerate([(100.0, 0.999), (5.0, 0.999), (195.0, 0.6)])
    )  # fmt: skip
    match = Match(
        legs=legs, noise_m=3.0, halts=np.empty((0, 2)), bias_deg=0.0, pace_scale=1.0, cost=0.0
    )
    own, *_ = other_readings(clean, match, legs[2], S)
    # Bug: nor before the first of them, when he stood at the start, which may be his last point.
    assert own.stretches_s == ((begin + 65.0, begin + 100.0), (begin + 160.0, end))


def test_readings_that_a_match_leaves_open() -> None:
    """100 s out, 100 s back: the first leg's search may have gone on until the second claim."""
    walk = HandWalk().walk(90, 125).walk(270, 125)
    clean = walk.clean()
    begin = float(clean.time_s[0])
    legs = (
        LegMatch(leg=0, status="walked", start_s=begin + 5.0, claim_s=begin + 90.0, confidence=0.9),
        LegMatch(
            leg=1, status="walked", start_s=begin + 100.0, claim_s=begin + 190.0, confidence=0.7
        ),
    )
    match = Match(
        legs=legs, noise_m=3.0, halts=np.empty((0, 2)), bias_deg=0.0, pace_scale=1.0, cost=0.0
    )
    own, following = other_readings(clean, match, legs[0], S)
    assert own.doubt == pytest.approx(0.1)
    assert own.stretches_s == ((begin, float(clean.time_s[-1])),)
    assert following.doubt == pytest.approx(0.9 * 0.3)
    assert following.stretches_s == ((begin + 5.0, begin + 190.0),)
    (last,) = other_readings(clean, match, legs[1], S)
    assert last.doubt == pytest.approx(0.3)
    # One that is left for at the very claim of the other follows it too.
    meeting = replace(match, legs=(replace(legs[0], claim_s=begin + 100.0), legs[1]))
    _, following = other_readings(clean, meeting, meeting.legs[0], S)
    assert following.stretches_s == ((begin + 5.0, begin + 190.0),)
    # Where the first leg is sure, the second was walked neither during it nor before it. (Bug:
    # nor, it was taken, before its own start, which is what is in doubt.)
    sure = replace(match, legs=(replace(legs[0], confidence=0.99), legs[1]))
    (last,) = other_readings(clean, sure, legs[1], S)
    assert last.stretches_s == ((begin + 90.0, float(clean.time_s[-1])),)


def test_a_silence_lets_the_walker_come_nearer_and_no_nearer_than_he_can() -> None:
    walk = HandWalk().walk(90, 500)
    whole = walk.clean()
    kept = np.flatnonzero((np.arange(401) <= 100) | (np.arange(401) >= 300))
    place = np.column_stack([whole.east_m, whole.north_m])[kept]
    clean = clean_of(whole.time_s[kept], place, gaps=(100,))
    # Silent from 125 m to 375 m, 200 s at up to 1.5 m/s: 300 m of way. A point 100 m aside of
    # the middle is 160.1 m from either end of it: (320.2 - 300) / 2 = 10.1 m at the nearest.
    target = place[0] + np.array([250.0, 100.0])
    times = (float(whole.time_s[0]), float(whole.time_s[-1]))
    unseen = unseen_approach(clean, times, target, 100.0, 1.5)
    assert unseen == pytest.approx(100.0 - 10.08, abs=0.05)
    assert unseen_approach(clean, (times[0], times[0] + 50.0), target, 100.0, 1.5) == 0.0
