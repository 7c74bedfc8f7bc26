"""All benchmarks at once: each stage, the commands, the class, large files and growth.

Every figure is processor time in yardsticks (`yardstick.py`), unless its name ends in a
unit: ``_mb``, ``_bytes``, ``_s`` (by the clock), ``_ratio``, ``_x`` (times linear).
"""

from __future__ import annotations

import os
import sys
import tempfile
from itertools import pairwise
from pathlib import Path

from benchmarks import (
    company,
    debrief_walk,
    grade_class,
    growth,
    large_file,
    page,
    read_track,
    whole_growth,
)
from benchmarks.whole_command import run_python
from benchmarks.whole_growth import in_own_process, over_linear
from benchmarks.yardstick import in_turn_s, yardstick_s

AIMS = {
    "large.over_gpxpy_ratio": 0.35,
    "large.peak_mb": 250.0,
    "page.size_bytes": 2_000_000.0,
    "page.first_s": 1.0,
    "command.debrief_s": 2.0,
    "growth.read_1e4_to_1e6_x": 1.2,
    "growth.debrief_1e4_to_1e6_x": 1.2,
    "growth.debrief_1e4_to_1e5_x": 1.2,
}
"""No more than this, as asked for; seconds hold on a quiet machine only."""
LEAST = {"class.two_processors_on_40_ratio": 1.8}


def measure(*, quick: bool) -> dict[str, float]:
    """Give every figure; quick leaves out a million fixes, a hundred legs and the class."""
    for threads in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
        os.environ.setdefault(threads, "1")  # as the command has it
    unit = yardstick_s()
    found = {"yardstick.processor_s": unit}
    parts = {
        "commands": lambda: _commands(unit),
        "stages": lambda: _stages(unit),
        "page": lambda: _page(unit),
        "reading": _reading,
        "large file": _large,
        "growth": lambda: _growth(quick=quick),
        "company": lambda: _company(unit),
        **({} if quick else {"class": lambda: _class(unit)}),
    }
    for name, part in parts.items():
        print(f"measuring: {name}", file=sys.stderr, flush=True)
        found |= part()
    return found


def _commands(unit: float) -> dict[str, float]:
    """The commands as they are started, with Python and all."""
    walk = debrief_walk.four_hours()
    found: dict[str, float] = {}
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        plan, track = debrief_walk.write_files(walk, folder)
        for called, extra in (("debrief", ()), ("debrief_json", ("--only", "json"))):
            best = debrief_walk.best(
                [debrief_walk.run_command(plan, track, folder / "out", *extra) for _ in range(3)]
            )
            found[f"command.{called}"] = best["processor_s"] / unit
            found[f"command.{called}_s"] = best["seconds"]
            found[f"command.{called}_mb"] = best["peak_mb"]
    for called, words in (
        ("empty_python", ["-c", ""]),
        ("help", ["-m", "audit", "--help"]),
        ("wrong_use", ["-m", "audit", "debrief"]),
    ):
        found[f"command.{called}"] = least_s(words, 5) / unit
    return found


def least_s(words: list[str], repeats: int) -> float:
    """The least processor time of a Python command, which may be wrong use."""
    return min(run_python(words, may_fail=True)["processor_s"] for _ in range(repeats))


def _stages(unit: float) -> dict[str, float]:
    walk = debrief_walk.four_hours()
    with tempfile.TemporaryDirectory() as name:
        plan, track = debrief_walk.write_files(walk, Path(name))
        cold, *warm = debrief_walk.stages_apart(plan, track, 4)
    found = {
        f"stage.{stage.replace(' ', '_')}": min(run[stage] for run in warm) / unit for stage in cold
    }
    found["walk.first"] = sum(cold.values()) / unit
    found["walk.each_more"] = min(sum(run.values()) for run in warm) / unit
    return found


