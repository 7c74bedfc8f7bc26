"""How long the whole debrief of a four-hour walk takes, and where the time and memory go.

    PYTHONPATH=.:tests python tests/benchmarks/debrief_walk.py [--repeats 3] [--json FILE]

The walk is made: about four hours at one fix a second. The command is run as a user
runs it, in a process of its own; the stages are timed in another process, once warm
and once cold, in processor time. The commands are also timed by the clock, for a quiet machine.
"""

from __future__ import annotations

import argparse
import json
import multiprocessing
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

WANTED_S = 4 * 3600.0
AIM_S, AIM_MB = 2.0, 300.0
STAGES = (
    ("work out card", "work_out_card"),
    ("clean", "clean_track"),
    ("match", "match_outings"),
    ("measure", "measure_walk"),
    ("diagnose", "explain_walk"),
    ("talk over", "talk_over"),
    ("judge quality", "judge_quality"),
)


def four_hours():
    """The made walk that comes nearest to four hours."""
    from walks import DIFFICULTIES, make_walk

    family = replace(
        DIFFICULTIES["ordinary"],
        name="four hours",
        legs=(12, 12),
        leg_m=(700.0, 1600.0),
        leg_median_m=1000.0,
        interval_s=(1.0,),
        by_distance=0.0,
        abandons=0.0,
        starts_late=0.0,
        ends_early=0.0,
        two_walks=0.0,
        vehicle=0.0,
    )
    walks = [make_walk(seed, family) for seed in range(8)]

    def off_s(walk) -> float:
        return abs(float(walk.track.time_s[-1] - walk.track.time_s[0]) - WANTED_S)

    return min(walks, key=off_s)


def write_files(walk, folder: Path) -> tuple[Path, Path]:
    """Write plan and track as their files."""
    from audit.moments import utc_text

    plan, track = folder / "plan.toml", folder / "walk.gpx"
    lines = [
        "[course]",
        f'name = "{walk.plan.name}"',
        f"date = {walk.plan.date}",
        f'grid = "{walk.plan.grid}"',
        f"grid_magnetic_angle_deg = {walk.plan.grid_magnetic_angle_deg}",
        f"paces_per_100m = {walk.plan.paces_per_100m}",
    ]
    for point in walk.plan.points:
        place = f"{point.position.latitude_deg:.7f}, {point.position.longitude_deg:.7f}"
        lines += ["[[point]]", f'name = "{point.name}"', f'position = "{place}"']
    for leg in walk.plan.legs:
        lines += [
            "[[leg]]",
            f'name = "{leg.name}"',
            f'from = "{leg.start}"',
            f'to = "{leg.end}"',
        ]
    plan.write_text("\n".join(lines) + "\n", encoding="utf-8")
    with track.open("w", encoding="utf-8") as file:
        file.write('<?xml version="1.0" encoding="UTF-8"?>\n')
        file.write('<gpx version="1.1" creator="made" xmlns="http://www.topografix.com/GPX/1/1">\n')
        file.write("<trk><trkseg>\n")
        columns = (walk.track.time_s, walk.track.latitude_deg, walk.track.longitude_deg)
        for time_s, latitude, longitude in zip(*columns, strict=True):
            file.write(
                f'<trkpt lat="{latitude:.7f}" lon="{longitude:.7f}"><ele>412.0</ele>'
                f"<time>{utc_text(float(time_s))}</time></trkpt>\n"
            )
        file.write("</trkseg></trk></gpx>\n")
    return plan, track


def run_command(plan: Path, track: Path, out: Path, *extra: str) -> dict[str, float]:
    """Seconds by the clock and by the processor, and peak memory in MB, of a whole command."""
    from benchmarks.whole_command import run_python

    return run_python(["-m", "audit", "debrief", str(plan), str(track), "--out", str(out), *extra])


def best(runs: list[dict[str, float]]) -> dict[str, float]:
    """The least of each figure over several runs."""
    return {figure: min(run[figure] for run in runs) for figure in runs[0]}


