"""The table of planted slips: found, named, and what was said that is not so."""

from __future__ import annotations

import argparse
import json
from dataclasses import asdict
from pathlib import Path

from plan_slips.limits import Found, limit_lines, limits
from plan_slips.measure import Tally, false_on_right_plans, tally
from plan_slips.slips import PLANTERS

RECORD = Path(__file__).with_name("recorded.json")


def main() -> int:
    """Measure, print, and with --record keep the figures."""
    parser = argparse.ArgumentParser(prog="python -m plan_slips", description=__doc__)
    parser.add_argument("--plans", type=int, default=100, help="plans of each kind")
    parser.add_argument("--seed", default="reporting", help="another seed, other plans")
    parser.add_argument("--record", action="store_true", help="keep the figures")
    options = parser.parse_args()
    tallies = {kind: tally(kind, options.plans, options.seed) for kind in PLANTERS}
    right = 10 * options.plans
    false = false_on_right_plans(right, options.seed)
    small = limits(options.plans, options.seed)
    print("\n".join([*lines(tallies, right, false), "", *limit_lines(small)]))
    if options.record:
        document = {
            "seed": options.seed,
            "right_plans": right,
            "false_on_right_plans": false,
            "kinds": {kind: asdict(of) for kind, of in tallies.items()},
            "limits": small,
        }
        RECORD.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")
    return 0


def read_record() -> tuple[dict[str, Tally], int, int]:
    """Give the kept tallies by kind, the number of right plans, and of those that were faulted."""
    document = json.loads(RECORD.read_text(encoding="utf-8"))
    tallies = {kind: Tally(**of) for kind, of in document["kinds"].items()}
    return tallies, document["right_plans"], document["false_on_right_plans"]


def read_limits() -> Found:
    """Give what was found of small slips, by kind and size."""
    document = json.loads(RECORD.read_text(encoding="utf-8"))
    return {
        kind: {size: (seen, out_of) for size, (seen, out_of) in sizes.items()}
        for kind, sizes in document["limits"].items()
    }


def lines(tallies: dict[str, Tally], right: int, false: int) -> list[str]:
    """Give the rows of the table in Markdown."""
    rows = [
        "| slip planted into one place of a right plan | plans | found | named | elsewhere |",
        "|---|---|---|---|---|",
    ]
    for kind, of in tallies.items():
        read = of.planted - of.refused
        rows.append(
            f"| {kind} | {read} | {of.found / read:.1%} | {of.named / read:.1%} | {of.false} |"
        )
    return [*rows, f"| none: a right plan | {right} | {false} | | |"]
