"""A recording that may be of another course: nothing was walked, or nowhere near this one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.leg_card import CardLeg, LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, Match, RunnerUp
from audit.settings import QualitySettings
from audit.words import sentence
from audit.words.figures import Length

_FEWEST_FIXES = 10
"""Fewer show no leg with a start, a way and an end."""


def called_off(match: Match, clean: CleanTrack, card: LegCard, settings: QualitySettings) -> Match:
    """Give a match without its legs where the walk is nowhere near and none of them is sure.

    Some part of any walk is like some leg. Where the walk comes near no point either, that is
    no ground to call the leg walked and its point missed; the part stays as the other reading.
    A leg is then as sure as that the walk is of this course at all, by the cost of the match,
    and that this part of it is the leg. Whoever settled a leg knows that it was walked.
    """
    walked = [leg for leg in match.legs if leg.start_s is not None]
    of_course = float(np.exp(-np.logaddexp(0.0, match.cost)))
    sure = any(leg.pinned or leg.confidence * of_course >= settings.unsure for leg in walked)
    if not walked or sure or _nearest(clean, card.legs)[0] <= settings.elsewhere_m:
        return match
    return replace(match, legs=tuple(_not_walked(leg, of_course) for leg in match.legs))


def _not_walked(leg: LegMatch, of_course: float) -> LegMatch:
    """Give a leg as not walked; what it was taken for is the other reading."""
    if leg.start_s is None:
        return replace(leg, status="not-started")
    chance = leg.confidence * of_course
    other = RunnerUp(
        status=leg.status, start_s=leg.start_s, claim_s=leg.claim_s, probability=chance
    )
    return LegMatch(leg=leg.leg, status="not-started", confidence=1.0 - chance, runner_up=other)


def of_another_course(clean: CleanTrack, legs: Sequence[CardLeg], settings: QualitySettings) -> str:
    """Say that the walk may be of another course, and how near it comes; "" where it is of this."""
    away_m, _ = _nearest(clean, legs)
    if away_m <= settings.elsewhere_m:
        return ""
    return sentence("recording-elsewhere", near=_near(clean, legs))


def nothing_walked(clean: CleanTrack, legs: Sequence[CardLeg]) -> str:
    """Say of a recording in which no leg was recognised what may be the reason."""
    if len(clean) < _FEWEST_FIXES:
        return sentence("recording-too-few", count=len(clean))
    return sentence("recording-nothing-walked", near=_near(clean, legs))


def _near(clean: CleanTrack, legs: Sequence[CardLeg]) -> str:
    away_m, point = _nearest(clean, legs)
    return sentence("recording-nearest", near=Length(metres=away_m), point=point)


def _nearest(clean: CleanTrack, legs: Sequence[CardLeg]) -> tuple[float, str]:
    """Give how near the walk comes to any end of a leg, in metres, and to which."""
    return min(
        (float(np.hypot(clean.east_m - at.east_m, clean.north_m - at.north_m).min()), at.name)
        for leg in legs
        for at in (leg.start, leg.end)
    )
