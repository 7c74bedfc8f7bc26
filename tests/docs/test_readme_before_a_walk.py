"""The commands that README.md shows for the time before a walk run as they stand."""

from __future__ import annotations

import shlex
from pathlib import Path

import pytest
from docs.readme_parts import blocks
from pacing.made_strips import write_strip
from typer.testing import CliRunner

from audit.cli.app import app

COMMANDS = ("card", "copy", "pace")
LINES = [
    line
    for block in blocks("sh")
    for line in block.text.splitlines()
    if line.split()[:1] == ["leg-audit"] and line.split()[1] in COMMANDS
]


@pytest.fixture
def folder(tmp_path: Path, monkeypatch) -> Path:
    for block in blocks():
        if block.file:
            (tmp_path / block.file).write_text(block.text, encoding="utf-8")
    for name in ("strip", "out", "back"):
        write_strip(tmp_path / f"{name}.gpx", 600.0, seed=1)
    write_strip(tmp_path / "hike-with-cadence.gpx", 600.0, seed=1, cadence=47.0)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_each_of_them_is_shown():
    assert {line.split()[1] for line in LINES} == set(COMMANDS)


@pytest.mark.parametrize("line", LINES)
def test_it_runs(line, folder):
    words = shlex.split(line)[1:]
    done = CliRunner().invoke(app, words, prog_name="leg-audit")
    assert done.exit_code == 0, done.stderr
    if "--out" in words:
        assert (folder / words[words.index("--out") + 1]).stat().st_size > 100
    else:
        assert len(done.stdout.splitlines()) > 5


@pytest.mark.usefixtures("folder")
def test_the_plan_and_the_words_belong_together():
    """Bug: the words shown halved the pace count of the plan shown."""
    done = CliRunner().invoke(app, ["card", "plan.toml", "--words", "words.toml"])
    assert "59.4 double paces to 100 yd" in done.stdout  # 65 to 100 m, a yard is 0.9144 m
    assert "make a step" not in done.stderr
