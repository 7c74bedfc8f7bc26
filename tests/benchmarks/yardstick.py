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


@cache
def yardstick_s(repeats: int = 3) -> float:
    """Seconds of the unit, on this machine now."""
    import gpxpy
    from benchmarks.read_track import write_recording

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.gpx"
        write_recording(path, FIXES)
        text = path.read_text(encoding="utf-8")
    return processor_s(lambda: gpxpy.parse(text), repeats)
