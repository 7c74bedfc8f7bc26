"""Score the portions that a method gives each planned leg against the truth of a made walk."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from walks import KINDS, LegTruth, Walk

from audit.units import direction_degrees, turn_degrees

TOLERANCE_S = 30.0
TOLERANCE_M = 30.0
"""An end is right within 30 s or within 30 m of walking (the project's own measure)."""

Portion = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class LegScore:
    """One leg: whether it is right, and how far off its two ends are.

    Errors are signed, estimate minus truth, None unless walked and reported. The metres
    are metres of the walker's own path. ``heading_change_deg`` is how much the wrong ends
    alone turn the true chord of the leg; None for a chord under 40 m.
    """

    leg: int
    walked: bool
    reported: bool
    right: bool
    start_error_s: float | None = None
    claim_error_s: float | None = None
    start_error_m: float | None = None
    claim_error_m: float | None = None
    heading_change_deg: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LegScores:
    """One walk: its legs, and its recorded seconds on the right leg."""

    seed: int
    difficulty: str
    legs: tuple[LegScore, ...]
    seconds: int
    seconds_right: int

    @property
    def legs_right(self) -> int:
        """Number of legs that are right."""
        return sum(leg.right for leg in self.legs)

    @property
    def all_right(self) -> bool:
        """Whether every leg is right."""
        return all(leg.right for leg in self.legs)


def score_walk(walk: Walk, portions: Sequence[Portion | None]) -> LegScores:
    """Score one walk; ``portions`` has one entry a planned leg, None for "not walked".

    An unfinished leg counts as walked, up to where the walker gave up. A leg walked
    twice may be given either attempt.
    """
    if len(portions) != len(walk.truth.legs):
        message = f"{len(portions)} portions for {len(walk.truth.legs)} legs"
        raise ValueError(message)
    path_m = walk.truth.path_m()
    legs = tuple(
        _score_leg(walk, leg, portion, path_m)
        for leg, portion in zip(walk.truth.legs, portions, strict=True)
    )
    right = _seconds_right(walk, portions)
    return LegScores(
        seed=walk.seed,
        difficulty=walk.difficulty,
        legs=legs,
        seconds=len(right),
        seconds_right=int(right.sum()),
    )


def _score_leg(walk: Walk, leg: LegTruth, portion: Portion | None, path_m: np.ndarray) -> LegScore:
    walked = leg.status in ("walked", "unfinished")
    if portion is None or not walked:
        return LegScore(
            leg=leg.leg,
            walked=walked,
            reported=portion is not None,
            right=not walked and portion is None,
        )
    start_s, claim_s = min(
        leg.attempts, key=lambda pair: abs(portion[0] - pair[0]) + abs(portion[1] - pair[1])
    )

    def metres(estimate_s: float, true_s: float) -> float:
        ends = np.interp([estimate_s, true_s], walk.truth.time_s, path_m)
        return float(ends[0] - ends[1])

    errors_s = (portion[0] - start_s, portion[1] - claim_s)
    errors_m = (metres(portion[0], start_s), metres(portion[1], claim_s))
    right = all(
        abs(seconds) <= TOLERANCE_S or abs(way) <= TOLERANCE_M
        for seconds, way in zip(errors_s, errors_m, strict=True)
    )
    return LegScore(
        leg=leg.leg,
        walked=True,
        reported=True,
        right=right,
        start_error_s=errors_s[0],
        claim_error_s=errors_s[1],
        start_error_m=errors_m[0],
        claim_error_m=errors_m[1],
        heading_change_deg=_heading_change_deg(walk, portion, (start_s, claim_s)),
    )


def _heading_change_deg(walk: Walk, portion: Portion, true: Portion) -> float | None:
    """Give the turn from the true chord to the true walker's chord between the estimated ends."""

    def chord_m(ends: Portion) -> tuple[float, float]:
        first, last = (walk.truth.index_at(moment) for moment in ends)
        truth = walk.truth
        return (
            float(truth.east_m[last] - truth.east_m[first]),
            float(truth.north_m[last] - truth.north_m[first]),
        )

    estimated, right = chord_m(portion), chord_m(true)
    if min(np.hypot(*estimated), np.hypot(*right)) < 40.0:
        return None
    return turn_degrees(direction_degrees(*right), direction_degrees(*estimated))


def _seconds_right(walk: Walk, portions: Sequence[Portion | None]) -> np.ndarray:
    """Say of each recorded second whether it was given to the right leg, or to none rightly."""
    truth = walk.truth
    within = truth.recorded & (truth.time_s >= walk.track.time_s[0])
    within &= truth.time_s <= walk.track.time_s[-1]
    given = np.full(len(truth.time_s), -1)
    for leg, portion in enumerate(portions):
        if portion is not None:
            given[(truth.time_s > portion[0]) & (truth.time_s <= portion[1])] = leg
    searching = truth.kind == KINDS.index("search")
    label = np.where(searching, -1, truth.label)
    other = np.where(searching, -1, truth.other_label)
    return np.asarray(((given == label) | (given == other))[within])
