"""Walks of courses whose points may be visited in any order, with the order that was chosen.

A walk in the order of a made course is one in an order of the walker's own choice as soon
as the plan lists the points in another; some points are added that were never made for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from audit.plan import Plan, PlannedLeg, Point
from audit.positions import Position
from walks.courses import to_geographic
from walks.difficulties import Difficulty
from walks.families import DIFFICULTIES
from walks.walk import Walk, make_walk


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeWalk:
    """A made walk with its plan in no order.

    Attributes
    ----------
    walk : Walk
        Its plan lists the points in the order that was chosen.
    order : tuple of str
        Names of the points that were found, in order; the start is none of them.
    names : tuple of str
        Names of all points: those that were made for, in that order (leg n of the walk's truth
        leads to the nth), then those that were never come near.
    doubtful : frozenset of str
        Points that were made for but not found, or left when the recording ended: whoever
        calls them visited is right, and so is whoever does not.
    """

    walk: Walk
    plan: Plan
    order: tuple[str, ...]
    names: tuple[str, ...]
    doubtful: frozenset[str]

    def is_right(self, order: Sequence[str]) -> bool:
        """Tell whether these are the points that were found, in the right order."""
        return tuple(name for name in order if name not in self.doubtful) == self.order


def make_free_walk(seed: int, difficulty: str | Difficulty, points: int, never: int) -> FreeWalk:
    """Make a walk over ``points`` marked points, of which ``never`` are not come near.

    The same seed, difficulty and numbers give the same bytes. Seeds whose course comes to
    a place twice are passed over for the next one that does not.
    """
    family = DIFFICULTIES[difficulty] if isinstance(difficulty, str) else difficulty
    visited = points - never
    family = replace(
        family, legs=(visited, visited), skips=0.0, swaps=0.0, misplaced=0.0, marked=1.0
    )
    attempt = seed
    walk = make_walk(attempt, family)
    while len(set(walk.course.site)) != visited + 1:
        attempt += 1_000_000
        walk = make_walk(attempt, family)
    rng = np.random.default_rng([seed, points, never])
    places = [*walk.course.points_m[1:], *_never(rng, walk, never)]
    names = [f"Post {number + 1}" for number in rng.permutation(points)]
    listed = sorted(zip(names, places, strict=True), key=lambda pair: int(pair[0].split()[1]))
    transformer = to_geographic(walk.course.grid)
    made = [walk.plan.points[0]]
    for name, place in listed:
        longitude, latitude = transformer.transform(*place)
        position = Position(longitude_deg=float(longitude), latitude_deg=float(latitude))
        made.append(Point(name=name, position=position))
    plan = replace(
        walk.plan,
        points=tuple(made),
        legs=tuple(
            PlannedLeg(name=there.name, start=here.name, end=there.name)
            for here, there in pairwise(made)
        ),
    )
    begun = [leg for leg in walk.truth.legs if leg.status in ("walked", "unfinished")]
    found = [leg.leg for leg in begun if leg.found and not leg.cut_by_recording]
    return FreeWalk(
        walk=walk,
        plan=plan,
        order=tuple(names[leg] for leg in found),
        names=tuple(names),
        doubtful=frozenset(names[leg.leg] for leg in begun if leg.leg not in found),
    )


def _never(rng: np.random.Generator, walk: Walk, count: int) -> list[np.ndarray]:
    """Place points among the others, well away from each of them and from the whole walk."""
    points = walk.course.points_m
    trail = np.column_stack([walk.truth.east_m, walk.truth.north_m])[::10]
    low, high = points.min(axis=0) - 200.0, points.max(axis=0) + 200.0
    placed: list[np.ndarray] = []
    while len(placed) < count:
        place = rng.uniform(low, high)
        others = np.array([*points, *placed, *trail])
        if np.hypot(*(others - place).T).min() >= 150.0:
            placed.append(place)
    return placed
