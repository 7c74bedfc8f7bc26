"""Which walks are learnt from, and which are kept apart to look at while learning.

All are of development seeds. Most of them are of one walk maker, some along winding paths,
and, where its folder stands beside the checkout, some of another walk maker altogether: what
holds for all of them is not a habit of one. The second look and the trust in odds are taught by
two makers more, each by another hand.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal, NamedTuple

from accuracy.seeds import SEEDS
from walks import Walk, make_walk
from walks.along_paths import make_walk_along_paths

from learning import research_walks
from learning.other_makers import make_walk_of

Use = Literal["curves", "trust", "apart"]
"""What walks are for: to learn the curves and the second look, to learn after these how far odds
may be trusted, or to be kept apart."""

FIRST_SEEDS: dict[Use, int] = {"curves": 140_000, "trust": 145_000, "apart": 150_000}
"""Development seeds, from which on they are for each use."""


class Recipe(NamedTuple):
    """One walk to be made."""

    family: str
    seed: int


SHARES = {
    "novice": 0.22,
    "ordinary": 0.18,
    "trained": 0.09,
    "worst-day": 0.06,
    "clean-marked": 0.02,
    "noisy": 0.02,
    "sparse": 0.02,
    "skilled-person": 0.02,
    "along-paths": 0.15,
    "research-1": 0.02,
    "research-2": 0.06,
    "research-3": 0.14,
}
"""Of all walks; chosen: more of those of which more legs are matched wrongly."""


def recipes(walks: int, *, use: Use) -> Iterator[Recipe]:
    """Give what to make for so many walks."""
    first = FIRST_SEEDS[use]
    for family, share in SHARES.items():
        if family.startswith("research") and not research_walks.is_present():
            continue
        count = round(walks * share)
        seeds = range(first, first + count)
        if seeds.stop > _end(FIRST_SEEDS, use, SEEDS["development"].stop):
            message = f"{family}: {count} walks are more than its seeds"
            raise ValueError(message)
        yield from (Recipe(family=family, seed=seed) for seed in seeds)


OTHER_MAKERS = ("habits", "agent")
LEVELS = ("trained", "ordinary", "novice")
OTHERS_FIRST_SEEDS: dict[Use, int] = {"curves": 1_000, "trust": 1_500, "apart": 2_000}
"""Seeds of the other makers, from which on they are for each use."""
_OTHERS_END = 10_000


def recipes_of_others(walks: int, *, use: Use) -> Iterator[Recipe]:
    """Give what to make for about so many walks of the other makers, as many of each level."""
    first = OTHERS_FIRST_SEEDS[use]
    count = walks // (len(OTHER_MAKERS) * len(LEVELS))
    if first + count > _end(OTHERS_FIRST_SEEDS, use, _OTHERS_END):
        message = f"{walks} walks of other makers are more than their seeds"
        raise ValueError(message)
    for maker in OTHER_MAKERS:
        for level in LEVELS:
            family = f"{maker}-{level}"
            yield from (Recipe(family=family, seed=first + number) for number in range(count))


def _end(first: dict[Use, int], use: Use, last: int) -> int:
    """Give the seed before which those of a use end: where those of the next begin."""
    return min([seed for seed in first.values() if seed > first[use]], default=last)


def walk_of(recipe: Recipe) -> Walk:
    """Make one walk."""
    if recipe.family == "along-paths":
        return make_walk_along_paths(recipe.seed)
    if recipe.family.startswith("research"):
        return research_walks.research_walk(recipe.seed, int(recipe.family[-1]))
    if recipe.family.startswith(OTHER_MAKERS):
        maker, level = recipe.family.split("-")
        return make_walk_of(maker, recipe.seed, level)
    return make_walk(recipe.seed, recipe.family)
