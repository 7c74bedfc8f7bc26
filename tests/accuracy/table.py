"""The accuracy table: the project's matching and its rivals on made walks.

Run with the repository and its tests folder on the path:

    PYTHONPATH=.:tests python -m accuracy --seeds development --walks 100 --jobs 2
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

if __name__ == "__main__":  # run as a file: find the packages beside it
    sys.path[:0] = [
        str(Path(__file__).resolve().parents[2]),
        str(Path(__file__).resolve().parents[1]),
    ]

from walks import DIFFICULTIES, Walk, make_walk

from accuracy import project, research_prototype
from accuracy.figures import figures
from accuracy.guard import write_record, write_rivals
from accuracy.nearest_points import nearest_points
from accuracy.scoring import LegScores, Portion, score_walk
from accuracy.seeds import SEEDS, first_seeds
from accuracy.time_warping import time_warping

Method = Callable[[Walk], list[Portion | None]]

METHODS: dict[str, Method] = {
    "project": project.project,
    "prototype": research_prototype.research_prototype,
    "nearest points": nearest_points,
    "time warping": time_warping,
}
DEFAULT_DIFFICULTIES = ("trained", "ordinary", "novice")


def methods_present() -> list[str]:
    """Give the names of the methods that can be run here."""
    absent = set()
    if not project.is_present():
        absent.add("project")
    if not research_prototype.is_present():
        absent.add("prototype")
    return [name for name in METHODS if name not in absent]


def score_one(task: tuple[str, int, tuple[str, ...]]) -> dict[str, tuple[LegScores, float]]:
    """Make one walk and score each method on it; with the processor seconds of each."""
    difficulty, seed, names = task
    walk = make_walk(seed, difficulty)
    scored = {}
    for name in names:
        began = time.process_time()
        portions = METHODS[name](walk)
        scored[name] = (score_walk(walk, portions), time.process_time() - began)
    return scored


def run(
    purpose: str, walks: int, jobs: int, names: Sequence[str], difficulties: Sequence[str]
) -> dict[str, dict[str, dict[str, float]]]:
    """Give figures by difficulty and method."""
    table: dict[str, dict[str, dict[str, float]]] = {}
    with ProcessPoolExecutor(max_workers=jobs) as pool:
        for difficulty in difficulties:
            tasks = [(difficulty, seed, tuple(names)) for seed in first_seeds(purpose, walks)]
            mapped = pool.map if jobs > 1 else map
            scored = list(mapped(score_one, tasks))
            table[difficulty] = {
                name: figures([s[name][0] for s in scored], [s[name][1] for s in scored])
                for name in names
            }
    return table


HEAD = (
    f"{'difficulty':12} {'method':15} {'legs':>5} {'legs right':>14} {'walks right':>14} "
    f"{'seconds':>8} {'called walked':>20} {'cut 50%':>8} {'cut 90%':>9} {'heading':>8} {'cpu':>7}"
)


def as_text(table: dict[str, dict[str, dict[str, float]]]) -> str:
    """Write the figures as a table to read; shares in per cent, one standard error after them.

    "called walked" is the share of the legs that were not walked; "heading" how far wrong
    ends alone turn a leg, at the 95th percentile.
    """
    lines = [HEAD]
    for difficulty, methods in table.items():
        for name, of in methods.items():
            lines.append(
                f"{difficulty:12} {name:15} {of['legs']:5.0f} "
                f"{_share(of, 'legs_right')} {_share(of, 'walks_right')} "
                f"{100 * of['seconds_right']:7.2f}% "
                f"{_share(of, 'called_walked')} of {of['legs_not_walked']:<3.0f}"
                f"{of['cut_median_s']:6.1f} s {of['cut_p90_s']:7.0f} s "
                f"{of['heading_change_p95_deg']:6.1f}° {of['processor_s']:5.3f} s"
            )
    return "\n".join(lines)


def _share(of: dict[str, float], name: str) -> str:
    if of[name] != of[name]:  # nothing to share
        return f"{'-':>14}"
    return f"{100 * of[name]:6.2f} ±{100 * of[f'{name}_se']:5.2f}%"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the table from a command line."""
    parser = argparse.ArgumentParser(prog="accuracy", description=__doc__.split("\n", 1)[0])
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--walks", type=int, default=100, help="walks a difficulty")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--methods", nargs="+", choices=list(METHODS))
    parser.add_argument("--difficulties", nargs="+", choices=list(DIFFICULTIES))
    parser.add_argument("--json", type=Path, help="also write the figures to this file")
    parser.add_argument(
        "--record",
        action="store_true",
        help="keep the figures of the methods that were run; the project's are the guard's",
    )
    chosen = parser.parse_args(arguments)
    names = chosen.methods or methods_present()
    difficulties = chosen.difficulties or DEFAULT_DIFFICULTIES
    table = run(chosen.seeds, chosen.walks, chosen.jobs, names, difficulties)
    print(f"{chosen.walks} {chosen.seeds} walks a difficulty")
    print(as_text(table))
    if chosen.json:
        document = {"seeds": chosen.seeds, "walks": chosen.walks, "table": table}
        chosen.json.write_text(json.dumps(document, indent=1, allow_nan=True) + "\n")
    if chosen.record and "project" in names:
        write_record(chosen.seeds, chosen.walks, table)
    if chosen.record and set(names) != {"project"}:
        write_rivals(chosen.seeds, chosen.walks, table)
    return 0


if __name__ == "__main__":
    sys.exit(main())
