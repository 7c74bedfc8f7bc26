"""Which walks the table is made of: one kind of mistake planted in each, in turn.

Half of the courses stand without markers, and nobody notices a wrong direction on the
way: a walker who sees the marker, or turns round, shows nothing of his mistake.

Mistakes that are rare, or that most courses hide, get courses made for the purpose as
well: many legs, short ones where the mistake counts in metres, a large angle where it
counts in degrees.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from walks import DIFFICULTIES, Walk, make_walk
from walks.difficulties import Difficulty

SEEDS = {
    "development": range(1_100_000, 1_200_000),
    "guard": range(1_500_000, 1_600_000),
    "reporting": range(1_900_000, 2_000_000),
}
"""Whoever changes the diagnosis looks at development walks only."""

LEG_CAUSES = (
    "gm-angle-omitted", "reciprocal", "right-angle", "bezel-clicks", "bezel-wrong-way",
    "mils-as-degrees", "azimuth-digits", "dial-misread", "neighbour-azimuth",
    "magnetic-disturbance", "hundred-miscounted", "early-stop", "overshoot", "bypass-paced",
    "veer", "handrail", "bypass-unequal", "obstacle-one-side", "digits-transposed", "digit-wrong",
    "easting-northing-swapped", "wrong-grid-line", "wrong-plotting-scale", "wrong-point",
    "passed-unseen",
)  # fmt: skip
WALK_CAUSES = (
    "gm-angle-omitted", "gm-angle-reversed", "gm-angle-doubled", "declination-for-gm-angle",
    "gm-angle-stale", "steady-bias", "wrong-mil-circle", "pace-long", "pace-short",
    "pace-short-uphill", "single-double-pace", "wrong-ruler", "slope-paced", "sidehill",
    "wrong-start",
)  # fmt: skip
LEG_CHANCE = 0.35
_SHORT = {"legs": (8, 12), "leg_m": (150.0, 400.0), "leg_median_m": 260.0}
_LARGE_ANGLE = {"legs": (5, 9), "leg_m": (200.0, 700.0), "least_declination_deg": 9.0}
MADE_FOR: Mapping[tuple[str, bool], Mapping[str, Any]] = {
    ("reciprocal", False): _SHORT,
    ("hundred-miscounted", False): _SHORT,
    ("digit-wrong", False): _SHORT,
    ("gm-angle-omitted", True): _LARGE_ANGLE,
    ("gm-angle-reversed", True): _LARGE_ANGLE,
}
"""Courses on which a mistake, of single legs or of the whole walk, stands out."""
MADE_FOR_ROUNDS = 3
"""Walks on such courses for each one on any course."""
MADE_FOR_CHANCE = 0.25
SLOPES = {"slope-paced": 0.45, "sidehill": 0.15, "pace-short-uphill": 0.15}
"""Fall over distance of the ground where a mistake needs a slope."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """One sort of walk: a difficulty with one mistake, on some legs or on the whole walk."""

    difficulty: str
    cause: str
    whole_walk: bool
    made_for: bool = False

    def family(self) -> Difficulty:
        """Give the family of walks."""
        family = replace(
            DIFFICULTIES[self.difficulty],
            name=self.difficulty,
            marked=0.5,
            notices=0.0,
            skips=0.0,
            swaps=0.0,
            repeats=0.0,
            lost=0.0,
            abandons=0.0,
            starts_late=0.0,
            ends_early=0.0,
            two_walks=0.0,
            vehicle=0.0,
            true_digits=True,
            old_angle_on_plan=True,
            slope=SLOPES.get(self.cause, 0.0),
        )
        if self.made_for:
            family = replace(family, **MADE_FOR[self.cause, self.whole_walk])
        if self.whole_walk:
            return family.planting(walk={self.cause: 1.0})
        return family.planting(leg={self.cause: MADE_FOR_CHANCE if self.made_for else LEG_CHANCE})


def sorts(difficulties: tuple[str, ...]) -> list[Sort]:
    """Give every sort of walk, leg by leg mistakes first."""
    return [
        Sort(difficulty=difficulty, cause=cause, whole_walk=whole)
        for whole, causes in ((False, LEG_CAUSES), (True, WALK_CAUSES))
        for cause in causes
        for difficulty in difficulties
    ]


def sorts_made_for(difficulties: tuple[str, ...]) -> list[Sort]:
    """Give the sorts of walk on courses that are made for a mistake."""
    return [
        Sort(difficulty=difficulty, cause=cause, whole_walk=whole, made_for=True)
        for cause, whole in MADE_FOR
        for difficulty in difficulties
    ]


def walks(purpose: str, rounds: int, difficulties: tuple[str, ...]) -> Iterator[tuple[Sort, Walk]]:
    """Make ``rounds`` walks of every sort: always the same ones for a purpose."""
    seeds = SEEDS[purpose]
    others = seeds[len(seeds) // 2 :]
    for number, kind in enumerate(rounds * sorts(difficulties)):
        yield kind, make_walk(seeds[number], kind.family())
    for number, kind in enumerate(rounds * MADE_FOR_ROUNDS * sorts_made_for(difficulties)):
        yield kind, make_walk(others[number], kind.family())
