"""How large the page of a six-hour walk is, and how long it takes to write.

    PYTHONPATH=.:tests python tests/benchmarks/page.py [--legs 12] [--json FILE]

The walk is made: about six hours at one fix a second. Imports come first and are not
counted; each figure is the best of several, by the
processor and by the clock, so that a busy machine shows. A class is many walks of one
course: from the second on, the shapes of the pictures are known.
"""

from __future__ import annotations

import argparse
import json
import time
from dataclasses import replace
from pathlib import Path

import audit
from audit.reports.html_report import render_html

WANTED_S = 6 * 3600.0
AIM_S, AIM_BYTES = 1.0, 2_000_000


def six_hours(legs: int):
    """The made walk that comes nearest to six hours."""
    from walks import DIFFICULTIES, make_walk

    family = replace(
        DIFFICULTIES["ordinary"], name="six hours", legs=(legs, legs), leg_m=(700.0, 2600.0),
        leg_median_m=18_000.0 / legs, interval_s=(1.0,), by_distance=0.0, abandons=0.0,
        starts_late=0.0, ends_early=0.0, two_walks=0.0, vehicle=0.0,
    )  # fmt: skip
    walks = [make_walk(seed, family) for seed in range(6)]

    def off_s(walk) -> float:
        return abs(float(walk.track.time_s[-1] - walk.track.time_s[0]) - WANTED_S)

    return min(walks, key=off_s)


def timed(work) -> tuple[float, float]:
    """Seconds by the clock and by the processor."""
    clock, processor = time.perf_counter(), time.process_time()
    work()
    return time.perf_counter() - clock, time.process_time() - processor


def measure(legs: int, repeats: int = 4) -> dict[str, float]:
    """Size and time of the page of one walk; the first time stands for a single command."""
    walk = six_hours(legs)
    debrief = audit.debrief(walk.plan, walk.track)
    first = timed(lambda: render_html(debrief))
    later = [timed(lambda: render_html(debrief)) for _ in range(repeats)]
    hours = float(walk.track.time_s[-1] - walk.track.time_s[0]) / 3600.0
    return {
        "hours": round(hours, 2),
        "fixes": len(walk.track),
        "legs": len(debrief.legs),
        "bytes": len(render_html(debrief).encode()),
        "first_s": first[0],
        "first_processor_s": first[1],
        "later_s": min(one[0] for one in later),
        "later_processor_s": min(one[1] for one in later),
    }


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--legs", type=int, default=12)
    parser.add_argument("--json", type=Path)
    options = parser.parse_args()
    made = measure(options.legs)
    for name, value in made.items():
        print(f"{name:20} {value:,.3f}" if isinstance(value, float) else f"{name:20} {value:,}")
    print(f"aims: {AIM_BYTES:,} bytes, {AIM_S} s after the imports")
    if options.json:
        options.json.write_text(json.dumps(made, indent=1), encoding="utf-8")


if __name__ == "__main__":
    main()
