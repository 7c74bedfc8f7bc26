"""Learn the second look.

    PYTHONPATH=.:tests python -m learning.ends --walks 2000 --others 840 --jobs 2 --write

One tree after another is grown, each on what the ones before it still have wrong: it raises the
odds of the right moments of a leg and lowers those of the others.
"""

from __future__ import annotations

import sys
import time
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path

import numpy as np

import audit.matching
from audit.matching.open_ends import LOOKS, LookedAt
from audit.matching.other_legs import End
from audit.matching.read_legs import read_in_turn
from audit.matching.reading import gather_leg_odds
from audit.matching.second_look import ENDS
from audit.matching.trees import Trees
from audit.settings import Settings
from learning.allowed import Truth
from learning.families import Recipe, recipes, recipes_of_others, walk_of
from learning.learning_options import learnt_from, parser_of
from learning.one_tree import Growth, grow_tree, text_of
from learning.problems import ways_in_play

SHIPPED = Path(audit.matching.__file__).with_name("learnt_ends.json")
GROWTH = Growth(leaves=14, in_leaf=80, rate=0.07, held_back=5.0)
_ROWS = 0.6
"""Each tree sees this share of the legs' moments; all chosen."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Moments:
    """What is open for one end of the legs of some walks; arrays of shape (n,), looks (n, k).

    ``leg`` numbers the legs through all walks.
    """

    family: np.ndarray
    leg: np.ndarray
    odds: np.ndarray
    looks: np.ndarray
    right: np.ndarray

    def of_teaching_legs(self) -> Moments:
        """Leave only legs with both right and wrong moments open; the others teach nothing."""
        right = np.bincount(self.leg, self.right)[self.leg]
        kept = (right > 0) & (right < np.bincount(self.leg)[self.leg])
        _, leg = np.unique(self.leg[kept], return_inverse=True)
        return Moments(
            family=self.family[kept],
            leg=leg,
            odds=self.odds[kept],
            looks=self.looks[kept],
            right=self.right[kept],
        )


def moments_of(recipe: Recipe) -> dict[End, list[tuple]]:
    """Make a walk, weigh it, and give the open moments of its legs."""
    walk, settings = walk_of(recipe), Settings().matching
    laid_out, _, weighed = ways_in_play(walk)
    legs = range(laid_out.evidence.route.legs)
    odds = [gather_leg_odds(weighed.odds, leg, len(laid_out.cuts)) for leg in legs]
    readings = read_in_turn(odds, laid_out, settings)
    looked_at = LookedAt(odds, readings, laid_out, settings)
    truth = Truth.of(walk, laid_out.cuts, laid_out.evidence.route)
    found: dict[End, list[tuple]] = {}
    for end in ENDS:
        ends = looked_at.open_ends(end)
        found[end] = [
            (
                recipe.family,
                ends.odds[ends.leg == leg],
                ends.looks[ends.leg == leg],
                truth.right_end(int(leg), end, ends.cut[ends.leg == leg]),
            )
            for leg in np.unique(ends.leg)
        ]
    return found


def moments(made: list[Recipe], jobs: int) -> dict[End, Moments]:
    """Give the open moments of all legs of some walks."""
    with get_context("fork").Pool(jobs) as pool:
        found = pool.map(moments_of, made, chunksize=8)
    joined = {}
    for end in ENDS:
        legs = [leg for of in found for leg in of[end]]
        sizes = [len(odds) for _, odds, _, _ in legs]
        joined[end] = Moments(
            family=np.repeat([family for family, _, _, _ in legs], sizes),
            leg=np.repeat(np.arange(len(legs)), sizes),
            odds=np.concatenate([odds for _, odds, _, _ in legs]),
            looks=np.concatenate([looks for _, _, looks, _ in legs]),
            right=np.concatenate([right for _, _, _, right in legs]).astype(float),
        )
    return joined


def grow(teaching: Moments, trees: int) -> list[list[list[float]]]:
    """Grow trees one after another; each leaf is a Newton step of the odds of what is right."""
    of, chance = teaching.of_teaching_legs(), np.random.default_rng(1)
    nats, grown = np.zeros(len(of.leg)), []
    for number in range(trees):
        held = _shares(of.odds * np.exp(nats), of.leg)
        due = _shares(of.odds * np.exp(nats) * of.right, of.leg) - held
        bend = np.maximum(held * (1.0 - held), 1e-3)
        seen = chance.random(len(of.leg)) < _ROWS
        grown.append(grow_tree(of.looks[seen], due[seen], bend[seen], number, GROWTH))
        nats += Trees.of(grown[-1:])(of.looks)
    return grown


def _shares(odds: np.ndarray, leg: np.ndarray) -> np.ndarray:
    return odds / np.bincount(leg, odds)[leg]


def told(of: Moments, trees: list[list[list[float]]]) -> str:
    """Say by family how much of the odds lies on right moments, in nats, without and with."""
    nats = Trees.of(trees)(of.looks)
    before = np.bincount(of.leg, of.odds * of.right) / np.bincount(of.leg, of.odds)
    after = np.bincount(of.leg, of.odds * np.exp(nats) * of.right)
    after /= np.bincount(of.leg, of.odds * np.exp(nats))
    family = of.family[np.unique(of.leg, return_index=True)[1]]
    known = before > 0
    return ", ".join(
        f"{name} {-np.log(before[known & (family == name)]).mean():.4f}"
        f">{-np.log(after[known & (family == name)]).mean():.4f}"
        for name in sorted(set(family))
    )


def main(arguments: list[str]) -> int:
    """Make walks, grow the trees, and show what they say of walks kept apart."""
    parser = parser_of("learning.ends", __doc__)
    parser.add_argument("--others", type=int, default=0, help="and of the other makers")
    parser.add_argument("--trees", type=int, default=300)
    asked = parser.parse_args(arguments)
    began = time.monotonic()
    apart, teaching = (
        moments([*recipes(own, use=use), *recipes_of_others(others, use=use)], asked.jobs)
        for own, others, use in (
            (asked.apart, asked.others // 4, "apart"),
            (asked.walks, asked.others, "curves"),
        )
    )
    print(
        f"{asked.walks + asked.others} walks to learn from, {time.monotonic() - began:.0f} s",
        flush=True,
    )
    learnt: dict = {
        "from": learnt_from(asked.walks, asked.others),
        "looks": LOOKS,
    }
    for end in ENDS:
        learnt[end] = grow(teaching[end], asked.trees)
        print(end, told(apart[end], learnt[end]), f"{time.monotonic() - began:.0f} s", flush=True)
    if asked.write:
        SHIPPED.write_text(text_of(learnt), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
