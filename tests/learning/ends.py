"""Learn the second look.

    PYTHONPATH=.:tests python -m learning.ends --walks 2000 --others 840 --jobs 2 --write

One tree after another is grown, each on what the ones before it still have wrong: it raises the
odds of the right moments of a leg and lowers those of the others.
"""

from __future__ import annotations

import json
import sys
import time
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path

import numpy as np
from sklearn.tree import DecisionTreeRegressor

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
from learning.problems import ways_in_play

SHIPPED = Path(audit.matching.__file__).with_name("learnt_ends.json")
_LEAVES, _IN_LEAF, _RATE, _MOST_NATS = 14, 80, 0.07, 3.0
_HELD_BACK = 5.0
"""A leaf answers as if so much weight more stood in it that says nothing; all chosen."""
_ROWS, _COLUMNS = 0.6, 0.4
"""Each tree sees this share of the legs' moments, and each question this share of the looks:
what only one of many trees sees is no habit of the walks that were made."""


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
        tree = DecisionTreeRegressor(
            max_leaf_nodes=_LEAVES,
            min_samples_leaf=_IN_LEAF,
            max_features=_COLUMNS,
            random_state=number,
        )
        tree.fit(of.looks[seen], (due / bend)[seen], sample_weight=bend[seen])
        grown.append(_nodes(tree.tree_))
        nats += Trees.of(grown[-1:])(of.looks)
    return grown


def _shares(odds: np.ndarray, leg: np.ndarray) -> np.ndarray:
    return odds / np.bincount(leg, odds)[leg]


def _nodes(tree) -> list[list[float]]:
    """Give a grown tree as it is shipped: nodes in a row, each leaf with its nats."""
    nodes: list[list[float]] = []
    for place in range(tree.node_count):
        below, above = int(tree.children_left[place]), int(tree.children_right[place])
        if below < 0:
            weight = float(tree.weighted_n_node_samples[place])
            nats = tree.value[place].item() * weight / (weight + _HELD_BACK)
            nats = _RATE * float(np.clip(nats, -_MOST_NATS, _MOST_NATS))
            nodes.append([round(nats, 4)])
        else:
            # Looks are compared as read: a threshold between two of them may be rounded.
            most = float(f"{tree.threshold[place]:.5g}")
            nodes.append([int(tree.feature[place]), most, below, above])
    return nodes


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
        moments([*recipes(own, apart=of), *recipes_of_others(others, apart=of)], asked.jobs)
        for own, others, of in (
            (asked.apart, asked.others // 4, True),
            (asked.walks, asked.others, False),
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
        SHIPPED.write_text(_text(learnt), encoding="utf-8")
    return 0


def _text(learnt: dict) -> str:
    """Give the file, a tree a line."""
    lines = [f' "{name}": {json.dumps(learnt[name])}' for name in ("from", "looks")]
    for end in ENDS:
        trees = ",\n".join(f"  {json.dumps(tree, separators=(',', ':'))}" for tree in learnt[end])
        lines.append(f' "{end}": [\n{trees}\n ]')
    return "{\n" + ",\n".join(lines) + "\n}\n"


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
