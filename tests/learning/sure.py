"""Learn how far the odds of a leg may be trusted.

    PYTHONPATH=.:tests python -m learning.sure --walks 900 --others 540 --jobs 2 --write

Whoever learns the trees of the second look first learns these after them: the walks are others,
since of walks that trees were grown on they know the ends too well. Walks are matched once, before
slips, half or twice the distance and a second pass are supposed.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass, fields
from multiprocessing import get_context
from pathlib import Path

import numpy as np
from accuracy.project import portions_of_legs
from accuracy.scoring import score_walk

import audit.matching
from audit.matching.how_sure import SURE_LOOKS, nats_of, said_by, sure_looks
from audit.matching.read_legs import leg_matches, read_twice
from audit.matching.trees import Trees
from audit.settings import Settings
from learning.families import Recipe, recipes, recipes_of_others, walk_of
from learning.learning_options import learnt_from, parser_of
from learning.one_tree import Growth, grow_tree, text_of
from learning.problems import ways_in_play

SHIPPED = Path(audit.matching.__file__).with_name("learnt_sure.json")
GROWTH = Growth(leaves=6, in_leaf=40, rate=0.05, held_back=3.0)
_ROWS = 0.6
"""Each tree sees this share of the legs; all chosen."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Told:
    """Legs of some walks; arrays of shape (n,), looks (n, len(SURE_LOOKS)).

    ``nats`` is how sure each was told by its odds, and ``right`` whether it was right.
    """

    family: np.ndarray
    nats: np.ndarray
    looks: np.ndarray
    right: np.ndarray


def legs_of(recipe: Recipe) -> Told:
    """Make a walk, match it, and give its legs that can be looked at."""
    walk, settings = walk_of(recipe), Settings().matching
    laid_out, _, weighed = ways_in_play(walk)
    twice = read_twice(weighed.odds, laid_out, laid_out.evidence.route.legs, settings)
    matches = leg_matches(twice, {}, laid_out, settings)
    right = [leg.right for leg in score_walk(walk, portions_of_legs(matches)).legs]
    of = sure_looks(twice.by_odds, twice.readings, twice.seen, laid_out.cuts, settings)
    return Told(
        family=np.repeat(recipe.family, len(of.leg)),
        nats=np.array([nats_of(matches[leg].confidence) for leg in of.leg]),
        looks=of.looks,
        right=np.array([right[leg] for leg in of.leg], dtype=bool),
    )


def told(made: Sequence[Recipe], jobs: int) -> Told:
    """Give the legs of some walks."""
    with get_context("fork").Pool(jobs) as pool:
        found = pool.map(legs_of, made, chunksize=4)
    return Told(
        **{
            field.name: np.concatenate([getattr(of, field.name) for of in found])
            for field in fields(Told)
        }
    )


def grow(of: Told, trees: int) -> list[list[list[float]]]:
    """Grow trees one after another; each leaf is a Newton step of the odds of being right."""
    chance = np.random.default_rng(1)
    nats, grown = of.nats.copy(), []
    for number in range(trees):
        sure = 1.0 / (1.0 + np.exp(-nats))
        seen = chance.random(len(nats)) < _ROWS
        bend = np.maximum(sure * (1.0 - sure), 1e-3)
        grown.append(grow_tree(of.looks[seen], (of.right - sure)[seen], bend[seen], number, GROWTH))
        nats += Trees.of(grown[-1:])(of.looks)
    return grown


def nats_lost(nats: np.ndarray, right: np.ndarray) -> float:
    """Give the mean of what is lost by telling legs so sure, in nats."""
    return float(np.logaddexp(0.0, np.where(right, -nats, nats)).mean())


def how_well(of: Told, trees: list[list[list[float]]]) -> str:
    """Say by family how many nats are lost, without and with the trees."""
    nats = of.nats + said_by(Trees.of(trees), of.looks, Settings().matching)
    return ", ".join(
        f"{name} {nats_lost(of.nats[these], of.right[these]):.4f}"
        f">{nats_lost(nats[these], of.right[these]):.4f}"
        for name in sorted(set(of.family))
        for these in [of.family == name]
    )


def legs_to_learn_from(walks: int, others: int, jobs: int, kept: Path | None) -> Told:
    """Give the legs of so many walks; those of a file, where they have been kept in it."""
    names = [of.name for of in fields(Told)]
    made_of = {"made_of": learnt_from(walks, others, use="trust"), "named": SURE_LOOKS}
    if kept and kept.exists():
        with np.load(kept) as legs:
            if any(legs[name].tolist() != np.array(of).tolist() for name, of in made_of.items()):
                message = f"{kept} holds legs of other walks or looks: remove it, or ask as then"
                raise ValueError(message)
            return Told(**{name: legs[name] for name in names})
    made = [*recipes(walks, use="trust"), *recipes_of_others(others, use="trust")]
    teaching = told(made, jobs)
    if kept:
        columns = {name: getattr(teaching, name) for name in names}
        np.savez_compressed(kept, **columns, **made_of)
    return teaching


def main(arguments: list[str]) -> int:
    """Make walks, grow the trees, and show what they say of walks kept apart."""
    parser = parser_of("learning.sure", __doc__)
    parser.add_argument("--others", type=int, default=0, help="and of the other makers")
    parser.add_argument("--trees", type=int, default=300)
    parser.add_argument("--kept", type=Path, help="legs to learn from: read, or kept for again")
    asked = parser.parse_args(arguments)
    began = time.monotonic()
    teaching = legs_to_learn_from(asked.walks, asked.others, asked.jobs, asked.kept)
    print(f"{len(teaching.nats)} legs to learn from, {time.monotonic() - began:.0f} s", flush=True)
    learnt = {
        "from": learnt_from(asked.walks, asked.others, use="trust"),
        "looks": SURE_LOOKS,
        "trees": grow(teaching, asked.trees),
    }
    if asked.write:
        SHIPPED.write_text(text_of(learnt), encoding="utf-8")
    made = [
        *recipes(asked.apart, use="apart"),
        *recipes_of_others(asked.others // 4, use="apart"),
    ]
    if made:
        print(how_well(told(made, asked.jobs), learnt["trees"]))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
