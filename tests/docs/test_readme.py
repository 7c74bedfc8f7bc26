"""README.md tells the truth: every block runs, every file can be read, every figure is as told."""

from __future__ import annotations

import json
import os
import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from docs.readme_parts import PARTS, README, ROOT, blocks, part

import audit
from audit.guide.contents import guide_text
from audit.readers.position_text import read_position
from audit.reports.cautions import CAUTIONS

TEXT = README.read_text(encoding="utf-8")
SET_UP = re.compile(r"^bash \.ci/install.*$", re.MULTILINE)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch) -> Path:
    """Give the current folder, with the files that the README shows and the demo's walk."""
    for block in blocks():
        if block.file:
            (tmp_path / block.file).write_text(block.text, encoding="utf-8")
    shutil.copy(ROOT / "audit" / "demo_course" / "walk.gpx", tmp_path)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_every_block_is_of_a_kind_that_is_tried_here():
    kinds = {(block.language, bool(block.file)) for block in blocks()}
    assert kinds == {
        ("sh", False), ("text", False), ("python", False),
        ("toml", True), ("csv", True), ("xml", True), ("json", True),
    }  # fmt: skip
    assert TEXT.count("```") == 2 * len(blocks())


# The two set-up commands


def test_the_set_up_is_one_line_each_and_ci_runs_both_as_they_stand():
    commands = SET_UP.findall(TEXT)
    assert commands == [
        "bash .ci/install && .venv/bin/leg-audit demo",
        "bash .ci/install test && .venv/bin/python -m pytest -n 2 --dist worksteal -q",
    ]
    assert [block.text.strip() for block in blocks("sh")[:2]] == commands
    run = (ROOT / ".ci" / "run").read_text()
    assert "grep '^bash \\.ci/install' README.md" in run
    assert "pytest" not in run  # the README's own words, not a second way


@pytest.mark.skipif(os.name != "posix", reason="the scripts are for bash")
@pytest.mark.parametrize("script", ["install", "run"])
def test_the_scripts_are_sound_bash(script):
    path = ROOT / ".ci" / script
    subprocess.run(["bash", "-n", path], check=True)
    assert path.read_text().startswith("#!/usr/bin/env bash\n")
    assert os.access(path, os.X_OK)


def test_the_command_of_the_first_line_is_installed_beside_the_interpreter(folder):
    command = Path(sys.executable).with_name("leg-audit")
    if not command.exists():
        pytest.skip("leg-audit is not installed here, only on the path")
    done = subprocess.run([command, "demo"], capture_output=True, text=True, check=True)
    assert (folder / "leg-audit-demo" / "debrief.html").is_file()
    assert "leg-audit-demo/debrief.html" in done.stderr


# The blocks


def audit_run(arguments):
    return subprocess.run(
        [sys.executable, "-m", "audit", *arguments],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True, text=True, check=False,
    )  # fmt: skip


@pytest.mark.parametrize("block", [b for b in blocks("sh") if "leg-audit debrief" in b.text])
def test_commands_run(block, folder):
    for line in block.text.splitlines():
        program, *arguments = shlex.split(line)
        assert program == "leg-audit"
        done = audit_run(arguments)
        assert done.returncode == 0, done.stderr
        out = folder / arguments[arguments.index("--out") + 1]
        document = json.loads((out / "debrief.json").read_text())
        assert [leg["status"] for leg in document["legs"]][:2] == ["walked", "walked"]


def test_the_class_with_a_roster_is_graded(folder):
    """Bug: the roster named a lane that the command beside it did not have."""
    (line,) = (line for b in blocks("sh") for line in b.text.splitlines() if "--roster" in line)
    _, *arguments = shlex.split(line)
    for plan in (one for one in arguments if one.endswith(".toml")):
        shutil.copy(folder / "plan.toml", folder / plan)
    (folder / "recordings").mkdir()
    shutil.copy(folder / "walk.gpx", folder / "recordings")
    done = audit_run(arguments)
    assert done.returncode == 0, done.stderr
    document = json.loads((folder / "private-class" / "class.json").read_text())
    lanes = {one.partition(",")[2].partition(",")[0]
             for one in (folder / "roster.csv").read_text().splitlines()[1:]}  # fmt: skip
    assert {one["lane"] for one in document["walkers"]} == lanes
    assert {one["name"] for one in document["course"]["lanes"]} == lanes