class StageClock:
    """Seconds by stage, in order; a stage that is wrapped counts its own time."""

    def __init__(self) -> None:
        self.seconds: dict[str, float] = {}

    def timed(self, stage: str, job: Callable):
        def run(*arguments, **named):
            begun = time.process_time()
            try:
                return job(*arguments, **named)
            finally:
                self.seconds[stage] = self.seconds.get(stage, 0.0) + time.process_time() - begun

        return run


def run_stages(plan_file: Path, track_file: Path, repeats: int) -> list[dict[str, float]]:
    """Seconds of each stage, for each of several runs in this process."""
    runs = []
    for _ in range(repeats):
        clock = StageClock()
        modules = clock.timed("import", _import_all)()
        audit, debrief_walk, write = modules
        kept = {name: getattr(debrief_walk, name) for _, name in STAGES}
        try:
            for stage, name in STAGES:
                setattr(debrief_walk, name, clock.timed(stage, kept[name]))
            plan = clock.timed("read plan", audit.read_plan)(plan_file)
            track = clock.timed("read track", audit.read_track)(track_file)
            found = debrief_walk.debrief(plan, track)
        finally:
            for name, job in kept.items():
                setattr(debrief_walk, name, job)
        for kind in write.REPORT_KINDS:
            clock.timed(f"write {kind}", _write_one)(write, found, kind)
        runs.append(clock.seconds)
    return runs


def _import_all():
    import audit
    from audit.debriefing import debrief_walk
    from audit.reports import write

    return audit, debrief_walk, write


def _write_one(write, found, kind: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        write.write_reports(found, Path(folder), only=[kind])


def stages_apart(plan: Path, track: Path, repeats: int) -> list[dict[str, float]]:
    """The same in a fresh process, so that the first run is cold."""
    with multiprocessing.get_context("spawn").Pool(1) as one:
        return one.apply(run_stages, (plan, track, repeats))


def table(document: dict) -> str:
    walk = document["walk"]
    lines = [
        f"walk: {walk['fixes']:,} fixes, {walk['hours']:.2f} h, {walk['legs']} legs",
        f"aims: {AIM_S:g} s by the clock, {AIM_MB:g} MB",
        f"{'command':>16} {'clock s':>8} {'proc. s':>8} {'peak MB':>8}",
    ]
    for name, of in document["commands"].items():
        lines.append(
            f"{name:>16} {of['seconds']:>8.2f} {of['processor_s']:>8.2f} {of['peak_mb']:>8.0f}"
        )
    warm, cold = document["warm_s"], document["cold_s"]
    total = sum(warm.values())
    lines.append(f"{'stage':>16} {'cold s':>8} {'warm s':>8} {'warm %':>8}")
    for stage, seconds in cold.items():
        share = 100.0 * warm[stage] / total
        lines.append(f"{stage:>16} {seconds:>8.3f} {warm[stage]:>8.3f} {share:>8.1f}")
    lines.append(f"{'all':>16} {sum(cold.values()):>8.3f} {total:>8.3f}")
    return "\n".join(lines)


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--repeats", type=int, default=3)
    options.add_argument("--json", type=Path, help="where to write the figures")
    chosen = options.parse_args()
    walk = four_hours()
    repeats = range(chosen.repeats)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        plan, track = write_files(walk, folder)
        commands = {
            name: best([run_command(plan, track, folder / "out", *extra) for _ in repeats])
            for name, extra in (("debrief", ()), ("without the page", ("--only", "json")))
        }
        stages = stages_apart(plan, track, chosen.repeats + 1)
    document = {
        "walk": {
            "fixes": len(walk.track),
            "hours": float(walk.track.time_s[-1] - walk.track.time_s[0]) / 3600.0,
            "legs": len(walk.plan.legs),
        },
        "commands": commands,
        "cold_s": stages[0],
        "warm_s": {stage: min(run[stage] for run in stages[1:]) for stage in stages[0]},
    }
    print(table(document))
    if chosen.json:
        chosen.json.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
