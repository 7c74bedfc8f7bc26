"""Mutation testing: a sample of small wrongs, and whether a test notices each.

    PYTHONPATH=.:tests python -m mutation --part geodesy --sample 40 --seed 1

All is loaded and the tests are collected once. One run without a wrong tells which function each
test reaches, and how long it takes. Each mutant is a copy of this process, with the wrong planted
into the loaded function; it runs the tests that reach it, the nearest and the shortest first, to
the first that fails or does not end. No file is touched. Exit status is 1 where the tests fail
without any wrong.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import sys
from collections.abc import Sequence
from pathlib import Path

from mutation.mutants import Mutant, mutants
from mutation.trial import Trial

ROOT = Path(__file__).resolve().parents[2]
PARTS = {
    "units": (
        ["audit/units.py", "audit/azimuths.py"],
        ["tests/test_units.py", "tests/test_azimuths.py"],
    ),
    "geodesy": (
        ["audit/geodesy"],
        ["tests/geodesy", "tests/course_setting", "tests/leg_card", "tests/readers"],
    ),
    "statistics": (["audit/statistics"], ["tests/statistics"]),
    "measurement": (["audit/measurement"], ["tests/measurement", "tests/coaching/test_steps.py"]),
    "matching": (["audit/matching"], ["tests/matching", "tests/measurement"]),
    "diagnosis": (["audit/diagnosis", "audit/diagnosis/causes"], ["tests/diagnosis"]),
    "grading": (["audit/grading"], ["tests/grading"]),
    "forecast": (["audit/forecast"], ["tests/forecast"]),
}  # fmt: skip
"""The files of each part, and the tests asked: its own first, then those of its users."""
SLOW = [
    "tests/matching/test_free_order.py::test_most_orders_of_made_walks_are_found",
    "tests/matching/test_outings.py::test_two_walks_of_one_course_on_one_day_are_not_mixed",
    "tests/matching/test_runner_up.py::test_the_runner_up_is_materially_another_reading",
    "tests/matching/test_clean_track.py::test_no_recording_whatever_its_times_and_places_fails",
    "tests/matching/test_clean_spikes.py::test_planted_spikes_are_found_again",
    "tests/statistics/test_chord_regression.py::test_interval_holds_the_truth_nineteen_times_in_twenty",
    "tests/matching/test_clean_spikes.py::test_no_fix_of_a_clean_walk_is_dropped",
]
"""Seconds each: asked only with --slow."""


def main() -> None:
    """Sample, try, and tell the fate of each mutant."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--part", choices=[*PARTS], required=True)
    parser.add_argument("--sample", type=int, default=40)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--unlike", type=Path, nargs="+", default=[], help="what runs told: none "
                        "of theirs, so that the sample is one that no test was written for")  # fmt: skip
    parser.add_argument("--only", action="append", help="those of the sample in a file")
    parser.add_argument("--again", type=Path, help="what a run told: its survivors, once more")
    parser.add_argument("--most-s", type=float, default=1e9, help="of tests a mutant, by the clock "
                        "of a run without a wrong")  # fmt: skip
    parser.add_argument("--tests", nargs="+", help="these alone, in place of those of the part")
    parser.add_argument("--slow", action="store_true", help="ask the slow tests too")
    asked = parser.parse_args()
    os.chdir(ROOT)
    sources, tests = PARTS[asked.part]
    files = [
        file
        for one in sources
        for file in ([ROOT / one] if one.endswith(".py") else sorted((ROOT / one).glob("*.py")))
    ]
    every = [(file, one) for file in files for one in mutants(file.read_text("utf-8"))]
    if asked.again:
        chosen = [one for one in every if named(one) in told([asked.again], survivors=True)]
    else:
        seen = told(asked.unlike)
        unseen = [one for one in every if named(one) not in seen]
        chosen = random.Random(asked.seed).sample(unseen, min(asked.sample, len(unseen)))
    if asked.only:
        chosen = [one for one in chosen if one[0].name in asked.only]
    words = [
        *(asked.tests or tests),
        *([] if asked.slow else [f"--deselect={one}" for one in SLOW]),
    ]
    sys.exit(Trial(every=len(every), chosen=chosen, most_s=asked.most_s).run(words))


def named(one: tuple[Path, Mutant]) -> tuple[str, str, str]:
    """Name a mutant so that it is found again when lines have moved."""
    file, mutant = one
    return file.name, mutant.function, mutant.what


def told(files: Sequence[Path], *, survivors: bool = False) -> set[tuple[str, str, str]]:
    """Name the mutants that earlier runs told, or their survivors."""
    rows = [json.loads(line) for file in files for line in file.read_text("utf-8").splitlines()]
    return {
        (row["file"], row["function"], row["what"])
        for row in rows
        if not (survivors and row["killed_by"])
    }


if __name__ == "__main__":
    main()
