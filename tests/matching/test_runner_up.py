"""The likeliest other reading of a leg."""

from __future__ import annotations

import pytest
from accuracy.project import match_of
from accuracy.seeds import first_seeds
from matching.walked_square import SQUARE, matched, square_walk
from measurement.hand_made import SETTINGS, HandWalk
from walks import make_walk

S = SETTINGS.matching


def test_a_leg_that_may_end_at_either_of_two_halts() -> None:
    """Halts at the 400 m that were planned and 60 m on: paced out, or halted on the way?"""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).walk(90, 60)
    walk.mark("c").halt(60).mark("c2").walk(0, 300).mark("d").halt(60)
    leg = matched(walk, (0, 0), (400, 0), (400, 300)).legs[0]
    claims = {leg.claim_s, leg.runner_up.claim_s}
    for claim in claims:
        nearest = min(abs(claim - walk.marks[mark]) for mark in "bc")
        assert nearest < 75.0  # within the halt
    assert max(claims) - min(claims) > 60.0
    assert leg.runner_up.status == "walked"
    assert leg.runner_up.start_s == pytest.approx(walk.marks["a"], abs=30.0)
    assert 0.02 < leg.runner_up.probability <= 1.0 - leg.confidence


def test_a_sure_leg_has_no_runner_up_to_speak_of() -> None:
    match = matched(square_walk(), *SQUARE)
    assert all(leg.runner_up is None or leg.runner_up.probability < 0.05 for leg in match.legs)


def test_the_runner_up_is_materially_another_reading() -> None:
    """Of the legs of made walks: another status, or an end that is not the same moment."""
    seen = set()
    for seed in first_seeds("development", 6):
        for leg in match_of(make_walk(seed, "worst-day")).legs:
            other = leg.runner_up
            if other is None:
                continue
            seen.add((leg.status == "walked", other.status == "walked"))
            assert (other.start_s is None) == (other.status in ("skipped", "not-started"))
            assert S.runner_up_least / 2 < other.probability <= 1.0 - leg.confidence
            if leg.status == other.status == "walked":
                apart_s = max(abs(leg.start_s - other.start_s), abs(leg.claim_s - other.claim_s))
                assert apart_s > S.right_within_s - S.step_longest_s
    assert seen >= {(True, True), (True, False), (False, True)}
