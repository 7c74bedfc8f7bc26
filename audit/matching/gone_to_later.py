"""Points that the walker went to after the last leg that he walked, by no way of the course."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.along_line import metres_along
from audit.leg_card import LegCard
from audit.matching.leg_match import LegMatch, RunnerUp
from audit.matching.route import course_points
from audit.matching.walk_layout import SampledWalk
from audit.settings import MatchingSettings
from audit.units import FloatArray


def with_points_gone_to(
    legs: Sequence[LegMatch], walk: SampledWalk, card: LegCard, settings: MatchingSettings
) -> tuple[LegMatch, ...]:
    """Call the legs before such a point skipped: the walk went on after they were left out.

    Gone to is a point at which the walker rested, or where the recording ends, and so are
    two that he passed on one way. One that he passed alone may lie on the way home of who
    gave up: then both readings are told, and neither is sure. One where an earlier leg began
    or ended does not count: from a loop everybody walks home by it.
    """
    walked = [leg for leg in legs if leg.claim_s is not None]
    if not walked:
        return tuple(legs)
    last = walked[-1]
    later = _points_after(last, walk, card, settings)
    went_on = max(_last_of(later, later.rested), _last_of(later, later.passed, least=2))
    # In free order a point that was visited is known by the order that was found.
    passed = _last_of(later, later.passed) if card.order == "planned" else -1
    return tuple(
        _read_anew(leg, settings, skipped=leg.leg <= went_on, open_=leg.leg <= passed)
        if leg.leg > last.leg and leg.status == "not-started"
        else leg
        for leg in legs
    )


def _read_anew(
    leg: LegMatch, settings: MatchingSettings, *, skipped: bool, open_: bool
) -> LegMatch:
    if skipped:
        return replace(leg, status="skipped")
    if not open_:
        return leg
    sure = leg.confidence * settings.passed_once_given_up
    left_out = RunnerUp(
        status="skipped", start_s=None, claim_s=None, probability=leg.confidence - sure
    )
    others = [other for other in (left_out, leg.runner_up) if other is not None]
    likeliest = max(others, key=lambda other: other.probability)
    return replace(leg, confidence=sure, runner_up=likeliest)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _LaterPoints:
    """The points after the last leg walked; ``first_leg`` is the one that leads to the first.

    Which of them the walker rested at, and which he passed along the course, where no earlier
    point lies. ``position`` has shape (k, 2), the others (k,).
    """

    first_leg: int
    position: FloatArray
    rested: NDArray[np.bool_]
    passed: NDArray[np.bool_]
    near_m: float


def _points_after(
    last: LegMatch, walk: SampledWalk, card: LegCard, settings: MatchingSettings
) -> _LaterPoints:
    samples, movement = walk.samples, walk.movement
    near_m = card.arrival_radius_m + movement.noise_m
    points = course_points(card)
    next_point = last.leg + (1 if last.status == "unfinished" else 2)
    before, later = points[:next_point], points[next_point:]
    new = np.hypot(*(later[:, None] - before).T).min(axis=0) > 2.0 * near_m
    stands = np.concatenate([movement.halts.reshape(-1, 2), [[len(samples) - 1] * 2]])
    stands = stands[samples.time_s[stands[:, 0]] > last.times_s[1]]
    places = [samples.smooth[a : b + 1].mean(axis=0) for a, b in stands.tolist()]
    rested = [any(np.hypot(*(place - point)) <= near_m for place in places) for point in later]
    # Along the course: far round about, it is another way that comes by.
    since = int(np.searchsorted(samples.time_s, last.times_s[1]))
    walked_m = movement.path_m[since:] - movement.path_m[min(since, len(samples) - 1)]
    planned_m = metres_along(points[next_point - 1 :])[1:]
    passed = [
        bool((np.hypot(*(samples.smooth[since:] - point).T)[walked_m <= most_m] <= near_m).any())
        for point, most_m in zip(later, settings.passed_round_about * planned_m, strict=True)
    ]
    return _LaterPoints(
        first_leg=next_point - 1,
        position=later,
        rested=np.array(rested, dtype=bool) & new,
        passed=np.array(passed, dtype=bool) & new,
        near_m=near_m,
    )


def _last_of(later: _LaterPoints, there: NDArray[np.bool_], least: int = 1) -> int:
    """Give the last leg to such a point; -1 where there are fewer, each a place of its own."""
    which = np.flatnonzero(there)
    own: list[int] = []
    for one in which.tolist():
        apart_m = np.hypot(*(later.position[own] - later.position[one]).T)
        if (apart_m > 2.0 * later.near_m).all():
            own.append(one)
    return later.first_leg + int(which[-1]) if len(own) >= least else -1
