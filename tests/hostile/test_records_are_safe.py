"""Records that are damaged, or no records at all, and names that are no text."""

from __future__ import annotations

import random
import shutil
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from hostile.evil_course import run

pytest.importorskip("sqlalchemy")


@pytest.fixture(scope="module")
def school(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("school")
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for name in ("plan.toml", "walk.gpx"):
            shutil.copy(demo / name, folder)
    status, said = run(
        "debrief", folder / "plan.toml", folder / "walk.gpx", "--only", "json",
        "--out", folder / "out", "--records", folder / "school.db", "--walker", "a",
    )  # fmt: skip
    assert status == 0, said
    return folder


@pytest.mark.parametrize("seed", range(12))
def test_damaged_records_are_one_sentence(school, tmp_path, seed):
    damage = random.Random(seed)
    data = bytearray((school / "school.db").read_bytes())
    for _ in range(damage.choice([3, 30, 300])):
        data[damage.randrange(len(data))] = damage.randrange(256)
    (tmp_path / "school.db").write_bytes(data)
    status, said = run("trend", "a", "--records", tmp_path / "school.db")
    assert status in (0, 2, 3), said
    assert (tmp_path / "school.db").read_bytes() == data


def test_no_input_becomes_records(school):
    before = (school / "plan.toml").read_bytes()
    status, said = run("trend", "a", "--records", school / "plan.toml")
    assert status in (2, 3)
    assert "is no SQLite database" in said
    assert (school / "plan.toml").read_bytes() == before


def test_a_name_in_another_encoding_is_no_fault(school):
    # As a terminal of another encoding hands it over (PEP 383).
    status, said = run("trend", "a\udc9b", "--records", school / "school.db")
    assert status in (2, 3), said
    status, said = run(
        "grade", school / "plan.toml", school / "walk.gpx", "--name", "a\udc9b",
        "--out", school / "class", "--jobs", "1",
    )  # fmt: skip
    assert status == 0, said
