"""How well walks in free order are found: order, legs, and points that were never visited.

    PYTHONPATH=.:tests python -m accuracy.free_order --seeds development --walks 20

An order is right if the points that were found are all named, in their order, and none
that was never come near; a point that was made for but not found may be named or not. A
leg is right as in the accuracy table: both ends within 30 s or 30 m.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from walks.free_order import FreeWalk, make_free_walk

from accuracy.figures import share_with_error
from accuracy.guard import write_record
from accuracy.scoring import LegScores, score_walk
from accuracy.seeds import SEEDS, first_seeds
from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.free_order import match_free_order
from audit.settings import Settings

RECORD = Path(__file__).with_name("free_order.json")
FAMILIES = ("trained", "ordinary", "novice")
SIZES = ((4, 0), (6, 1), (8, 2), (12, 3))
"""Points, and how many of them are never come near."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FreeScore:
    """One walk: what was found of it, and how sure that was said to be.

    Attributes
    ----------
    never_visited, called_visited : int
        Points that were never come near, and how many of them were called visited.
    found, not_told : int
        Points that were found, and how many of them were not called visited.
    """

    order_right: bool
    said: float
    legs: LegScores
    never_visited: int
    called_visited: int
    found: int
    not_told: int
    processor_s: float


def score_free(free: FreeWalk) -> FreeScore:
    """Score what the project makes of a walk in free order."""
    settings, begun_s = Settings(), time.process_time()
    card = work_out_card(free.plan)
    clean = clean_track(free.walk.track, card.grid, settings.cleaning)
    match = match_free_order(clean, card, settings.matching)
    taken_s = time.process_time() - begun_s
    told = [leg.name for leg in match.card.legs[: match.visited]]
    of_point = dict(zip(told, match.outing.match.legs, strict=False))
    ends = [of_point.get(name) for name in free.names[: len(free.walk.truth.legs)]]
    portions = [
        None if leg is None or leg.start_s is None else (leg.start_s, leg.claim_s) for leg in ends
    ]
    never = set(free.names[len(free.walk.truth.legs) :])
    return FreeScore(
        order_right=free.is_right(told),
        said=match.odds.probability,
        legs=score_walk(free.walk, portions),
        never_visited=len(never),
        called_visited=len(never & set(told)),
        found=len(free.order),
        not_told=len(set(free.order) - set(told)),
        processor_s=taken_s,
    )


def figures(scores: Sequence[FreeScore]) -> dict[str, float]:
    """Give the figures of many walks, by name with unit."""
    orders, orders_se = share_with_error([of.order_right for of in scores], [1] * len(scores))
    legs, legs_se = share_with_error(
        [of.legs.legs_right for of in scores], [len(of.legs.legs) for of in scores]
    )
    return {
        "walks": len(scores),
        "orders_right": orders,
        "orders_right_se": orders_se,
        "orders_said": float(np.mean([of.said for of in scores])),
        "legs": sum(len(of.legs.legs) for of in scores),
        "legs_right": legs,
        "legs_right_se": legs_se,
        "never_visited": sum(of.never_visited for of in scores),
        "called_visited": sum(of.called_visited for of in scores),
        "found": sum(of.found for of in scores),
        "not_told": sum(of.not_told for of in scores),
        "processor_s": float(np.mean([of.processor_s for of in scores])),
    }


def as_line(name: str, of: dict[str, float]) -> str:
    """Write figures as one line to read."""
    return (
        f"{name:24} {of['walks']:4.0f} walks: orders right {of['orders_right']:.2f} ± "
        f"{of['orders_right_se']:.2f} (said {of['orders_said']:.2f}); legs right "
        f"{100 * of['legs_right']:.1f} ± {100 * of['legs_right_se']:.1f} % of "
        f"{of['legs']:.0f}; called visited {of['called_visited']:.0f} of "
        f"{of['never_visited']:.0f} never come near; not told {of['not_told']:.0f} of "
        f"{of['found']:.0f} found; {of['processor_s']:.2f} s a walk"
    )


def main(arguments: Sequence[str] | None = None) -> int:
    """Run from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy.free_order")
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=20, help="walks a difficulty and size")
    parser.add_argument("--record", action="store_true", help="keep the figures for the guard")
    chosen = parser.parse_args(arguments)
    kept = {}
    for family in FAMILIES:
        scores: list[FreeScore] = []
        for points, never in SIZES:
            of_size = [
                score_free(make_free_walk(seed, family, points, never))
                for seed in first_seeds(chosen.seeds, chosen.walks)
            ]
            print(as_line(f"{family}, {points} points", figures(of_size)), flush=True)
            scores += of_size
        of = figures(scores)
        print(as_line(f"{family}, all", of), flush=True)
        kept[family] = {"project": of}
    if chosen.record:
        write_record(chosen.seeds, chosen.walks, kept, RECORD)
    return 0


if __name__ == "__main__":
    sys.exit(main())
