"""Whether the matching knows how sure it may be: what it said of its legs, and what was right.

PYTHONPATH=.:tests python -m accuracy.confidence --seeds development --walks 100
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from walks import DIFFICULTIES, make_walk

from accuracy.project import match_of, portions_of
from accuracy.scoring import score_walk
from accuracy.seeds import SEEDS, first_seeds
from accuracy.table import DEFAULT_DIFFICULTIES

EDGES = (0.0, 0.3, 0.5, 0.7, 0.85, 0.95, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bin:
    """Legs of which about the same was said."""

    low: float
    high: float
    legs: int
    said: float
    right: float


def bins(said: Sequence[float], right: Sequence[bool]) -> list[Bin]:
    """Sort legs by what was said of them; a bin holds its lower edge, the last both."""
    said_of, is_right = np.asarray(said, float), np.asarray(right, float)
    result = []
    for low, high in pairwise(EDGES):
        within = (said_of >= low) & ((said_of < high) | (high == EDGES[-1]))
        count = int(within.sum())
        result.append(
            Bin(
                low=low,
                high=high,
                legs=count,
                said=float(said_of[within].mean()) if count else float("nan"),
                right=float(is_right[within].mean()) if count else float("nan"),
            )
        )
    return result


def area_under_curve(said: Sequence[float], right: Sequence[bool]) -> float:
    """Give the chance that a right leg was called surer than a wrong one (ties count half)."""
    said_of, is_right = np.asarray(said, float), np.asarray(right, bool)
    good, bad = said_of[is_right], said_of[~is_right]
    if not len(good) or not len(bad):
        return float("nan")
    ordered = np.sort(bad)
    below = np.searchsorted(ordered, good, side="left")
    not_above = np.searchsorted(ordered, good, side="right")
    return float((below + not_above).sum() / 2.0 / (len(good) * len(bad)))


def said_and_right(difficulty: str, seeds: Sequence[int]) -> tuple[list[float], list[bool]]:
    """Match walks; give what was said of each leg and whether it was right."""
    said: list[float] = []
    right: list[bool] = []
    for seed in seeds:
        walk = make_walk(seed, difficulty)
        match = match_of(walk)
        scores = score_walk(walk, portions_of(match))
        said += [leg.confidence for leg in match.legs]
        right += [leg.right for leg in scores.legs]
    return said, right


def main(arguments: Sequence[str] | None = None) -> int:
    """Run from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy.confidence")
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=100, help="walks a difficulty")
    parser.add_argument("--difficulties", nargs="+", choices=list(DIFFICULTIES))
    chosen = parser.parse_args(arguments)
    for difficulty in chosen.difficulties or DEFAULT_DIFFICULTIES:
        said, right = said_and_right(difficulty, first_seeds(chosen.seeds, chosen.walks))
        print(
            f"{difficulty}: {len(said)} legs, area under curve {area_under_curve(said, right):.3f}"
        )
        for of in bins(said, right):
            if of.legs:
                print(
                    f"  said {of.low:4.2f} to {of.high:4.2f}: {of.legs:5} legs, "
                    f"mean {of.said:.3f}, right {of.right:.3f}"
                )
    return 0


if __name__ == "__main__":
    sys.exit(main())
