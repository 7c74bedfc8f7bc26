"""Folders and names that a result could be led astray by, and names that would break a line."""

from __future__ import annotations

import shutil

import pytest
from hostile.evil_course import assert_printable, run
from hostile.strained_course import BASE, ORDINARY, gpx_text, plan_text

from audit.reports.csv_report import as_text
from audit.reports.spreadsheet_cells import tame


@pytest.fixture
def walk(tmp_path):
    (tmp_path / "plan.toml").write_text(plan_text(BASE))
    (tmp_path / "walk.gpx").write_text(gpx_text(ORDINARY))
    return tmp_path


def debriefed(folder, out):
    return run("debrief", folder / "plan.toml", folder / "walk.gpx", "--only", "json", "--out", out)


@pytest.mark.parametrize("out", ["file", "file/deeper"])
def test_a_file_where_the_folder_should_be_is_told_and_kept(walk, out):
    (walk / "file").write_text("keep")
    status, said = debriefed(walk, walk / out)
    assert status == 2
    assert "a file stands where a folder is wanted" in said
    assert said.count("\n") == 1
    assert (walk / "file").read_text() == "keep"


@pytest.mark.parametrize("target", ["victim", "not there"])
def test_a_link_in_the_folder_is_replaced_and_not_followed(walk, target):
    (walk / "victim").write_text("keep")
    (walk / "out").mkdir()
    (walk / "out" / "debrief.json").symlink_to(walk / target)
    status, said = debriefed(walk, walk / "out")
    assert status == 0, said
    assert not (walk / "out" / "debrief.json").is_symlink()
    assert (walk / "victim").read_text() == "keep"
    assert not (walk / "not there").exists()


@pytest.mark.parametrize(
    "name", ["a\nb.toml", "a\x1b[31mb.toml", "a\x1b]0;b\x07.toml", "a\u202eb.toml"]
)
def test_a_file_name_neither_breaks_a_line_nor_steers_the_terminal(walk, name):
    odd = walk / name
    status, said = run("check", odd)  # that is not there
    assert status == 3
    assert_printable(said)
    assert said.count("\n") == 1
    shutil.copy(walk / "plan.toml", odd)
    assert run("check", odd)[0] in {0, 1}
    odd.write_text("no plan")
    status, said = run("check", odd)
    assert status == 3
    assert_printable(said)


@pytest.mark.parametrize("begins", ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"])
def test_no_beginning_of_a_formula_survives_in_a_cell(begins):
    """OWASP, CSV injection; the wide forms are taken for the plain ones by some spreadsheets."""
    for neutral in (as_text, tame):
        assert neutral(f"{begins}1+1") == f"'{begins}1+1"
        assert neutral("Start") == "Start"
