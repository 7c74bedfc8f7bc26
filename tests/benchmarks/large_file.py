"""The whole debrief of a very large recording, against what gpxpy alone takes to parse the file.

    PYTHONPATH=.:tests python tests/benchmarks/large_file.py [--repeats 3]

The recording is a real hike repeated 21 times, 204,540 fixes, where ``shared/tracks`` lies
beside this folder; the plan is six points of its first round. Both are run as commands of
their own, in turn, and the medians compared: seconds differ from machine to machine and with
what else it does, the ratio hardly.
"""

from __future__ import annotations

import argparse
import gzip
import shutil
import statistics
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from benchmarks.whole_command import run_python  # noqa: E402

LARGE = ROOT.parent / "shared" / "tracks" / "large-walk.gpx.gz"
AIM_RATIO, AIM_MB = 0.35, 250.0
GPXPY = "import gpxpy, sys; gpxpy.parse(open(sys.argv[1], encoding='utf-8'))"
POINTS = (300, 700, 1100, 1500, 1900, 2300)
"""Fixes of the first round that are taken for points: some two kilometres apart."""


def write_plan(track: Path, plan: Path) -> None:
    """Write a plan whose points lie on the first round."""
    import audit

    walk = audit.read_track(track)
    lines = ["[course]", 'name = "Along the first round"', "paces_per_100m = 62"]
    for number, fix in enumerate(POINTS):
        place = f"{walk.latitude_deg[fix]:.7f}, {walk.longitude_deg[fix]:.7f}"
        lines += ["[[point]]", f'name = "Point {number}"', f'position = "{place}"']
    plan.write_text("\n".join(lines) + "\n", encoding="utf-8")


def figures(repeats: int = 3) -> dict[str, float]:
    """Medians of both, and their ratio; nothing where the recording is not there."""
    if not LARGE.is_file():
        return {}
    ours, theirs = [], []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        track, plan = folder / "large.gpx", folder / "plan.toml"
        with gzip.open(LARGE, "rb") as packed, track.open("wb") as plain:
            shutil.copyfileobj(packed, plain)
        write_plan(track, plan)
        command = ["-m", "audit", "debrief", str(plan), str(track), "--only", "json"]
        for _ in range(repeats):
            ours.append(run_python([*command, "--out", str(folder / "out")]))
            theirs.append(run_python(["-c", GPXPY, str(track)]))
    taken, parsing = (
        statistics.median(run["processor_s"] for run in runs) for runs in (ours, theirs)
    )
    return {
        "debrief_s": taken,
        "gpxpy_s": parsing,
        "ratio": taken / parsing,
        "debrief_mb": max(run["peak_mb"] for run in ours),
        "gpxpy_mb": max(run["peak_mb"] for run in theirs),
    }


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--repeats", type=int, default=3)
    found = figures(options.parse_args().repeats)
    for name, value in found.items():
        print(f"{name:>12} {value:8.2f}")
    print(f"Aims: a ratio of {AIM_RATIO:g}, {AIM_MB:g} MB.")


if __name__ == "__main__":
    main()
