"""The table of coaching: what was said to keep and to work on, and how much of it was right.

Run with the repository and its tests folder on the path:

    PYTHONPATH=.:tests python -m coached --seeds development --rounds 1
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from pathlib import Path

from confusion.planted import Sort

from coached.advice import Advice, advice_on

RECORD = Path(__file__).with_name("recorded.json")
SEEDS = {
    "development": range(1_300_000, 1_310_000),
    "guard": range(1_310_000, 1_320_000),
    "reporting": range(1_320_000, 1_330_000),
}
CAUSES = (
    ("", False), ("gm-angle-omitted", True), ("gm-angle-reversed", True), ("steady-bias", True),
    ("pace-short", True), ("pace-long", True), ("reciprocal", False),
    ("hundred-miscounted", False), ("digit-wrong", False), ("veer", False),
)  # fmt: skip
"""One walk in ten has no mistake planted."""
DIFFICULTIES = ("trained", "ordinary", "novice")
KINDS = ("keep", "named", "part", "planted")
SHOWN = {
    "keep": "to keep, on the legs named",
    "named": "to work on: a mistake",
    "part": "to work on: the largest part, no mistake named",
    "planted": "mistakes that stood out, told among the two to work on",
}


def kinds() -> list[Sort]:
    """Give every sort of walk."""
    return [
        Sort(difficulty=level, cause=cause, whole_walk=whole)
        for cause, whole in CAUSES
        for level in DIFFICULTIES
    ]


def judged(purpose: str, rounds: int) -> list[Advice]:
    """Judge the talk after all walks of a purpose."""
    return [
        one
        for number, kind in enumerate(rounds * kinds())
        for one in advice_on(kind, SEEDS[purpose][number])
    ]


def figures(of: Sequence[Advice]) -> dict[str, dict[str, dict[str, int]]]:
    """Count by kind of advice and by what it was about: all, and the right ones."""
    return {
        kind: {
            what: _count([one for one in of if (one.kind, one.what) == (kind, what)])
            for what in sorted({one.what for one in of if one.kind == kind})
        }
        for kind in KINDS
    }


def _count(of: Sequence[Advice]) -> dict[str, int]:
    return {"said": len(of), "right": sum(one.right for one in of)}


def total(rows: dict[str, dict[str, int]]) -> tuple[int, int]:
    """Give all and the right ones of one kind."""
    return sum(row["said"] for row in rows.values()), sum(row["right"] for row in rows.values())


def as_text(of: dict[str, dict[str, dict[str, int]]]) -> str:
    """Write the figures as a table to read."""
    lines = []
    for kind, rows in of.items():
        said, right = total(rows)
        lines.append(f"{SHOWN[kind]}: {right} of {said}")
        lines += [
            f"    {what:26} {row['right']:4} of {row['said']:4}" for what, row in rows.items()
        ]
    return "\n".join(lines)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the table from a command line."""
    parser = argparse.ArgumentParser(prog="coached", description=__doc__.split("\n", 1)[0])
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--rounds", type=int, default=1, help="walks of every sort")
    parser.add_argument("--record", action="store_true", help="keep the figures for the guard")
    chosen = parser.parse_args(arguments)
    of = figures(judged(chosen.seeds, chosen.rounds))
    print(as_text(of))
    if chosen.record:
        document = {"seeds": chosen.seeds, "rounds": chosen.rounds, "figures": of}
        RECORD.write_text(json.dumps(document, indent=1, allow_nan=False) + "\n", encoding="utf-8")
    return 0


def readme_lines() -> list[str]:
    """Give the table that the README shows, from the record."""
    of = json.loads(RECORD.read_text(encoding="utf-8"))["figures"]
    lines = ["| said | right | of |", "|---|---|---|"]
    for kind, words in SHOWN.items():
        said, right = total(of[kind])
        lines.append(f"| {words} | {right} | {said} |")
    return lines
