"""Whether the lower bounds of pyproject.toml hold: the oldest versions allowed, and tests on them.

    PYTHONPATH=.:tests python tests/dependencies/oldest_versions.py [--keep FOLDER]

Makes a second environment with every library that the program needs, or can use, held at its
lower bound, and runs there the tests of the main job: files in, a walk matched, measured and
told, a class graded, records kept. What only tests need is the newest. It fetches packages.
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
TEST_TOOLS = (
    "pytest", "pytest-timeout", "pytest-xdist", "hypothesis", "jsonschema", "pydantic", "lxml",
    "fluent.runtime", "openpyxl", "pillow", "geographiclib", "ppigrf", "wmm-calculator", "astral",
)  # fmt: skip
TESTS = (
    "tests/readers", "tests/geodesy", "tests/magnetics", "tests/debriefing", "tests/demo",
    "tests/school_records", "tests/cli/test_debrief_command.py", "tests/cli/test_grade_command.py",
    "tests/cli/test_card_command.py", "tests/cli/test_trend_command.py",
    "tests/reports/test_class_spreadsheet.py", "tests/reports/test_paper_report.py",
    "tests/reports/test_table_and_map_files.py", "tests/reports/test_terminal_report.py",
)  # fmt: skip

LEFT_OUT = (
    # The text of the schema is that of the newest maker; how long a signal takes is no version's.
    "tests/debriefing/test_document.py::test_shipped_schema_is_not_stale",
    "tests/cli/test_grade_command.py::test_ctrl_c_keeps_what_is_done_and_the_next_run_goes_on",
    "tests/debriefing/test_debrief_walk_truth.py",
    "tests/debriefing/test_ledgers_of_made_walks.py",
    "tests/school_records/test_estimates.py",
    "tests/school_records/test_trend.py",
)
"""Also what checks figures over many made walks, for minutes."""


def extras() -> dict[str, list[str]]:
    """Give the extras that users install, and what each needs."""
    optional = _project()["optional-dependencies"]
    return {name: lines for name, lines in optional.items() if name != "test"}


def requirements(names: Iterable[str] | None = None) -> list[Requirement]:
    """Give what the program needs, with the extras named, or all of them."""
    lines = list(_project()["dependencies"])
    for name, more in extras().items():
        lines += more if names is None or name in names else []
    return [Requirement(line) for line in lines]


def oldest(requirement: Requirement) -> str:
    """Give a requirement held at its lower bound; "numpy>=1.26" becomes "numpy==1.26"."""
    bounds = [one.version for one in requirement.specifier if one.operator in (">=", "==")]
    if not bounds:
        message = f"{requirement} has no lower bound"
        raise ValueError(message)
    return f"{requirement.name}=={bounds[0]}"


def make_environment(folder: Path) -> Path:
    """Make an environment with the oldest versions, and give its Python."""
    venv.create(folder, with_pip=True)
    python = folder / ("Scripts" if sys.platform == "win32" else "bin") / "python"
    held = folder / "held.txt"
    held.write_text("".join(f"{oldest(one)}\n" for one in requirements()), encoding="utf-8")
    whole = f"{ROOT}[{','.join(extras())}]"
    pip = [python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-input"]
    subprocess.run([*pip, "--constraint", held, whole, *TEST_TOOLS], check=True)
    # The tests read the sources that they lie beside.
    subprocess.run([python, "-m", "pip", "uninstall", "--quiet", "--yes", "leg-audit"], check=True)
    return python


def main() -> None:
    """Install, test, and end as the tests do."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--keep", type=Path, help="make the environment there and leave it")
    asked = parser.parse_args()
    print("Held at:", ", ".join(oldest(one) for one in requirements()), flush=True)
    with tempfile.TemporaryDirectory() as passing:
        python = make_environment(asked.keep or Path(passing))
        left_out = [f"--deselect={one}" for one in LEFT_OUT]
        done = subprocess.run(
            [python, "-m", "pytest", "-n", "2", "-q", *TESTS, *left_out], cwd=ROOT, check=False
        )
    sys.exit(done.returncode)


def _project() -> dict[str, dict[str, list[str]]]:
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


if __name__ == "__main__":
    main()
