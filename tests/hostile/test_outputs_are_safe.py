"""What is written does no harm when it is opened, and never takes the place of an input."""

from __future__ import annotations

import csv
import json
import re
import shutil
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from hostile.evil_course import assert_printable, run
from lxml import etree, html
from schema.make_schema import SHIPPED_OF_CLASS
from schema.strict import strict_validator

from audit.errors import OutputRefusedError
from audit.readers.plan_file import read_plan
from audit.reports.write import write_texts

FORMULA = re.compile(r"\s*[=+\-@\t\r＝＋－＠]")


def test_no_name_becomes_a_part_of_the_page(evil):
    page = html.fromstring((evil / "out" / "debrief.html").read_text())
    with as_file(files("audit").joinpath("demo_course")) as demo:
        status, _ = run("debrief", demo / "plan.toml", demo / "walk.gpx", "--out", evil / "tame")
    assert status == 0
    tame = html.fromstring((evil / "tame" / "debrief.html").read_text())
    for kind in ("script", "img", "iframe", "object", "a", "style", "title"):
        assert {one.get("src") for one in page.iter(kind)} <= {
            one.get("src") for one in tame.iter(kind)
        }
    assert len(list(page.iter("script"))) == len(list(tame.iter("script")))
    handlers = [name for one in page.iter() for name in one.attrib if name.startswith("on")]
    assert handlers == []
    assert "{{7*7}}" in "".join(page.itertext())


def test_no_name_becomes_a_part_of_a_picture(evil):
    pictures = list((evil / "out").glob("*.svg"))
    assert len(pictures) > 10
    for path in pictures:
        for one in etree.fromstring(path.read_bytes()).iter():
            assert str(one.tag).rpartition("}")[2] not in {"script", "foreignObject", "img", "a"}
            assert not [name for name in one.attrib if name.startswith("on")]


def test_files_for_programs_are_strict(evil):
    def no_constant(word: str) -> None:
        pytest.fail(f"{word} is not JSON")

    for name in ("debrief.json", "debrief.geojson"):
        text = (evil / "out" / name).read_text()
        assert json.loads(text, parse_constant=no_constant)
        assert not re.search("[\x7f-\x9f\u202a-\u202e]", text)
    etree.fromstring((evil / "out" / "debrief.gpx").read_bytes())


def test_no_cell_runs_as_a_formula(evil):
    copy = evil / "copy.csv"
    status, said = run("copy", evil / "plan.toml", "--out", copy)
    assert status == 0, said
    for path in (evil / "out" / "legs.csv", copy):
        with path.open(newline="") as file:
            cells = [cell for row in csv.reader(file) for cell in row]
        assert "'+cmd|' /C calc'!A0" in cells
        risky = [cell for cell in cells if FORMULA.match(cell)]
        assert [cell for cell in risky if not re.fullmatch(r"-?[\d.]+(e-?\d+)?", cell)] == []
    back = read_plan(copy, date="2026-09-19", grid="EPSG:32616")
    assert [leg.end for leg in back.legs] == [leg.end for leg in read_plan(evil / "plan.toml").legs]


@pytest.mark.parametrize("command", [["check"], ["card"], ["forecast"], ["forecast", "--json"]])
def test_no_command_sends_the_terminal_more_than_text(evil, command):
    status, said = run(command[0], evil / "plan.toml", *command[1:])
    assert status in (0, 1)
    assert_printable(said)


# Inputs stay


def test_no_debrief_is_written_over_what_it_was_made_from(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with as_file(files("audit").joinpath("demo_course")) as demo:
        shutil.copy(demo / "walk.gpx", "debrief.gpx")
        assert run("copy", demo / "plan.toml", "--out", "legs.csv")[0] == 0
        before = {name: Path(name).read_bytes() for name in ("debrief.gpx", "legs.csv")}
        over_plan = run("debrief", "legs.csv", "debrief.gpx", "--only", "csv", "--out", ".")
        over_track = run(
            "debrief", demo / "plan.toml", "debrief.gpx", "--only", "json", "--gpx", "--out", "."
        )
    for status, said in (over_plan, over_track):
        assert status == 2
        assert "the results are made from this file" in said
    assert {name: Path(name).read_bytes() for name in before} == before
    assert sorted(one.name for one in tmp_path.iterdir()) == sorted(before)


def test_inputs_that_may_only_be_read_are_enough(tmp_path):
    with as_file(files("audit").joinpath("demo_course")) as demo:
        for name in ("plan.toml", "walk.gpx"):
            shutil.copy(demo / name, tmp_path)
            (tmp_path / name).chmod(0o444)
    stamps = {path: (path.stat().st_mtime_ns, path.read_bytes()) for path in tmp_path.iterdir()}
    status, _ = run(
        "debrief",
        tmp_path / "plan.toml",
        tmp_path / "walk.gpx",
        "--only",
        "json",
        "--out",
        tmp_path / "o",
    )
    assert status == 0
    assert {path: (path.stat().st_mtime_ns, path.read_bytes()) for path in stamps} == stamps


@pytest.mark.parametrize("name", ["../evil.txt", "a/b.txt", "/evil.txt", ".."])
def test_no_name_of_a_result_leaves_its_folder(tmp_path, name):
    with pytest.raises(OutputRefusedError):
        write_texts(tmp_path / "out", {name: "x"})
    assert not (tmp_path / "evil.txt").exists()


# A class


def test_no_name_of_a_class_leaves_its_folder_or_acts(evil, tmp_path):
    shutil.copy(evil / "plan.toml", tmp_path)
    marked = "w\u202ealk=.gpx"  # a mark that turns the rest of a line, as in a spoofed name
    shutil.copy(evil / "walk.gpx", tmp_path / marked)
    roster = (
        "name,lane,device,file,compass\n"
        f'"../../../<b>=cmd|x!A1\x9b31m\u202eQ",,"</script><img src=x>",{marked},@c\n'
    )
    (tmp_path / "roster.csv").write_text(roster, encoding="utf-8")
    out = tmp_path / "out"
    status, said = run(
        "grade", tmp_path / "plan.toml", tmp_path / marked, "--roster", tmp_path / "roster.csv",
        "--out", out, "--jobs", "1",
    )  # fmt: skip
    assert status == 0, said
    assert_printable(said)
    assert {one.name for one in tmp_path.iterdir()} == {"plan.toml", marked, "roster.csv", "out"}
    page = html.fromstring((out / "class.html").read_text())
    assert not [name for one in page.iter() for name in one.attrib if name.startswith("on")]
    assert list(page.iter("script", "img", "iframe")) == []
    assert {one.get("href").partition("/")[0] for one in page.iter("a")} <= {"debriefs", "appeals"}
    for path in (out / "class.html", out / "class.json", out / "class.csv"):
        assert not re.search("[\x7f-\x9f\u202a-\u202e]", path.read_text())
    with (out / "class.csv").open(newline="") as file:
        cells = {cell for row in csv.reader(file) for cell in row}
    assert not [cell for cell in cells if re.match(r"\s*[=+@]", cell)]
    document = json.loads((out / "class.json").read_text())
    strict_validator(SHIPPED_OF_CLASS).validate(document)
    assert len(document["walkers"]) == 1
    assert (out / "debriefs").is_dir()
