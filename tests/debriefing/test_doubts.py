"""What is said where it is not sure which part of the walk a leg has."""

from __future__ import annotations

from dataclasses import replace

import pytest
from debriefing.hand_walked import COURSE, plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk, clean_of, receiver

import audit
from audit.debriefing.doubts import doubts
from audit.leg_card import work_out_card
from audit.matching.leg_match import LegMatch, Match, RunnerUp
from audit.settings import QualitySettings, Settings

CARD = work_out_card(plan_of(*COURSE))
CLEAN = clean_of([BEGIN, BEGIN + 600.0], [(0.0, 0.0), (400.0, 0.0)])


def told(*legs: LegMatch, clean=CLEAN) -> dict[int, str]:
    match = Match(legs=legs, noise_m=3.0, halts=(), bias_deg=0.0, pace_scale=1.0, cost=0.0)
    return doubts(CARD, match, clean, QualitySettings())


def walked(confidence: float, other: RunnerUp | None) -> LegMatch:
    return LegMatch(
        leg=0,
        status="walked",
        start_s=BEGIN + 60,
        claim_s=BEGIN + 380,
        confidence=confidence,
        runner_up=other,
    )


def test_two_ends_of_one_leg() -> None:
    other = RunnerUp(status="walked", start_s=BEGIN + 65, claim_s=BEGIN + 480, probability=0.31)
    assert told(walked(0.6, other)) == {
        0: "Leg 1: it is taken as walked from 08:01:00Z to 08:06:20Z, which is only 60 % sure. "
        "Likeliest otherwise (31 %): walked from 08:01:05Z to 08:08:00Z. "
        "If so, settle it: --claim 1=08:08:00Z."
    }
    assert told(walked(0.71, other)) == {}


def test_walked_or_not() -> None:
    other = RunnerUp(status="skipped", start_s=None, claim_s=None, probability=0.4)
    assert told(walked(0.5, other))[0].endswith(
        "Likeliest otherwise (40 %): not walked. "
        "If it was walked as taken, settle it: --from 1=08:01:00Z --claim 1=08:06:20Z."
    )


def test_not_walked_or_walked() -> None:
    other = RunnerUp(status="walked", start_s=BEGIN + 60, claim_s=BEGIN + 380, probability=0.4)
    skipped = LegMatch(leg=0, status="skipped", confidence=0.55, runner_up=other)
    assert told(skipped)[0] == (
        "Leg 1: it is taken as not walked, which is only 55 % sure. "
        "Likeliest otherwise (40 %): walked from 08:01:00Z to 08:06:20Z. "
        "If so, settle it: --from 1=08:01:00Z --claim 1=08:06:20Z."
    )


def test_the_other_reading_may_be_likelier_and_is_told_as_that() -> None:
    """Bug: "only 30 % sure. Likeliest otherwise (54 %)", as if 54 came after 30."""
    other = RunnerUp(status="walked", start_s=BEGIN + 60, claim_s=BEGIN + 380, probability=0.54)
    skipped = LegMatch(leg=0, status="skipped", confidence=0.3, runner_up=other)
    assert told(skipped)[0].startswith(
        "Leg 1: it is taken as not walked, which is only 30 % sure. "
        "Likelier, but not sure enough to be taken (54 %): walked from 08:01:00Z to 08:06:20Z."
    )


def test_no_moments_are_told_of_a_recording_without_times() -> None:
    other = RunnerUp(status="walked", start_s=BEGIN, claim_s=BEGIN + 480, probability=0.31)
    untimed = clean_of(CLEAN.time_s, [(0.0, 0.0), (400.0, 0.0)], timed=False)
    assert "Z" not in told(walked(0.6, other), clean=untimed)[0]


def test_what_is_proposed_settles_it() -> None:
    """Planned 400 m, with halts at 350 and at 450 and then back: the proposal is what is taken."""
    walk = HandWalk().halt(60).walk(90, 350).halt(60).walk(90, 100).halt(60)
    walk = walk.walk(270, 100).halt(60).walk(0, 300).halt(60)
    places = walk.places + receiver(1, 3.0)(len(walk.places))
    track = track_of([BEGIN + second for second in range(len(places))], places)
    plan = plan_of((0.0, 0.0), (400.0, 0.0), (400.0, 300.0))
    settings = Settings(quality=QualitySettings(unsure=1.0))
    first = audit.debrief(plan, track, settings=settings)
    doubt, other = first.legs[0].doubt, first.match.legs[0].runner_up
    assert doubt in first.quality.notes
    assert doubt == first.to_dict()["legs"][0]["doubt"]
    proposal = doubt.rpartition("settle it: --claim 1=")[2].rstrip(".")
    settled = audit.debrief(plan, track, claims={"1": proposal})
    assert settled.match.legs[0].claim_s == pytest.approx(other.claim_s, abs=1.0)
    assert abs(settled.match.legs[0].claim_s - first.match.legs[0].claim_s) > 30.0


def test_ends_that_agree_need_no_settling() -> None:
    """Bug: "If so, settle it: ." where both readings begin and end within half a minute."""
    other = RunnerUp(status="walked", start_s=BEGIN + 70.0, claim_s=BEGIN + 400.0, probability=0.31)
    leg = replace(walked(0.6, other), start_s=BEGIN + 60.0, claim_s=BEGIN + 390.0)
    assert "settle it" not in told(leg)[0]
