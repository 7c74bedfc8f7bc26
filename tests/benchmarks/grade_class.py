"""How long the class of 40 takes, with all pages and spreadsheets, and where the time goes.

    PYTHONPATH=.:tests python tests/benchmarks/grade_class.py [--walkers 40] [--jobs 2] [--json FILE]

The class is made: two lanes of six legs, walks of about two hours at one fix in 1 to 5
seconds. The command is run as a user runs it, in a process of its own; time is by the
clock and by all its processors together. On a busy machine look at the second, over the
number of processors.
"""

from __future__ import annotations

import argparse
import json
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
AIM_S = 40.0


def run(files, out: Path, jobs: int) -> dict[str, float]:
    """Seconds of the whole command, by the clock and by the processors."""
    from benchmarks.whole_command import run_python

    return run_python(
        ["-m", "audit", "grade", *map(str, files.plans), *map(str, files.tracks),
         "--roster", str(files.roster), "--out", str(out), "--jobs", str(jobs)]
    )  # fmt: skip


def two_at_once(files, folder: Path) -> float:
    """How many times as fast two classes of one process each are graded at once as in turn.

    Two processors that share a core or their memory do not give two: this is what they can.
    """
    alone = run(files, folder / "alone", 1)["seconds"]
    with ThreadPoolExecutor(2) as both:
        done = both.map(lambda name: run(files, folder / name, 1)["seconds"], ("one", "other"))
        return 2.0 * alone / max(done)


def main() -> None:
    from classes import make_class, write_class

    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--walkers", type=int, default=40)
    options.add_argument("--jobs", type=int, default=2)
    options.add_argument("--seed", type=int, default=7)
    options.add_argument("--json", type=Path, help="where to write the figures")
    chosen = options.parse_args()
    made = make_class(chosen.seed, walkers=chosen.walkers)
    tracks = [walk.track for walk in made.walks]
    with tempfile.TemporaryDirectory() as name:
        files = write_class(made, Path(name) / "files")
        out = Path(name) / "out"
        first = run(files, out, chosen.jobs)
        again = run(files, out, chosen.jobs)
        size = sum(path.stat().st_size for path in out.rglob("*") if path.is_file())
    hours = [float(one.time_s[-1] - one.time_s[0]) / 3600.0 for one in tracks]
    document = {
        "walks": len(tracks),
        "fixes": sum(len(one) for one in tracks),
        "hours_a_walk": sum(hours) / len(hours),
        "jobs": chosen.jobs,
        "first": first,
        "taken_up_again": again,
        "bytes": size,
    }
    print(f"{document['walks']} walks of {document['hours_a_walk']:.2f} h, "
          f"{document['fixes']:,} fixes, {chosen.jobs} processes; aim {AIM_S:g} s")  # fmt: skip
    for what in ("first", "taken_up_again"):
        one = document[what]
        print(f"{what:>16}: {one['seconds']:.1f} s by the clock, {one['processor_s']:.1f} s of "
              f"processors, {one['processor_s'] / chosen.jobs:.1f} s each")  # fmt: skip
    print(f"{size / 1e6:.0f} MB written")
    if chosen.json:
        chosen.json.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
