"""Kill a command at many random moments: a result is the old complete file or the new one.

    PYTHONPATH=.:tests python tests/hostile/killed.py --kills 200

By hand; a test does some. Times run from the start of the process to a little beyond the
time that it takes unkilled.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from importlib.resources import as_file, files
from pathlib import Path

COMMAND = [sys.executable, "-m", "audit"]
ENVIRONMENT = {**os.environ, "OMP_NUM_THREADS": "1"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Killed:
    """How often a command was killed, and what stood there afterwards."""

    kills: int
    finished: int
    states: Counter[str]
    torn: tuple[str, ...]


def killed_often(arguments: Sequence[str], out: Path, kills: int, seed: int) -> Killed:
    """Kill ``leg-audit ARGUMENTS`` again and again while ``out`` holds results already."""
    whole = _content(out)
    began = time.monotonic()
    subprocess.run([*COMMAND, *arguments], capture_output=True, check=True, env=ENVIRONMENT)
    lasts_s = time.monotonic() - began
    new = _content(out)
    random_s = random.Random(seed)
    states: Counter[str] = Counter()
    torn: list[str] = []
    finished = killed = 0
    while killed < kills:
        _put(out, whole)
        # Three in four late, where writing happens.
        early = random_s.random() < 0.25
        after_s = random_s.uniform(0.0 if early else 0.6, 1.1) * lasts_s
        began = time.monotonic()
        process = subprocess.Popen(
            [*COMMAND, *arguments],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            env=ENVIRONMENT,
            start_new_session=True,
        )
        try:
            finished += process.wait(timeout=after_s) == 0
            # It was quicker than thought: the machine has more time for it now.
            lasts_s = min(lasts_s, time.monotonic() - began)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()
            killed += 1
            lasts_s *= 1.02  # so that the end of it is met again where the machine is busier
        for name, data in _content(out).items():
            state = "old" if data == whole.get(name) else "new" if data == new.get(name) else ""
            states[state or "torn"] += 1
            if not state:
                torn.append(name)
    return Killed(kills=killed, finished=finished, states=states, torn=tuple(torn))


def _content(folder: Path) -> dict[str, bytes]:
    """Give all results; drafts of a killed run begin with a dot and are none."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not (path.name.startswith(".") and path.suffix == ".part")
    }


def _put(folder: Path, content: dict[str, bytes]) -> None:
    shutil.rmtree(folder, ignore_errors=True)
    for name, data in content.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)


def debrief_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the debrief of the demo, over results of the same plan in other words."""
    plan, track = _demo(folder)
    out = folder / "out"
    older = folder / "older.toml"
    older.write_text(plan.read_text().replace("Beech Knoll", "Old Knoll"))
    words = ["debrief", str(older), str(track), "--out", str(out), "--gpx"]
    subprocess.run([*COMMAND, *words], capture_output=True, check=True, env=ENVIRONMENT)
    words[1] = str(plan)
    return killed_often(words, out, kills, seed)


def card_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the card of the demo's plan, over the card of another."""
    plan, _ = _demo(folder)
    out = folder / "out"
    out.mkdir()
    (out / "card.html").write_text("the card of last year")
    return killed_often(["card", str(plan), "--out", str(out / "card.html")], out, kills, seed)


def grade_killed(folder: Path, kills: int, seed: int) -> Killed:
    """Kill the grading of a class of two, over the class of another name."""
    plan, track = _demo(folder)
    shutil.copy(track, folder / "second.gpx")
    out = folder / "out"
    words = ["grade", str(plan), str(track), str(folder / "second.gpx"), "--out", str(out)]
    words += ["--jobs", "1"]
    older = [*words, "--name", "Older"]
    subprocess.run([*COMMAND, *older], capture_output=True, check=True, env=ENVIRONMENT)
    return killed_often([*words, "--name", "Newer"], out, kills, seed)


def _demo(folder: Path) -> tuple[Path, Path]:
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for name in ("plan.toml", "walk.gpx"):
            shutil.copy(demo / name, folder)
    return folder / "plan.toml", folder / "walk.gpx"


COMMANDS: dict[str, Callable[[Path, int, int], Killed]] = {
    "debrief": debrief_killed,
    "card": card_killed,
    "grade": grade_killed,
}


def main() -> None:
    """Kill each command and say what stood there."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=200)
    parser.add_argument("--command", choices=[*COMMANDS], action="append")
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args()
    for name in asked.command or COMMANDS:
        with tempfile.TemporaryDirectory() as folder:
            result = COMMANDS[name](Path(folder), asked.kills, asked.seed)
        print(
            json.dumps({"command": name, "kills": result.kills, "finished": result.finished,
                        **result.states, "torn_files": result.torn[:5]}),
            flush=True,
        )  # fmt: skip


if __name__ == "__main__":
    main()
