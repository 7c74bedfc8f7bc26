"""How the whole debrief grows with the fixes of a recording: processor time and memory.

The walk of four hours is walked on, back and forth over its own ground, until the
recording is as long as wanted: one fix a second. Each case runs in a process of its own.
"""

from __future__ import annotations

import multiprocessing
import os
import resource
import sys
import tempfile
import time
from dataclasses import fields
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from benchmarks.counts import calls_of, portions_counted  # noqa: E402
from benchmarks.read_track import write_recording  # noqa: E402

FIXES = (10_000, 100_000, 1_000_000)


def lengthened(track, fixes: int):
    """The walk there, back, there and so on, each time a little beside the time before."""
    import numpy as np

    rng = np.random.default_rng(fixes)
    rounds = -(-fixes // len(track))
    columns = {}
    for field in fields(track):
        values = getattr(track, field.name)
        if field.name in {"longitude_deg", "latitude_deg"}:
            parts = [
                values[:: -1 if number % 2 else 1] + (rng.normal(0.0, 1e-5) if number else 0.0)
                for number in range(rounds)
            ]
            columns[field.name] = np.concatenate(parts)[:fixes]
        elif field.name not in {"notes", "source"}:
            columns[field.name] = np.tile(values, rounds)[:fixes]
    columns["time_s"] = float(track.time_s[0]) + np.arange(fixes, dtype=np.float64)
    columns["segment"] = np.zeros(fixes, dtype=np.int64)
    return type(track)(**columns)


def counted(fixes: int) -> dict[str, int]:
    """Calls of functions, and portions weighed as legs, in a whole debrief; the same every time."""
    import warnings

    from benchmarks.debrief_walk import four_hours

    import audit
    from audit.reports.json_report import render_json

    warnings.simplefilter("ignore")
    walk = four_hours()
    render_json(audit.debrief(walk.plan, walk.track))  # what is worked out once is known
    track = lengthened(walk.track, fixes)
    calls = calls_of(lambda: render_json(audit.debrief(walk.plan, track)))
    with portions_counted() as weighed:
        audit.debrief(walk.plan, track)
    return {"calls": calls, "portions": sum(weighed)}


def calls_to_read(fixes: int) -> int:
    """Calls of functions in reading a made recording."""
    import audit

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.gpx"
        write_recording(path, fixes)
        audit.read_track(path)  # what is worked out once is known
        return calls_of(lambda: audit.read_track(path))


def grown(case: tuple[int, int]) -> dict[str, float]:
    """Processor seconds and bytes a fix of one case, the recording's own arrays left out."""
    fixes, repeats = case
    import warnings

    from benchmarks.debrief_walk import four_hours

    import audit
    from audit.reports.json_report import render_json

    warnings.simplefilter("ignore")
    walk = four_hours()
    render_json(audit.debrief(walk.plan, walk.track))  # libraries are loaded once
    track = lengthened(walk.track, fixes)
    before_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    best = float("inf")
    for _ in range(repeats):
        begun = time.process_time()
        render_json(audit.debrief(walk.plan, track))
        best = min(best, time.process_time() - begun)
    more_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before_kb
    return {"seconds": best, "bytes_a_fix": more_kb * 1024.0 / fixes}


def read(case: tuple[int, int]) -> dict[str, float]:
    """The same of reading a made recording."""
    fixes, repeats = case
    from benchmarks.yardstick import processor_s

    import audit

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "walk.gpx"
        write_recording(path, fixes)
        before_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        best = processor_s(lambda: audit.read_track(path), repeats)
    more_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before_kb
    return {"seconds": best, "bytes_a_fix": more_kb * 1024.0 / fixes}


def in_own_process(job, *arguments):
    """What a function gives in a fresh process, on one thread as the command runs."""
    one_thread = {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1"}
    kept = {name: os.environ.get(name) for name in one_thread}
    os.environ.update(one_thread)
    try:
        with multiprocessing.get_context("spawn").Pool(1) as one:
            return one.apply(job, arguments)
    finally:
        for name, said in kept.items():
            os.environ.pop(name) if said is None else os.environ.update({name: said})


def over_linear(small: dict[str, float], large: dict[str, float], times: float) -> float:
    """How many times linear the time has grown."""
    return large["seconds"] / small["seconds"] / times
