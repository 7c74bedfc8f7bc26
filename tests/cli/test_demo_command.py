"""leg-audit demo: the files set out, the debrief made, somebody's own files left alone."""

from __future__ import annotations

import json
import shlex
from importlib.resources import files

COURSE = files("audit").joinpath("demo_course")
SET_OUT = ("plan.toml", "walk.gpx", "log.csv")
WRITTEN = ("debrief.html", "debrief.json", "legs.csv", "debrief.geojson")


def test_the_demo_sets_out_its_files_and_debriefs_them(leg_audit, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    done = leg_audit("demo")
    folder = tmp_path / "leg-audit-demo"
    assert done.status == 0
    assert sorted(path.name for path in folder.iterdir()) == sorted([*SET_OUT, *WRITTEN])
    for name in SET_OUT:
        assert (folder / name).read_bytes() == COURSE.joinpath(name).read_bytes()
    assert done.err.splitlines()[-1] == ("Open the page in a browser: leg-audit-demo/debrief.html")
    # The walk is simulated, and terminal, page and document say so.
    assert "SIMULATED" in done.out
    assert "Simulated walk." in (folder / "debrief.html").read_text()
    notes = json.loads((folder / "debrief.json").read_text())["track"]["notes"]
    assert "The recording says of itself that it is simulated." in notes
    # A second time nothing is in the way, and nothing is different.
    before = {name: (folder / name).read_bytes() for name in WRITTEN}
    assert leg_audit("demo").status == 0
    assert {name: (folder / name).read_bytes() for name in WRITTEN} == before


def test_the_command_by_hand_survives_a_blank_in_a_path(leg_audit, tmp_path, monkeypatch):
    """Bug: the command that was printed fell apart at a blank in the name of the folder."""
    monkeypatch.chdir(tmp_path)
    done = leg_audit("demo", "--out", "my demo")
    command = next(line for line in done.err.splitlines() if line.startswith("leg-audit "))
    assert leg_audit(*shlex.split(command)[1:]).status == 0


def test_the_command_by_hand_does_the_same(leg_audit, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    done = leg_audit("demo", "--out", "first")
    command = next(line for line in done.err.splitlines() if line.startswith("leg-audit "))
    arguments = command.partition("leg-audit ")[2].replace("--out first", "--out again").split()
    again = leg_audit(*arguments)
    assert (again.status, again.out) == (0, done.out)
    for name in WRITTEN:
        assert (tmp_path / "first" / name).read_bytes() == (tmp_path / "again" / name).read_bytes()


def test_somebodys_changed_plan_is_not_written_over(leg_audit, tmp_path):
    mine = "# my own plan\n"
    (tmp_path / "plan.toml").write_text(mine)
    done = leg_audit("demo", "--out", tmp_path)
    assert done.status == 2
    assert "is not as the demo writes it, so it is left alone" in done.err
    assert (tmp_path / "plan.toml").read_text() == mine
    assert sorted(path.name for path in tmp_path.iterdir()) == ["plan.toml"]


def test_a_folder_that_cannot_be_made_is_told(leg_audit, tmp_path):
    (tmp_path / "file").write_text("")
    done = leg_audit("demo", "--out", tmp_path / "file" / "demo")
    assert done.status == 2
    assert "Name another folder" in done.err
