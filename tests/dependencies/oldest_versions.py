"""Whether the lower bounds of pyproject.toml hold: the oldest versions allowed, and a smoke test.

    PYTHONPATH=.:tests python tests/dependencies/oldest_versions.py [--extras ground,paper,class]

Makes a fresh environment in a temporary folder, with every dependency held at its lower
bound, and runs the commands of the demo there. By hand and at night: it fetches packages.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import tempfile
import tomllib
import venv
from collections.abc import Iterable
from pathlib import Path

from packaging.requirements import Requirement

ROOT = Path(__file__).resolve().parents[2]
SMOKE = (
    ("demo", "--out", "course"),
    ("check", "course/plan.toml"),
    ("card", "course/plan.toml", "--out", "card.html"),
    ("copy", "course/plan.toml", "--out", "plan.gpx"),
    ("forecast", "course/plan.toml"),
    ("pace", "course/walk.gpx"),
    ("debrief", "course/plan.toml", "course/walk.gpx", "--log", "course/log.csv", "--gpx"),
    ("grade", "course/plan.toml", "course/walk.gpx", "--jobs", "1"),
)
PAPER = (("debrief", "course/plan.toml", "course/walk.gpx", "--pdf", "--pictures"),)


def requirements(extras: Iterable[str]) -> list[Requirement]:
    """Give what the program needs, with the extras asked for."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lines = list(project["dependencies"])
    for extra in extras:
        lines += project["optional-dependencies"][extra]
    return [Requirement(line) for line in lines]


def oldest(requirement: Requirement) -> str:
    """Give a requirement held at its lower bound; "numpy>=1.26" becomes "numpy==1.26"."""
    bounds = [one.version for one in requirement.specifier if one.operator in (">=", "==")]
    if not bounds:
        message = f"{requirement} has no lower bound"
        raise ValueError(message)
    return f"{requirement.name}=={bounds[0]}"


def main() -> None:
    """Install, run, and say what happened."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--extras", default="ground,paper,class")
    asked = parser.parse_args()
    extras = [one for one in asked.extras.split(",") if one]
    held = [oldest(one) for one in requirements(extras)]
    print("Held at:", ", ".join(held), flush=True)
    with tempfile.TemporaryDirectory() as folder:
        venv.create(folder, with_pip=True)
        python = Path(folder) / ("Scripts" if sys.platform == "win32" else "bin") / "python"
        subprocess.run([python, "-m", "pip", "install", "-q", *held, ROOT], check=True)
        for words in (*SMOKE, *(PAPER if "paper" in extras else ())):
            done = subprocess.run(
                [python, "-W", "error::DeprecationWarning:audit", "-m", "audit", *words],
                cwd=folder, capture_output=True, text=True, check=False,
            )  # fmt: skip
            print("ok    " if done.returncode in (0, 1) else "FAILED", *words, flush=True)
            if done.returncode not in (0, 1):
                sys.exit(done.stderr)


if __name__ == "__main__":
    main()
