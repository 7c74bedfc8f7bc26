"""Whether two checkouts give the same results: debrief.json compared field by field.

    PYTHONPATH=.:tests python tests/benchmarks/same_results.py --against main [--walks 300]

The other checkout is a revision of this repository, laid out in a folder of its own for
the while. Each debriefs the same made walks, and every recording of ``shared/tracks``
against a plan of points on it, where that folder lies beside this one. Numbers are the
same within a billionth of themselves: sums taken in another order may differ by that.
"""

from __future__ import annotations

import argparse
import json
import math
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
TRACKS = ROOT.parent / "shared" / "tracks"
CLOSE = 1e-9


def written(checkout: Path, target: Path, walks: int, tracks: Path) -> None:
    """Let a checkout write its results, one JSON document a line."""
    command = [sys.executable, str(Path(__file__)), "--write", str(target), "--walks", str(walks)]
    paths = f"{checkout}:{ROOT / 'tests'}"
    environment = {"PYTHONPATH": paths, "OMP_NUM_THREADS": "1", "PATH": ""}
    subprocess.run([*command, "--tracks", str(tracks)], check=True, env=environment, cwd=checkout)


def write_results(target: Path, walks: int, tracks: Path) -> None:
    """Debrief everything with the package that is imported here."""
    import warnings

    from walks import DIFFICULTIES, make_walk

    import audit

    warnings.simplefilter("ignore")
    families = list(DIFFICULTIES.values())
    with target.open("w", encoding="utf-8") as file:
        for number in range(walks):
            made = make_walk(50_000 + number, families[number % len(families)])
            document = audit.debrief(made.plan, made.track).to_dict()
            file.write(json.dumps([f"made walk {number}", document]) + "\n")
        for path in sorted(tracks.glob("*.gpx*")):
            file.write(json.dumps([path.name, of_recording(path)]) + "\n")


def of_recording(path: Path) -> object:
    """The debrief of a recording against eight points along it, or why there is none."""
    import audit
    from audit.errors import AuditError

    try:
        track = audit.read_track(path)
        with tempfile.TemporaryDirectory() as folder:
            plan = Path(folder) / "plan.toml"
            plan.write_text(plan_along(track), encoding="utf-8")
            return audit.debrief(audit.read_plan(plan), track).to_dict()
    except AuditError as error:
        return str(error)


def plan_along(track) -> str:
    lines = ["[course]", 'name = "Along"', "date = 2024-06-01", "paces_per_100m = 62",
             "grid_magnetic_angle_deg = 1.5"]  # fmt: skip
    last = min(len(track) - 1, 8_000)
    for number in range(8):
        fix = number * last // 7
        place = f"{track.latitude_deg[fix]:.6f}, {track.longitude_deg[fix]:.6f}"
        lines += ["[[point]]", f'name = "P{number}"', f'position = "{place}"']
    return "\n".join(lines) + "\n"


def differences(one: object, other: object, place: str = "") -> Iterator[str]:
    """Every field that differs, and how."""
    if isinstance(one, dict) and isinstance(other, dict):
        for key in one.keys() | other.keys():
            if key not in one or key not in other:
                yield f"{place}.{key} only {'after' if key in other else 'before'}"
            else:
                yield from differences(one[key], other[key], f"{place}.{key}")
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        for number, (a, b) in enumerate(zip(one, other, strict=True)):
            yield from differences(a, b, f"{place}[{number}]")
    elif isinstance(one, float) and isinstance(other, float):
        if not math.isclose(one, other, rel_tol=CLOSE, abs_tol=CLOSE):
            yield f"{place}: {one!r} became {other!r}"
    elif one != other:
        yield f"{place}: {str(one)[:60]} became {str(other)[:60]}"


def compare(before: Path, after: Path) -> int:
    """Print what differs; give how many documents do."""
    changed = total = exact = 0
    with before.open(encoding="utf-8") as old, after.open(encoding="utf-8") as new:
        for one, other in zip(old, new, strict=True):
            total += 1
            exact += one == other
            (name, was), (_, now) = json.loads(one), json.loads(other)
            if found := list(differences(was, now)):
                changed += 1
                print(f"{name}: {len(found)} fields, first {found[0]}")
    print(f"{total} documents, {exact} the same to the last digit, {changed} changed")
    return changed


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--against", default="main", help="the revision to compare with")
    options.add_argument("--walks", type=int, default=300)
    options.add_argument("--tracks", type=Path, default=TRACKS)
    options.add_argument("--write", type=Path, help=argparse.SUPPRESS)
    chosen = options.parse_args()
    if chosen.write:
        write_results(chosen.write, chosen.walks, chosen.tracks)
        return 0
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        other = folder / "other"
        git = ["git", "-C", str(ROOT), "worktree"]
        subprocess.run([*git, "add", "-q", "--detach", str(other), chosen.against], check=True)
        try:
            written(other, folder / "before", chosen.walks, chosen.tracks)
        finally:
            subprocess.run([*git, "remove", "--force", str(other)], check=True)
        written(ROOT, folder / "after", chosen.walks, chosen.tracks)
        return int(compare(folder / "before", folder / "after") > 0)


if __name__ == "__main__":
    sys.exit(main())
