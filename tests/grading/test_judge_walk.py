"""The verdict of a walk on paper: counts, clocks, and the benefit of the doubt."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from audit.grading.judge_walk import LegSkill, judge_walk
from audit.grading.verdicts import PointVerdict, WalkTime
from audit.standard import Standard, Weights

FOUR_IN_TWO_HOURS = Standard(name="test", points_to_find=4, time_limit_s=7200.0)
GRADES = ("found", "missed", "doubtful", "no-evidence")


def point(grade, *, left_out=False):
    return PointVerdict(grade=grade, proof=None, radius_m=30.0, error_m=10.0, left_out=left_out)


def taken(seconds, error_s=4.0):
    return WalkTime(
        begun_s=0.0, ended_s=seconds, elapsed_s=seconds, error_s=error_s,
    )  # fmt: skip


def verdict(found=0, doubtful=0, missed=0, nothing=0, left_out=0, seconds=3600.0, **about):
    points = [
        *[point("found")] * found, *[point("doubtful")] * doubtful, *[point("missed")] * missed,
        *[point("no-evidence")] * nothing, *[point("missed", left_out=True)] * left_out,
    ]  # fmt: skip
    standard = replace(FOUR_IN_TWO_HOURS, **about)
    return judge_walk(points, taken(seconds), (), standard)


def test_enough_points_in_time_pass():
    # 4 of 5 within the time: Expert Infantry Badge, day.
    assert verdict(found=4, missed=1).grade == "pass"
    assert verdict(found=3, missed=2).grade == "fail"


def test_only_what_no_doubt_can_help_fails():
    assert verdict(found=3, doubtful=1, missed=1).grade == "doubtful"
    assert verdict(found=3, nothing=1, missed=1).grade == "doubtful"
    assert verdict(found=2, doubtful=1, missed=2).grade == "fail"


def test_no_evidence_at_all_is_no_verdict():
    nothing = verdict(nothing=5)
    assert nothing.grade == "no-evidence"
    assert (nothing.score, nothing.late_s) == (None, None)


def test_a_point_left_out_costs_nobody_anything():
    left_out = verdict(found=3, missed=1, left_out=1)
    assert (left_out.grade, left_out.needed) == ("pass", 3)
    assert left_out.missed == 1  # the one left out is not counted


@pytest.mark.parametrize(
    ("seconds", "grade"),
    [(7200.0, "pass"), (7203.0, "doubtful"), (7204.0, "doubtful"), (7204.1, "fail")],
)
def test_late_fails_only_beyond_what_the_clocks_may_be_off(seconds, grade):
    assert verdict(found=5, seconds=seconds).grade == grade


def test_grace_passes_and_costs_score_by_minutes_begun():
    late = verdict(found=5, seconds=7261.0, late_grace_s=1800.0, late_penalty_per_min=10.0,
                   weights=Weights(points=1.0, time=0.0, azimuth=0.0, distance=0.0))  # fmt: skip
    assert late.grade == "pass"
    assert late.score == pytest.approx(80.0)  # 61 s are two minutes begun, ten points each


def test_the_score_gives_azimuths_the_benefit_of_their_error():
    standard = Standard(
        name="test", azimuth_tolerance_deg=3.0,
        weights=Weights(points=0.0, time=0.0, azimuth=1.0, distance=0.0),
    )  # fmt: skip
    skills = [
        LegSkill(azimuth_error_deg=-3.9, azimuth_sd_deg=0.5, distance_ratio=1.0, ratio_sd=0.01),
        LegSkill(azimuth_error_deg=4.1, azimuth_sd_deg=0.5, distance_ratio=1.0, ratio_sd=0.01),
    ]
    assert judge_walk([point("found")], taken(1.0), skills, standard).score == pytest.approx(50.0)


def test_the_score_gives_distances_the_benefit_of_their_error():
    standard = Standard(
        name="test", distance_tolerance=0.05,
        weights=Weights(points=0.0, time=0.0, azimuth=0.0, distance=1.0),
    )  # fmt: skip
    skills = [  # 5 in 100 and twice 1 in 100: from 0.93 to 1.07
        LegSkill(azimuth_error_deg=0.0, azimuth_sd_deg=0.5, distance_ratio=ratio, ratio_sd=0.01)
        for ratio in (1.069, 0.931, 1.071, 0.929)
    ]
    assert judge_walk([point("found")], taken(1.0), skills, standard).score == pytest.approx(50.0)


def test_the_score_weighs_its_parts_and_counts_a_doubtful_point_half():
    weights = Weights(points=2.0, time=1.0, azimuth=0.0, distance=0.0)
    # Half of the points twice, all of the time once: two thirds.
    assert verdict(found=1, missed=1, weights=weights).score == pytest.approx(200.0 / 3.0)
    # 1.5 points of 2, twice, and the time: 2.5 of 3.
    assert verdict(found=1, doubtful=1, weights=weights).score == pytest.approx(250.0 / 3.0)


@given(st.lists(st.sampled_from(GRADES), min_size=1, max_size=9), st.integers(1, 9))
def test_better_evidence_never_makes_a_worse_grade(grades, needed):
    """A law: turning one doubtful or missed point into a found one cannot cost anything."""
    order = {"fail": 0, "no-evidence": 1, "doubtful": 1, "pass": 2}
    standard = Standard(name="test", points_to_find=needed)
    before = judge_walk([point(one) for one in grades], taken(1.0), (), standard)
    better = ["found", *grades[1:]]
    after = judge_walk([point(one) for one in better], taken(1.0), (), standard)
    assert order[after.grade] >= order[before.grade]
    assert after.found + after.missed + after.doubtful + after.without_evidence == len(grades)
