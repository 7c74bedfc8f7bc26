"""A course whose names would do harm, and its debrief, for the tests of what is written."""

from __future__ import annotations

from pathlib import Path

import pytest
from hostile.evil_course import assert_printable, run, write_evil_course


@pytest.fixture(scope="package")
def evil(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give a folder with the demo, all its names made hostile, and its debrief."""
    folder = tmp_path_factory.mktemp("evil")
    write_evil_course(folder)
    status, said = run(
        "debrief", folder / "plan.toml", folder / "walk.gpx", "--log", folder / "log.csv",
        "--out", folder / "out", "--gpx", "--pictures",
    )  # fmt: skip
    assert status == 0, said
    assert_printable(said)
    return folder