def _page(unit: float) -> dict[str, float]:
    made = in_own_process(page.measure, 12)
    return {
        "page.first": made["first_processor_s"] / unit,
        "page.first_s": made["first_s"],
        "page.later": made["later_processor_s"] / unit,
        "page.size_bytes": float(made["bytes"]),
    }


def _reading() -> dict[str, float]:
    """Reading a recording, beside what the bare parser takes."""
    with tempfile.TemporaryDirectory() as name:
        path = Path(name) / "walk.gpx"
        read_track.write_recording(path, 20_000)
        ours, expat = in_turn_s(
            lambda: read_track.ours(path), lambda: read_track.bare_expat(path), repeats=5
        )
    return {"read.over_expat_ratio": ours / expat}


def _large() -> dict[str, float]:
    made = large_file.figures(3)
    names = {"ratio": "over_gpxpy_ratio", "debrief_mb": "peak_mb", "gpxpy_mb": "gpxpy_mb"}
    return {f"large.{names[name]}": value for name, value in made.items() if name in names}


def _growth(*, quick: bool) -> dict[str, float]:
    found: dict[str, float] = {}
    sizes = whole_growth.FIXES[:2] if quick else whole_growth.FIXES
    for called, job in (("read", whole_growth.read), ("debrief", whole_growth.grown)):
        runs = {fixes: in_own_process(job, (fixes, 3 if fixes < 1e6 else 1)) for fixes in sizes}
        least = sizes[0]
        for fixes in sizes[1:]:
            grown = f"growth.{called}_1e{len(str(least)) - 1}_to_1e{len(str(fixes)) - 1}_x"
            found[grown] = over_linear(runs[least], runs[fixes], fixes / least)
            found[f"growth.{called}_1e{len(str(fixes)) - 1}_a_fix_bytes"] = runs[fixes][
                "bytes_a_fix"
            ]
    legs = growth.LEGS[:3] if quick else growth.LEGS
    runs = {
        number: in_own_process(growth.measure, (420 * number + 60, number, 2)) for number in legs
    }
    for fewer, more in pairwise(legs):
        ratio = runs[more]["whole_s"] / runs[fewer]["whole_s"] / (more / fewer)
        found[f"growth.match_{fewer}_to_{more}_legs_x"] = ratio
    return found


def _company(unit: float) -> dict[str, float]:
    """A class of which all walk together, and how that grows beside its pairs."""
    some, many = (company.take_s(walkers) for walkers in (12, 24))
    pairs = (24 * 23) / (12 * 11)
    return {"class.all_together_24": many / unit, "growth.company_12_to_24_x": many / some / pairs}


def _class(unit: float) -> dict[str, float]:
    """Classes of 6, 12 and 40: what each walk more takes, and what two processors gain.

    Starting and the class page are not shared out, which weighs on a small class. No class
    gains more than two classes that know nothing of each other, graded at once.
    """
    from classes.class_files import write_class
    from classes.made_class import make_class
    from classes.members import Plants

    runs, most = {}, 0.0
    for walkers, rounds in ((6, 1), (12, 1), (40, 2)):
        made = make_class(7, walkers=walkers, plants=Plants())
        with tempfile.TemporaryDirectory() as name:
            files = write_class(made, Path(name) / "files")
            in_turn = [
                [grade_class.run(files, Path(name) / f"out{turn}-{jobs}", jobs) for jobs in (1, 2)]
                for turn in range(rounds)
            ]
            runs[walkers] = [
                {figure: min(run[figure] for run in of) for figure in of[0]}
                for of in zip(*in_turn, strict=True)
            ]
            if walkers == 12:
                most = grade_class.two_at_once(files, Path(name))
    more = runs[12][0]["processor_s"] - runs[6][0]["processor_s"]
    return {
        "class.each_walk_more": more / 6.0 / unit,
        "class.two_processors_ratio": runs[12][0]["seconds"] / runs[12][1]["seconds"],
        "class.two_processors_on_40_ratio": runs[40][0]["seconds"] / runs[40][1]["seconds"],
        "class.two_at_once_ratio": most,
    }
