"""How the cost of matching grows with the fixes of a recording and with the legs of a course.

    PYTHONPATH=.:tests python tests/benchmarks/growth.py [--most 1000000] [--json FILE]

A made walker walks a course once, with a halt at every point, and then goes on about its
area until the recording is full: one fix a second, error correlated over half a minute.
Every case runs in a process of its own. Processor time is the best of the repeats, memory
the peak of the process above that of one that has only imported. Look at the ratios.
"""

from __future__ import annotations

import argparse
import json
import multiprocessing
import resource
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

FIXES = (1_000, 10_000, 100_000, 1_000_000)
LEGS = (4, 10, 30, 100, 300)
SPEED_M_S, HALT_S, LEG_M, AREA_M = 1.25, 30, 300.0, 1500.0
AIM_S, AIM_RATIO, AIM_MB = 0.5, 12.0, 1000.0


def made(fixes: int, legs: int):
    """Make a cleaned walk of so many fixes and the card of its course."""
    import numpy as np
    from measurement.hand_made import BEGIN, ORIGIN, card_of, clean_of, receiver

    from audit.units import unit_vector

    rng = np.random.default_rng([fixes, legs])
    stops = [np.zeros(2)]
    azimuth = 0.0
    while len(stops) <= legs:
        azimuth += float(rng.choice([-1.0, 1.0]) * rng.uniform(30.0, 120.0))
        stop = stops[-1] + LEG_M * rng.uniform(0.7, 1.5) * unit_vector(azimuth)
        if np.abs(stop).max() <= AREA_M:
            stops.append(stop)
    course = np.array(stops)
    places, count = [np.repeat(course[:1], 60, axis=0)], 60
    here = course[0]
    for number in range(fixes):
        if count >= fixes:
            break
        there = course[number + 1] if number < legs else rng.uniform(-AREA_M, AREA_M, 2)
        seconds = max(int(np.hypot(*(there - here)) / SPEED_M_S), 1)
        share = np.linspace(0.0, 1.0, seconds + 1)[1:, None]
        places += [here + share * (there - here), np.repeat(there[None, :], HALT_S, axis=0)]
        count += seconds + HALT_S
        here = there
    place = np.concatenate(places)[:fixes] + receiver(1, 4.0)(fixes) + ORIGIN
    clean = clean_of(BEGIN + np.arange(fixes, dtype=np.float64), place, every_s=1.0)
    return clean, card_of(*course)


def measure(case: tuple[int, int, int]) -> dict[str, float]:
    """Give processor seconds by stage and peak memory of one case."""
    fixes, legs, repeats = case
    from audit.matching.match_walk import match_laid_out
    from audit.matching.outings import match_outings
    from audit.matching.walk_layout import lay_out
    from audit.settings import Settings

    settings = Settings().matching
    clean, card = made(fixes, legs)
    before_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    best: dict[str, float] = {}
    for _ in range(repeats):
        begun = time.process_time()
        laid_out = lay_out(clean, card, settings)
        laid = time.process_time()
        match_laid_out(laid_out, card, settings)
        matched = time.process_time()
        del laid_out
        found = match_outings(clean, card, settings)
        whole = time.process_time()
        taken = {"lay_out_s": laid - begun, "match_s": matched - laid, "whole_s": whole - matched}
        best = {name: min(best.get(name, value), value) for name, value in taken.items()}
    walked = sum(leg.status == "walked" for leg in found.match.legs)
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    return {"fixes": fixes, "legs": legs, "walked": walked, **best, "mb": peak_mb - before_mb}


def weighed(case: tuple[int, int]) -> dict[str, float]:
    """Give how many portions are weighed as legs in one case, and peak memory."""
    fixes, legs = case
    from benchmarks.counts import portions_counted

    from audit.matching.outings import match_outings
    from audit.settings import Settings

    clean, card = made(fixes, legs)
    before_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    with portions_counted() as counted:
        match_outings(clean, card, Settings().matching)
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    return {"portions": sum(counted), "mb": peak_mb - before_mb}


def table(cases: list[tuple[int, int, int]], context) -> list[dict[str, float]]:
    """Measure the cases and print them, each with its ratio to the one before."""
    print(
        f"{'fixes':>9} {'legs':>5} {'lay out':>9} {'match':>9} {'whole':>9} {'ratio':>6} {'MB':>7}"
    )
    rows: list[dict[str, float]] = []
    for case in cases:
        with context.Pool(1) as pool:
            row = pool.apply(measure, (case,))
        ratio = f"{row['whole_s'] / rows[-1]['whole_s']:6.1f}" if rows else "      "
        print(
            f"{row['fixes']:9} {row['legs']:5} {row['lay_out_s']:7.2f} s {row['match_s']:7.2f} s "
            f"{row['whole_s']:7.2f} s {ratio} {row['mb']:7.0f}",
            flush=True,
        )
        rows.append(row)
    return rows


def main() -> None:
    """Run from a command line."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    parser.add_argument("--most", type=int, default=FIXES[-1], help="no more fixes than this")
    parser.add_argument("--repeats", type=int, default=1)
    parser.add_argument("--json", type=Path, help="also write the figures to this file")
    chosen = parser.parse_args()
    context = multiprocessing.get_context("spawn")
    print("Fixes, on a course of 8 legs:")
    by_fixes = table([(n, 8, chosen.repeats) for n in FIXES if n <= chosen.most], context)
    print("Legs, in a recording just long enough for them:")
    by_legs = table([(420 * n + 60, n, chosen.repeats) for n in LEGS], context)
    print(
        f"Aims: 10,000 fixes within {AIM_S} s, ten times the fixes within {AIM_RATIO:g} times "
        f"the time, {AIM_MB:g} MB."
    )
    if chosen.json:
        text = json.dumps({"by_fixes": by_fixes, "by_legs": by_legs}, indent=1)
        chosen.json.write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
