"""The confusion table: by cause and difficulty, found, missed and wrongly named.

Run with the repository and its tests folder on the path:

    PYTHONPATH=.:tests python -m confusion --seeds development --rounds 1
"""

from __future__ import annotations

import argparse
import json
from collections import Counter
from collections.abc import Callable, Sequence
from itertools import pairwise
from pathlib import Path

import numpy as np

from confusion.planted import SEEDS, walks
from confusion.verdicts import NO_MISTAKE, Verdict, verdicts

RECORD = Path(__file__).with_name("recorded.json")
EDGES = (0.05, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1.0)
DIFFICULTIES = ("trained", "ordinary", "novice")


def judge(purpose: str, rounds: int, difficulties: tuple[str, ...]) -> list[Verdict]:
    """Debrief the walks of a purpose."""
    return [
        one for kind, walk in walks(purpose, rounds, difficulties) for one in verdicts(kind, walk)
    ]


def figures(judged: Sequence[Verdict]) -> dict[str, object]:
    """Give the figures of the table."""
    clean = [one for one in judged if not one.planted]
    accused = [one for one in clean if one.named and not one.right(one.named)]
    named = [one for one in judged if one.named]
    pairs = [one for one in judged if one.either]
    return {
        "legs": len(judged),
        "clean_legs": len(clean),
        "clean_named": len(accused),
        "named": len(named),
        "named_right": sum(one.right(one.named or "") for one in named),
        "pairs": len(pairs),
        "pairs_right": sum(any(one.right(cause) for cause in one.either) for one in pairs),
        "clean_pairs": sum(
            not one.planted and not any(one.right(cause) for cause in one.either) for one in pairs
        ),
        "by_cause": {cause: by_cause(judged, cause) for cause in causes_of(judged)},
        "by_difficulty": {
            name: named_right([one for one in judged if one.difficulty == name])
            for name in dict.fromkeys(one.difficulty for one in judged)
        },
        "taken_for": taken_for(judged),
        "reliability": reliability(judged),
        "reliability_made": reliability(judged, lambda one: one.made),
    }


def causes_of(judged: Sequence[Verdict]) -> list[str]:
    return sorted({cause for one in judged for cause in one.planted})


def named_right(judged: Sequence[Verdict]) -> dict[str, int]:
    named = [one for one in judged if one.named]
    return {"named": len(named), "right": sum(one.right(one.named or "") for one in named)}


def by_cause(judged: Sequence[Verdict], cause: str) -> dict[str, int]:
    """Count the legs with a mistake: all, separable, and of these how many were what.

    "found" are named alone, "told" these and those told as one of two look-alikes.
    """
    having = [one for one in judged if cause in one.planted]
    apart = [one for one in having if cause in one.separable]
    return {
        "legs": len(having),
        "separable": len(apart),
        "found": sum(one.named == cause for one in apart),
        "told": sum(one.tells(cause) for one in apart),
        "likeliest": sum(_likeliest(one) == cause for one in apart),
        "called_within": sum(one.shares.get("within-skill", 0.0) >= 0.8 for one in apart),
        "wrong": sum(one.named is not None and not one.right(one.named) for one in having),
    }


def _likeliest(one: Verdict) -> str:
    mistakes = {c: share for c, share in one.shares.items() if c not in NO_MISTAKE}
    return max(mistakes, key=lambda cause: mistakes[cause], default="")


def taken_for(judged: Sequence[Verdict]) -> dict[str, dict[str, int]]:
    """Count what was named in place of what was made."""
    wrong: dict[str, Counter[str]] = {}
    for one in judged:
        if one.named and not one.right(one.named):
            made = " and ".join(sorted(one.planted)) or "nothing"
            wrong.setdefault(made, Counter())[one.named] += 1
    return {made: dict(counts) for made, counts in sorted(wrong.items())}


