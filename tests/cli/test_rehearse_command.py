"""`leg-audit rehearse` as somebody who sets a course meets it."""

from __future__ import annotations

import csv
import json
import re
from pathlib import Path

import pytest
from course_setting.lanes import EAST_LANE, WEST_LANE, faulty_ground, write_areas, write_plan


def test_page_table_document_and_tracks_are_written(leg_audit, course: Path):
    done = leg_audit("rehearse", "plan.toml", "--walk", "6=gm-angle-omitted")
    assert done.status == 0
    assert "SIMULATED" in done.out
    folder = course / "plan-rehearsal"
    page = (folder / "rehearsal.html").read_text()
    assert "default-src &#39;none&#39;" in page
    assert "<script" not in page
    assert not re.search(r"(?:src|href)=\"(?!#)", page)
    document = json.loads((folder / "rehearsal.json").read_text())
    assert document["format"] == 1
    ways = [way for leg in document["legs"] for way in leg["ways"]]
    with (folder / "rehearsal.csv").open(newline="") as table:
        rows = list(csv.DictReader(table))
    assert len(rows) == len(ways) > 500
    assert float(rows[0]["miss_m"]) == ways[0]["miss_m"]
    tracks = sorted(path.name for path in (folder / "tracks").iterdir())
    assert tracks == [*(f"leg-{n}.gpx" for n in range(1, 8)), "walk-6-gm-angle-omitted.gpx"]


def test_a_simulated_walk_is_debriefed_as_what_was_planted(leg_audit, course: Path):
    planted = ((5, "gm-angle-omitted"), (2, "right-angle"), (5, "veer"))
    walks = [word for leg, cause in planted for word in ("--walk", f"{leg + 1}={cause}")]
    leg_audit("rehearse", "plan.toml", *walks, "--out", "out")
    for leg, cause in planted:
        track = f"out/tracks/walk-{leg + 1}-{cause}.gpx"
        done = leg_audit("debrief", "plan.toml", track, "--only", "json", "--out", cause)
        assert done.status == 0
        assert "SIMULATED" in done.out
        legs = json.loads((course / cause / "debrief.json").read_text())["legs"]
        assert [one["causes"][0]["cause"] for one in legs] == [
            cause if number == leg else "within-skill" for number in range(7)
        ]


@pytest.mark.usefixtures("course")
def test_what_cannot_be_walked_is_said(leg_audit):
    done = leg_audit("rehearse", "plan.toml", "--walk", "9=reciprocal")
    assert (done.status, "the legs are 1, 2, 3" in done.err) == (2, True)
    done = leg_audit("rehearse", "plan.toml", "--walk", "1=sidehill")
    assert (done.status, "its heights are not known" in done.err) == (2, True)
    done = leg_audit("rehearse", "plan.toml", "--walk", "1=haste")
    assert (done.status, "no such mistake" in done.err) == (2, True)


def test_areas_and_courses_beside_are_looked_at(leg_audit, tmp_path: Path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    write_plan(tmp_path / "east.toml", "East", EAST_LANE)
    write_plan(tmp_path / "west.toml", "West", WEST_LANE)
    write_areas(tmp_path / "areas.geojson", faulty_ground())
    done = leg_audit("rehearse", "east.toml", "--areas", "areas.geojson", "--beside", "west.toml",
                     "--out", "out")  # fmt: skip
    assert done.status == 0
    document = json.loads((tmp_path / "out" / "rehearsal.json").read_text())
    assert document["beside"] == ["West"]
    ways = [way for leg in document["legs"] for way in leg["ways"]]
    assert any("Long Lake" in way["through"] for way in ways)
    assert any(way["ends_outside"] for way in ways)
    page = (tmp_path / "out" / "rehearsal.html").read_text()
    assert "Courses beside this one: West." in page
