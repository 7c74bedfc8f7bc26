"""`leg-audit lanes` as a course setter meets it."""

from __future__ import annotations

import csv
import json
import re
from pathlib import Path

import pytest
from course_setting.lanes import (
    EAST_LANE,
    TWIN_LANE,
    WEST_LANE,
    faulty_ground,
    sound_ground,
    write_areas,
    write_plan,
)


@pytest.fixture
def ground(tmp_path: Path, monkeypatch) -> Path:
    """Give the current folder, with plans and areas of sound and of faulty lanes."""
    write_plan(tmp_path / "east.toml", "East", EAST_LANE)
    write_plan(tmp_path / "twin.toml", "East", TWIN_LANE)
    write_plan(tmp_path / "west.toml", "West", WEST_LANE)
    write_areas(tmp_path / "sound.geojson", sound_ground())
    write_areas(tmp_path / "faulty.geojson", faulty_ground())
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.usefixtures("ground")
def test_sound_lanes_pass(leg_audit):
    done = leg_audit("lanes", "east.toml", "west.toml", "--areas", "sound.geojson", "--start",
                     "14:00")  # fmt: skip
    assert (done.status, "Nothing stands out." in done.out) == (0, True)
    assert "time, Naismith" in done.out
    assert "note: Heights are not known everywhere" in done.err


@pytest.mark.usefixtures("ground")
def test_each_planted_fault_is_named_and_nothing_else(leg_audit):
    done = leg_audit("lanes", "twin.toml", "west.toml", "--areas", "faulty.geojson", "--json")
    assert done.status == 1
    document = json.loads(done.out)
    assert [one["kind"] for one in document["findings"]] == [
        "twin-points", "leg-through-no-go", "safety-bearing-through-no-go",
    ]  # fmt: skip
    assert all(one["lat"] and one["lon"] for one in document["findings"])
    assert [one["twin_points"] for one in document["lanes"]] == [1, 1]


def test_page_table_and_document_are_written(leg_audit, ground: Path):
    done = leg_audit("lanes", "twin.toml", "west.toml", "--areas", "faulty.geojson", "--out", "out")
    assert done.status == 1
    page = (ground / "out" / "lanes.html").read_text()
    assert "default-src &#39;none&#39;" in page
    assert not re.search(r"(?:src|href)=\"(?!#)", page)
    assert page.count("<script") == 0
    assert "Black Marsh" in page
    with (ground / "out" / "lanes.csv").open(newline="") as table:
        rows = list(csv.DictReader(table))
    assert [row["name"] for row in rows] == ["East", "West"]
    assert float(rows[0]["time_naismith_s"]) > 1000.0
    assert json.loads((ground / "out" / "lanes.json").read_text())["format"] == 1


@pytest.mark.usefixtures("ground")
def test_what_cannot_be_used_is_said(leg_audit):
    done = leg_audit("lanes", "east.toml", "--start", "noon")
    assert done.status == 2
    assert '--start: "noon" is no time of day' in done.err
    done = leg_audit("lanes", "east.toml", "none.toml", "other.toml")
    assert (done.status, done.err.count("there is no such file")) == (3, 2)
    done = leg_audit("lanes", "east.toml", "--areas", "east.toml")
    assert done.status == 3
    assert "east.toml: is not JSON" in done.err


def test_lanes_stand_on_one_grid(leg_audit, ground: Path):
    text = (ground / "west.toml").read_text()
    (ground / "other.toml").write_text(text.replace("EPSG:32616", "EPSG:32617"))
    done = leg_audit("lanes", "east.toml", "other.toml")
    assert done.status == 2
    assert "Give all one grid with --grid." in done.err
    done = leg_audit("lanes", "east.toml", "other.toml", "--grid", "EPSG:32616")
    assert (done.status, "Nothing stands out." in done.out) == (0, True)


def test_the_safety_bearing_may_come_from_an_option(leg_audit, ground: Path):
    for name in ("east", "west"):
        text = (ground / f"{name}.toml").read_text()
        bare = text.replace("safety_magnetic_azimuth_deg = 187.5\n", "")
        (ground / f"{name}.toml").write_text(bare)
    asked = ("lanes", "east.toml", "west.toml", "--areas", "faulty.geojson", "--json")
    without = json.loads(leg_audit(*asked).out)
    assert "No plan gives a safety bearing" in " ".join(without["notes"])
    given = json.loads(leg_audit(*asked, "--safety-magnetic-azimuth", "187.5").out)
    kinds = [one["kind"] for one in given["findings"]]
    assert "safety-bearing-through-no-go" in kinds
    assert given["lanes"][0]["safety_grid_deg"] == pytest.approx(180.0)


def test_a_course_of_any_order_is_checked_without_legs(leg_audit, ground: Path):
    """Bug: a course without an order was refused, and the call with all other lanes with it."""
    free = (ground / "twin.toml").read_text().replace('name = "East"', 'name = "Free"', 1)
    free = free.replace("[course]", '[course]\norder = "free"', 1)
    (ground / "free.toml").write_text(free)
    done = leg_audit(
        "lanes", "free.toml", "west.toml", "--areas", "faulty.geojson", "--start", "09:00",
        "--out", "out",
    )  # fmt: skip
    assert done.status == 1
    assert "The points of Free may be visited in any order, so it has no legs" in done.err
    document = json.loads((ground / "out" / "lanes.json").read_text())
    # Its legs in the order of the file would go through the marsh.
    assert [(one["kind"], one["lane"]) for one in document["findings"]] == [
        ("twin-points", "Free"),
        ("safety-bearing-through-no-go", None),
        ("dark-before-the-end", "Free"),
        ("dark-before-the-end", "West"),
    ]
    lane = document["lanes"][0]
    assert (lane["order"], lane["legs"], lane["length_m"], lane["ends_by"]) == (
        "free", None, None, None,
    )  # fmt: skip
    assert lane["light_at_start"] is False
    table = (ground / "out" / "lanes.csv").read_text()
    assert [row["legs"] for row in csv.DictReader(table.splitlines())] == ["", "4"]
    assert "any order" in (ground / "out" / "lanes.html").read_text()
    for command in ("forecast", "rehearse"):
        assert leg_audit(command, "free.toml").status == 2
