"""Which walks the table is made of: one kind of mistake planted in each, in turn.

Half of the courses stand without markers, and nobody notices a wrong direction on the
way: a walker who sees the marker, or turns round, shows nothing of his mistake.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

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
SLOPES = {"slope-paced": 0.45, "sidehill": 0.15, "pace-short-uphill": 0.15}
"""Fall over distance of the ground where a mistake needs a slope."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sort:
    """One sort of walk: a difficulty with one mistake, on some legs or on the whole walk."""

    difficulty: str
    cause: str
    whole_walk: bool

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
        if self.whole_walk:
            return family.planting(walk={self.cause: 1.0})
        return family.planting(leg={self.cause: LEG_CHANCE})


def sorts(difficulties: tuple[str, ...]) -> list[Sort]:
    """Give every sort of walk, leg by leg mistakes first."""
    return [
        Sort(difficulty=difficulty, cause=cause, whole_walk=whole)
        for whole, causes in ((False, LEG_CAUSES), (True, WALK_CAUSES))
        for cause in causes
        for difficulty in difficulties
    ]


def walks(purpose: str, rounds: int, difficulties: tuple[str, ...]) -> Iterator[tuple[Sort, Walk]]:
    """Make ``rounds`` walks of every sort: always the same ones for a purpose."""
    kinds = sorts(difficulties)
    seeds = SEEDS[purpose]
    for number in range(rounds * len(kinds)):
        kind = kinds[number % len(kinds)]
        yield kind, make_walk(seeds[number], kind.family())
