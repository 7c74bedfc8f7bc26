"""The table of steps: planted, told, and told where nothing was planted.

Run with the repository and its tests folder on the path:

    PYTHONPATH=.:tests python -m steps_told --seeds development --rounds 1
"""

from __future__ import annotations

import argparse
import json
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from confusion.planted import Sort
from walks import make_walk

import audit
from audit.coaching.steps import Step
from steps_told.own_cards import STEPS, written

RECORD = Path(__file__).with_name("recorded.json")
SEEDS = {
    "development": range(1_200_000, 1_210_000),
    "guard": range(1_210_000, 1_220_000),
    "reporting": range(1_220_000, 1_230_000),
}
ON_FOOT = ("walked", "paced", "recognised")
WHOLE_WALK = ("gm-angle-omitted", "gm-angle-reversed", "single-double-pace", "wrong-ruler")
DIFFICULTIES = ("trained", "ordinary", "novice")


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One leg: the step planted (None: none), the steps told, and those told as one of several."""

    cause: str
    step: Step | None
    told: tuple[Step, ...]
    among: frozenset[Step]


def judged(purpose: str, rounds: int) -> Iterator[Told]:
    """Debrief the walks of a purpose, each with its walker's own card and log."""
    kinds = [(cause, level) for cause in STEPS for level in DIFFICULTIES]
    for number in range(rounds * len(kinds)):
        cause, level = kinds[number % len(kinds)]
        sort = Sort(difficulty=level, cause=cause, whole_walk=cause in WHOLE_WALK)
        yield from told(make_walk(SEEDS[purpose][number], sort.family()), cause, number)


def told(walk, cause: str, number: int) -> Iterator[Told]:
    """Debrief one walk; legs whose portion was not found are left out."""
    paper = written(walk, number)
    debrief = audit.debrief(walk.plan, walk.track, log=paper.log, own_card=paper.card)
    for leg, step in paper.steps.items():
        of = debrief.legs[leg].steps
        if of is not None and walk.truth.legs[leg].status == "walked":
            entered = [hop for hop in of.hops if hop.entered and len(hop.steps) > 1]
            among = frozenset(one for hop in entered for one in hop.steps)
            yield Told(cause=cause, step=step, told=of.entered, among=among)


def figures(of: Sequence[Told]) -> dict[str, object]:
    """Count by step; on legs without a slip, what was told on paper and on foot."""
    steps = dict.fromkeys(step for one in STEPS.values() for step in one)
    clean = [one for one in of if one.step is None]
    return {
        "legs": len(of),
        "clean_legs": len(clean),
        "clean_told_on_paper": sum(bool(set(one.told) - set(ON_FOOT)) for one in clean),
        "clean_told_on_foot": sum(bool(set(one.told) & set(ON_FOOT)) for one in clean),
        "steps": {step: _of_step([one for one in of if one.step == step], step) for step in steps},
    }


def _of_step(of: Sequence[Told], step: Step) -> dict[str, object]:
    """Count legs, those where the step was told, and other steps on paper told beside it."""
    others = Counter(
        other for one in of for other in one.told if other != step and other not in ON_FOOT
    )
    return {
        "planted": len(of),
        "told": sum(step in one.told for one in of),
        "told_among_others": sum(step in one.among and step not in one.told for one in of),
        "others_on_paper": dict(sorted(others.items())),
    }


def as_text(of: dict) -> str:
    """Write the figures as a table to read."""
    lines = [
        (
            f"{of['legs']} legs; {of['clean_legs']} without a slip, of which "
            f"{of['clean_told_on_paper']} were told one on paper and "
            f"{of['clean_told_on_foot']} one on foot"
        )
    ]
    for step, row in of["steps"].items():
        share = row["told"] / row["planted"] if row["planted"] else 0.0
        others = row["others_on_paper"] or ""
        among = row["told_among_others"]
        lines.append(
            f"{step:18} planted {row['planted']:4} told {share:5.2f} "
            f"among others {among:3} {others}"
        )
    return "\n".join(lines)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the table from a command line."""
    parser = argparse.ArgumentParser(prog="steps_told", description=__doc__.split("\n", 1)[0])
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--rounds", type=int, default=1, help="walks of every sort")
    parser.add_argument("--record", action="store_true", help="keep the figures for the guard")
    chosen = parser.parse_args(arguments)
    of = figures(list(judged(chosen.seeds, chosen.rounds)))
    print(as_text(of))
    if chosen.record:
        document = {"seeds": chosen.seeds, "rounds": chosen.rounds, "figures": of}
        RECORD.write_text(json.dumps(document, indent=1, allow_nan=False) + "\n", encoding="utf-8")
    return 0


def readme_lines() -> list[str]:
    """Give the table that the README shows, from the record."""
    of = json.loads(RECORD.read_text(encoding="utf-8"))["figures"]
    lines = ["| step | planted | told | told as one of several |", "|---|---|---|---|"]
    for step, row in of["steps"].items():
        planted = max(row["planted"], 1)
        shares = (f"{100.0 * row[key] / planted:.0f} %" for key in ("told", "told_among_others"))
        lines.append(f"| {step} | {row['planted']} | {' | '.join(shares)} |")
    lines += [
        "",
        (
            f"Of {of['clean_legs']} legs without a slip {of['clean_told_on_paper']} were told one "
            f"on paper, {of['clean_told_on_foot']} one on foot."
        ),
    ]
    return lines
