"""How often the order of a walk in free order is found.

    PYTHONPATH=.:tests python -m accuracy.free_order --seeds development --walks 20

An order is right if the points that were found are all named, in their order, and none
that was never come near; a point that was made for but not found may be named or not.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Sequence

import numpy as np
from walks.free_order import FreeWalk, make_free_walk

from accuracy.seeds import SEEDS, first_seeds
from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.free_order import find_order
from audit.settings import Settings

SIZES = ((4, 0), (6, 1), (8, 2), (12, 3))
"""Points, and how many of them are never come near."""


def order_of(free: FreeWalk) -> tuple[tuple[str, ...], float]:
    """Give the order that the project finds, and how sure it says it is."""
    settings = Settings()
    card = work_out_card(free.plan)
    clean = clean_track(free.walk.track, card.grid, settings.cleaning)
    odds = find_order(clean, card, settings.matching)
    return tuple(card.legs[leg].name for leg in odds.order), odds.probability


def main(arguments: Sequence[str] | None = None) -> int:
    """Run from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy.free_order")
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=20, help="walks a difficulty and size")
    chosen = parser.parse_args(arguments)
    for difficulty in ("trained", "ordinary", "novice"):
        for points, never in SIZES:
            right, said, begun = [], [], time.process_time()
            for seed in first_seeds(chosen.seeds, chosen.walks):
                free = make_free_walk(seed, difficulty, points, never)
                order, probability = order_of(free)
                right.append(free.is_right(order))
                said.append(probability)
            share = float(np.mean(right))
            error = float(np.sqrt(share * (1.0 - share) / len(right)))
            print(
                f"{difficulty:9} {points:2} points, {never} never visited: {share:.2f} ± "
                f"{error:.2f} of {len(right)} orders right, said {np.mean(said):.2f}, "
                f"{(time.process_time() - begun) / len(right):.2f} s a walk with its making",
                flush=True,
            )
    return 0


if __name__ == "__main__":
    sys.exit(main())
