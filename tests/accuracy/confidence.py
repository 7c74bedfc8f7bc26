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

from accuracy.figures import share_with_error
from accuracy.project import match_of, portions_of
from accuracy.scoring import score_walk
from accuracy.seeds import SEEDS, first_seeds
from accuracy.table import DEFAULT_DIFFICULTIES

EDGES = tuple(tenth / 10.0 for tenth in range(11))
AIM = 0.05
"""Within this of what is said, in each tenth, is calibrated (the project's own aim)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bin:
    """Legs of which about the same was said."""

    low: float
    high: float
    legs: int
    said: float
    right: float
    right_se: float
    """Standard error of the share that is right; legs come in walks."""


def bins(
    said: Sequence[float], right: Sequence[bool], walk: Sequence[int] | None = None
) -> list[Bin]:
    """Sort legs by what was said of them; a bin holds its lower edge, the last both.

    ``walk`` numbers the walk of each leg; left out, each leg is one by itself.
    """
    said_of, is_right = np.asarray(said, float), np.asarray(right, float)
    walk_of = np.arange(len(said_of)) if walk is None else np.asarray(walk)
    result = []
    for low, high in pairwise(EDGES):
        within = (said_of >= low) & ((said_of < high) | (high == EDGES[-1]))
        count = int(within.sum())
        in_walk = np.unique(walk_of[within], return_inverse=True)[1]
        share, error = share_with_error(
            np.bincount(in_walk, is_right[within]).tolist(), np.bincount(in_walk).tolist()
        )
        result.append(
            Bin(
                low=low,
                high=high,
                legs=count,
                said=float(said_of[within].mean()) if count else float("nan"),
                right=share,
                right_se=error,
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


def said_and_right(
    difficulty: str, seeds: Sequence[int]
) -> tuple[list[float], list[bool], list[int]]:
    """Match walks; give what was said of each leg, whether it was right, and its walk."""
    said: list[float] = []
    right: list[bool] = []
    walk_of: list[int] = []
    for seed in seeds:
        walk = make_walk(seed, difficulty)
        match = match_of(walk)
        scores = score_walk(walk, portions_of(match))
        said += [leg.confidence for leg in match.legs]
        right += [leg.right for leg in scores.legs]
        walk_of += [seed] * len(match.legs)
    return said, right, walk_of


def report(name: str, said: list[float], right: list[bool], walk_of: list[int]) -> str:
    """Write one table: what was said, what was right with its chance error, and the verdict.

    "off" is told where the two differ by more than the aim and by more than chance, two
    standard errors, can explain; "?" where chance could hide that they do.
    """
    lines = [f"{name}: {len(said)} legs, area under curve {area_under_curve(said, right):.3f}"]
    for of in bins(said, right, walk_of):
        if not of.legs:
            continue
        differ = of.right - of.said
        # A few legs that are all right show no spread; what was said of them has one.
        by_said = float(np.sqrt(of.said * (1.0 - of.said) / of.legs))
        chance = 2.0 * max(of.right_se, by_said) if np.isfinite(of.right_se) else 1.0
        verdict = "off" if abs(differ) > AIM + chance else "?" if chance > AIM else "held"
        lines.append(
            f"  said {of.low:3.1f} to {of.high:3.1f}: {of.legs:5} legs, mean {of.said:.3f}, "
            f"right {of.right:.3f} ± {of.right_se:.3f}  {differ:+.3f} {verdict}"
        )
    return "\n".join(lines)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy.confidence")
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=100, help="walks a difficulty")
    parser.add_argument("--difficulties", nargs="+", choices=list(DIFFICULTIES))
    chosen = parser.parse_args(arguments)
    every: tuple[list[float], list[bool], list[int]] = [], [], []
    for number, difficulty in enumerate(chosen.difficulties or DEFAULT_DIFFICULTIES):
        found = said_and_right(difficulty, first_seeds(chosen.seeds, chosen.walks))
        print(report(difficulty, *found), flush=True)
        every[0].extend(found[0])
        every[1].extend(found[1])
        every[2].extend(walk + 10_000_000 * number for walk in found[2])
    print(report("all together", *every))
    return 0


if __name__ == "__main__":
    sys.exit(main())
