"""The coverage table: how often 95 % intervals hold the truth of made walks.

Run with the repository and its tests folder on the path:

    PYTHONPATH=.:tests python -m honesty --seeds development --walks 60
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import get_args

import numpy as np
from accuracy.figures import share_with_error
from accuracy.seeds import SEEDS, first_seeds
from walks import Difficulty, make_walk

from audit.measurement.leg_details import PointVerdict
from honesty.built_courses import built_difficulties
from honesty.logging_rates import DISTANCES, RateRow, rate_figures, rate_rows
from honesty.measured_legs import LegRow, measured_legs

RECORD = Path(__file__).with_name("recorded.json")
FAMILIES = ("trained", "ordinary", "novice")
LENGTHS_M = ((80, 200), (200, 400), (400, 800), (800, 2000))
ENOUGH_LEGS = 150
"""With fewer the chance error of a cell is more than the promise is wide."""
SHARE_THINNED = 2
"""Of the built walks that were logged every second, one in so many is measured thinned too."""
INTERVALS_S = {
    "1 s": (0.5, 1.5),
    "2 to 6 s": (1.5, 7.0),
    "8 to 20 s": (7.0, 20.0),
    "30 s": (20.0, 60.5),
}
HELD = {
    "heading": "held",
    "by end points": "ends_held",
    "by independent noise": "noise_held",
    "straight distance": "straight_held",
    "path": "path_held",
    "claim": "claim_held",
    "ledger: heading": "heading_part_held",
    "ledger: distance": "distance_part_held",
}
IN_CELLS = ("heading", "by end points", "by independent noise", "straight distance", "path")
HALVES = {
    "heading": "half_deg",
    "by end points": "ends_half_deg",
    "by independent noise": "noise_half_deg",
}


def rows_of(task: tuple[str | Difficulty, int]) -> list[LegRow]:
    """Make one walk and measure it."""
    difficulty, seed = task
    return measured_legs(make_walk(seed, difficulty))


def run(purpose: str, walks: int, jobs: int) -> list[LegRow]:
    """Measure the first walks of a purpose, all families."""
    seeds = first_seeds(purpose, walks)
    return _measured([(family, seed) for family in FAMILIES for seed in seeds], jobs)


def run_built(purpose: str, walks: int, jobs: int) -> list[LegRow]:
    """Measure the first walks of a purpose on courses of every length at every rate."""
    seeds = first_seeds(purpose, walks)
    return _measured([(one, seed) for one in built_difficulties() for seed in seeds], jobs)


def run_thinned(purpose: str, walks: int) -> list[RateRow]:
    """Measure walks on built courses that were logged every second, and thinned."""
    dense = [one for one in built_difficulties() if one.interval_s == (1.0,)]
    return rate_rows(make_walk(seed, one) for one in dense for seed in first_seeds(purpose, walks))


def _measured(tasks: Sequence[tuple[str | Difficulty, int]], jobs: int) -> list[LegRow]:
    if jobs == 1:
        found = [rows_of(task) for task in tasks]
    else:
        with ProcessPoolExecutor(max_workers=jobs) as pool:
            found = list(pool.map(rows_of, tasks))
    return [row for rows in found for row in rows]


def groups(rows: Sequence[LegRow]) -> dict[str, list[LegRow]]:
    """Give the groups that are told apart: legs matched rightly, unless the name says all."""
    chosen: dict[str, Callable[[LegRow], bool]] = {"all legs": lambda _: True}
    chosen["legs matched rightly"] = lambda row: row.right
    for family in FAMILIES:
        chosen[family] = lambda row, family=family: row.right and row.family == family
    for low, high in LENGTHS_M:
        chosen[f"{low} to {high} m"] = lambda row, low=low, high=high: (
            row.right and low <= row.length_m < high
        )
    for every, (low, high) in INTERVALS_S.items():
        chosen[f"logged every {every}"] = lambda row, low=low, high=high: (
            row.right and low <= row.interval_s < high
        )
    return {name: [row for row in rows if wanted(row)] for name, wanted in chosen.items()}


def figures(rows: Sequence[LegRow]) -> dict[str, dict[str, float]]:
    """Give coverage with standard error (legs clustered in walks) and middle half width."""
    walks = sorted({(row.family, row.seed) for row in rows})
    by_walk = {walk: [row for row in rows if (row.family, row.seed) == walk] for walk in walks}
    table = {}
    for name, field in HELD.items():
        share, error = share_with_error(
            [sum(getattr(row, field) for row in by_walk[walk]) for walk in walks],
            [len(by_walk[walk]) for walk in walks],
        )
        table[name] = {"held": share, "held_se": error}
        if name in HALVES and rows:
            table[name]["half_deg"] = float(np.median([getattr(r, HALVES[name]) for r in rows]))
    return table


def grid_of_headings(rows: Sequence[LegRow]) -> dict[str, dict[str, float]]:
    """Give the coverage of the heading, of two usual ways and of lengths, by length and rate."""
    cells = {}
    for low_m, high_m in LENGTHS_M:
        for every, (low_s, high_s) in INTERVALS_S.items():
            chosen = [
                row
                for row in rows
                if row.right and low_m <= row.length_m < high_m and low_s <= row.interval_s < high_s
            ]
            if chosen:
                cells[f"{low_m} to {high_m} m, {every}"] = {
                    "legs": float(len(chosen)),
                    "heading_se": figures(chosen)["heading"]["held_se"],
                    **{
                        name: float(np.mean([getattr(row, HELD[name]) for row in chosen]))
                        for name in IN_CELLS
                    },
                }
    return cells


def verdicts(rows: Sequence[LegRow]) -> dict[str, dict[str, dict[str, int]]]:
    """Count what is said of the points against what is true: by walker, verdict and truth."""
    return {
        family: {
            verdict: {
                truth: sum(
                    row.family == family and row.verdict == verdict and row.reached is reached
                    for row in rows
                )
                for truth, reached in (("reached", True), ("not reached", False))
            }
            for verdict in get_args(PointVerdict)
        }
        for family in FAMILIES
    }


def search_ends(rows: Sequence[LegRow]) -> dict[str, float]:
    """Give how far off the end of the last search is, over legs matched rightly."""
    off_s = [row.search_off_s for row in rows if row.right and row.search_off_s is not None]
    low, middle, high = np.quantile(off_s, [0.05, 0.5, 0.95])
    return {
        "legs": float(len(off_s)),
        "middle_s": float(middle),
        "low_s": float(low),
        "high_s": float(high),
        "beyond_a_minute": float(np.mean(np.abs(off_s) > 60.0)),
        "beyond_four_minutes": float(np.mean(np.abs(off_s) > 240.0)),
    }


def as_text(
    rows: Sequence[LegRow], built: Sequence[LegRow] = (), rates: Sequence[RateRow] = ()
) -> str:
    """Write the table to be read."""
    lines = [f"{'legs':22} {'n':>5}  " + "  ".join(f"{name:>20}" for name in HELD)]
    for group, chosen in groups(rows).items():
        if not chosen:
            continue
        cells = []
        for of in figures(chosen).values():
            half = f" ±{of['half_deg']:.2f}°" if "half_deg" in of else ""
            cells.append(f"{100 * of['held']:.1f} ± {100 * of['held_se']:.1f}{half}")
        lines.append(f"{group:22} {len(chosen):5}  " + "  ".join(f"{cell:>20}" for cell in cells))
    ratio = np.array([row.path_ratio for row in rows if row.right])
    lines.append(
        f"path measured over path walked: middle {np.median(ratio):.3f}, "
        f"ninety in a hundred from {np.quantile(ratio, 0.05):.3f} to {np.quantile(ratio, 0.95):.3f}"
    )
    lines.append(f"held by length and logging, of 100: {', '.join(IN_CELLS)}")
    for cell, of in grid_of_headings([*rows, *built]).items():
        shares = ", ".join(f"{100 * of[name]:.1f}" for name in IN_CELLS)
        few = "" if of["legs"] >= ENOUGH_LEGS else "  (too few to tell)"
        lines.append(f"  {cell:28} {of['legs']:5.0f}  {shares}{few}")
    lines.append("points: said, and in truth reached or not")
    for family, counts in verdicts(rows).items():
        said = "; ".join(
            f"{verdict} {of['reached']} reached, {of['not reached']} not"
            for verdict, of in counts.items()
        )
        lines.append(f"  {family:12} {said}")
    lines.append(f"end of the last search: {search_ends(rows)}")
    for every, groups_of in rate_figures(rates, LENGTHS_M).items():
        lines.append(f"logged every {every} over every second: legs within 2 %, or their error")
        for name, of in groups_of.items():
            shares = "; ".join(
                f"{distance} {100 * of[f'{distance}: within 2 %']:.0f}, "
                f"{100 * of[f'{distance}: within 2 % or its error']:.0f}"
                for distance in DISTANCES
            )
            lines.append(f"  {name:28} {of['legs']:5.0f}  whole {of['whole']:.4f}  {shares}")
    lines.append(f"ledgers add up to within {max(row.ledger_gap_m for row in rows):.1e} m")
    return "\n".join(lines)


def write_record(
    purpose: str,
    walks: tuple[int, int],
    rows: Sequence[LegRow],
    built: Sequence[LegRow],
    rates: Sequence[RateRow],
    path: Path = RECORD,
) -> None:
    """Write the coverage that the guard and README.md keep to."""
    kept = {
        group: {
            "legs": len(chosen),
            **{
                name: {key: round(value, 4) for key, value in of.items()}
                for name, of in figures(chosen).items()
            },
        }
        for group, chosen in groups(rows).items()
        if chosen
    }
    document = {
        "seeds": purpose,
        "walks": walks[0],
        "built": walks[1],
        "figures": kept,
        "headings": {
            cell: {name: round(value, 4) for name, value in of.items()}
            for cell, of in grid_of_headings([*rows, *built]).items()
        },
        "points": verdicts(rows),
        "logging": {
            every: {
                name: {key: round(value, 4) for key, value in of.items()}
                for name, of in groups_of.items()
            }
            for every, groups_of in rate_figures(rates, LENGTHS_M).items()
        },
        "search_ends": {name: round(value, 4) for name, value in search_ends(rows).items()},
    }
    path.write_text(json.dumps(document, indent=1, allow_nan=False) + "\n", encoding="utf-8")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the table."""
    parser = argparse.ArgumentParser(prog="python -m honesty", description=__doc__)
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=40, help="of each family")
    parser.add_argument("--built", type=int, default=10, help="of each length, rate and family")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--record", action="store_true", help="keep the figures for the guard")
    asked = parser.parse_args(arguments)
    rows = run(asked.seeds, asked.walks, asked.jobs)
    built = run_built(asked.seeds, asked.built, asked.jobs)
    rates = run_thinned(asked.seeds, asked.built // SHARE_THINNED)
    print(as_text(rows, built, rates))
    if asked.record:
        write_record(asked.seeds, (asked.walks, asked.built), rows, built, rates)
    return 0