def reliability(
    judged: Sequence[Verdict],
    of: Callable[[Verdict], dict[str, float]] = lambda one: one.shares,
) -> list[dict[str, float]]:
    """Sort all mistakes that were listed by what was said of them.

    What chiefly put a leg out falls short of what was made on it: a mistake beside a larger
    one counts as made. What is said of its having been made at all must agree.
    """
    said = np.array(
        [
            (share, one.right(cause))
            for one in judged
            for cause, share in of(one).items()
            if cause not in NO_MISTAKE
        ]
    ).reshape(-1, 2)
    rows = []
    for low, high in pairwise(EDGES):
        inside = said[(said[:, 0] >= low) & ((said[:, 0] < high) | (high == EDGES[-1]))]
        if len(inside):
            rows.append(
                {
                    "low": low,
                    "high": high,
                    "count": len(inside),
                    "said": round(float(inside[:, 0].mean()), 4),
                    "right": round(float(inside[:, 1].mean()), 4),
                }
            )
    return rows


def as_text(of: dict) -> str:
    """Write the figures as a table to read."""
    head = (
        f"{of['legs']} legs; {of['clean_legs']} without a mistake, of which {of['clean_named']} "
        f"got one named; {of['named']} mistakes named, {of['named_right']} of them right; told as "
        f"one of two on {of['pairs']} legs, {of['pairs_right']} rightly, {of['clean_pairs']} of them "
        f"without a mistake"
    )
    lines = [
        head,
        f"{'cause':26} {'legs':>5} {'separable':>9} {'found':>6} {'told':>6} {'likeliest':>9} {'within':>7} {'wrong':>6}",
    ]
    for cause, row in of["by_cause"].items():
        apart = row["separable"]
        share = f"{row['found'] / apart:6.2f}" if apart else "     -"
        either = f"{row['told'] / apart:6.2f}" if apart else "     -"
        first = f"{row['likeliest'] / apart:9.2f}" if apart else "        -"
        lines.append(
            f"{cause:26} {row['legs']:5} {apart:9} {share} {either} {first} {row['called_within']:7} {row['wrong']:6}"
        )
    lines += [f"{made}: taken for {counts}" for made, counts in of["taken_for"].items()]
    lines += [
        f"{what} {row['low']:.2f} to {row['high']:.2f}: {row['count']:5} times, "
        f"mean {row['said']:.3f}, right {row['right']:.3f}"
        for what, rows in (
            ("said", of["reliability"]),
            ("said to have been made", of["reliability_made"]),
        )
        for row in rows
    ]
    return "\n".join(lines)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the table from a command line."""
    parser = argparse.ArgumentParser(prog="confusion", description=__doc__.split("\n", 1)[0])
    parser.add_argument("--seeds", choices=sorted(SEEDS), default="development")
    parser.add_argument("--rounds", type=int, default=1, help="walks of every sort")
    parser.add_argument("--difficulties", nargs="+", choices=DIFFICULTIES, default=DIFFICULTIES)
    parser.add_argument("--record", action="store_true", help="keep the figures for the guard")
    chosen = parser.parse_args(arguments)
    judged = judge(chosen.seeds, chosen.rounds, tuple(chosen.difficulties))
    of = figures(judged)
    print(f"{chosen.rounds} {chosen.seeds} walks of every sort")
    print(as_text(of))
    if chosen.record:
        document = {"seeds": chosen.seeds, "rounds": chosen.rounds, "figures": of}
        RECORD.write_text(json.dumps(document, indent=1, allow_nan=False) + "\n", encoding="utf-8")
    return 0


SHOWN = {
    "gm-angle-omitted": "grid-magnetic angle left out",
    "gm-angle-reversed": "grid-magnetic angle the wrong way",
    "reciprocal": "back azimuth walked",
    "hundred-miscounted": "a hundred lost or added",
    "pace-short": "pace count falls short",
    "digit-wrong": "one wrong digit in a reference",
}


def readme_lines() -> list[str]:
    """Give the few figures that the README shows, from the record."""
    of = json.loads(RECORD.read_text(encoding="utf-8"))["figures"]
    lines = ["| mistake, where it stands out | named | legs |", "|---|---|---|"]
    for cause, words in SHOWN.items():
        row = of["by_cause"].get(cause, {"separable": 0, "found": 0})
        apart = row["separable"]
        share = f"{100.0 * row['found'] / apart:.0f} %" if apart else "-"
        lines.append(f"| {words} | {share} | {apart} |")
    wrong = of["named"] - of["named_right"]
    lines += [
        "",
        (
            f"Of {of['clean_legs']} legs without a mistake {of['clean_named']} got one named; of "
            f"{of['named']} mistakes named {wrong} had not been made."
        ),
    ]
    return lines
