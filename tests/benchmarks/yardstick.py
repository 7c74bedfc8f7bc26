"""The unit of the benchmarks: the processor time in which gpxpy reads 10,000 made fixes.

Seconds differ from machine to machine and with what else runs on it; how many times this
unit something takes, hardly. gpxpy is the reader that most programs use, is not ours, and
spends its time as this program does: in Python, and in a parser written in C.
"""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable
from functools import cache
from pathlib import Path

FIXES = 10_000


def processor_s(job: Callable[[], object], repeats: int = 3) -> float:
    """The least processor time of several runs."""
    best = float("inf")
    for _ in range(repeats):
        begun = time.process_time()
        job()
        best = min(best, time.process_time() - begun)
    return best


def in_turn_s(*jobs: Callable[[], object], repeats: int = 5) -> list[float]:
    """The least processor time of each of some jobs that take turns."""
    runs = [[processor_s(job, 1) for job in jobs] for _ in range(repeats)]
    return [min(of) for of in zip(*runs, strict=True)]


@cache
def yardstick_s(repeats: int = 3) -> float:
    """Seconds of the unit, on this machine now."""
    return processor_s(yardstick(), repeats)


def yardstick() -> Callable[[], object]:
    """The work that takes one unit, to be timed beside something else."""
    import gpxpy
    from benchmarks.read_track import write_recording

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.gpx"
        write_recording(path, FIXES)
        text = path.read_text(encoding="utf-8")
    return lambda: gpxpy.parse(text)