def test_the_guide_has_the_pages_that_are_asked_for():
    asked = [line.split()[2:] for b in blocks("sh") for line in b.text.splitlines()
             if line.startswith("leg-audit guide")]  # fmt: skip
    assert len(asked) >= 3
    assert all(guide_text(*topic) for topic in asked if topic)


@pytest.mark.usefixtures("folder")
def test_the_library_example_runs(capsys):
    for block in blocks("python"):
        exec(compile(block.text, "README.md", "exec"), {})  # noqa: S102
    out = capsys.readouterr().out
    assert "azimuth_error_deg" in out
    assert "no-such-plan.toml: there is no such file" in out


def test_the_plans_of_all_forms_are_one_course(folder):
    plans = {
        name: audit.read_plan(folder / name, date="2026-09-19", grid_magnetic_angle_deg=-7.5)
        for name in ("plan.csv", "plan.gpx", "plan.geojson")
    }
    plans["plan.toml"] = audit.read_plan(folder / "plan.toml")
    assert len(plans["plan.toml"].legs) == 4
    for name, plan in plans.items():
        assert plan.grid == "EPSG:32616", name
        first, second = plan.points[0].position, plan.points[1].position
        assert first.latitude_deg == pytest.approx(36.637782, abs=1e-6)  # deg
        assert second.longitude_deg == pytest.approx(-84.218711, abs=1e-6)  # deg


def test_the_positions_of_the_table_can_be_read():
    rows = re.search(r"\| form \| example \|\n\|---\|---\|\n(.*?)\n\n", TEXT, re.DOTALL)
    assert rows
    forms = [line.split("|")[1:3] for line in rows[1].splitlines()]
    assert len(forms) == 5
    for form, examples in forms:
        grid = "EPSG:27700" if "where `grid`" in form else None
        for example in re.findall(r"`([^`]+)`", examples):
            assert read_position(example, grid).position.latitude_deg > 36.0


# What it says of the program


@pytest.mark.parametrize("name", PARTS)
def test_the_made_parts_are_as_the_program_makes_them_now(name):
    assert part(name) == PARTS[name](), "run tests/docs/refresh_readme.py"


@pytest.mark.parametrize("caution", CAUTIONS)
def test_every_caution_is_shown(caution):
    assert caution in TEXT


@pytest.mark.parametrize("document", ["debrief", "class"])
def test_every_field_of_the_document_is_told(document):
    schema = json.loads((ROOT / "audit" / "reports" / f"{document}.schema.json").read_text())
    entries = [schema, *schema["$defs"].values()]
    fields = {field for entry in entries for field in entry.get("properties", {})}
    told = set(re.findall(r"`([a-z0-9_]+)`", TEXT))
    assert fields - told == set()


def test_every_option_is_told():
    import typer

    command = typer.main.get_command(__import__("audit.cli.app", fromlist=["app"]).app)
    options = {
        name
        for one in command.commands.values()
        for parameter in one.params
        for name in parameter.opts
        if name.startswith("--") and name not in ("--traceback", "--help")
    }
    assert {name for name in options if name not in TEXT} == set()


def test_every_exit_status_is_told():
    from audit.cli.endings import ExitStatus

    said = TEXT[TEXT.index("exit status") :].split("\n\n")[0]
    for status in (
        ExitStatus.DONE,
        ExitStatus.WRONG_USE,
        ExitStatus.INPUT_REFUSED,
        ExitStatus.FAULT,
    ):
        assert re.search(rf"\b{int(status)}\b", said), status
