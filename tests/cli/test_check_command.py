"""`leg-audit check` as a course setter meets it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest


@pytest.fixture
def spoilt(course: Path) -> Path:
    """Give the demo's plan with one leg converted the wrong way and a point misread."""
    text = (course / "plan.toml").read_text()
    text = text.replace("magnetic_azimuth_deg = 254.0", "magnetic_azimuth_deg = 239.0")
    text = text.replace("16S GF 4908 5915", "16S GF 4980 5915")
    (course / "spoilt.toml").write_text(text)
    return course


@pytest.mark.usefixtures("course")
def test_the_demo_plan_has_nothing_to_put_right(leg_audit):
    done = leg_audit("check", "plan.toml")
    assert done.status == 0
    assert "Nothing to put right" in done.out
    assert "041.5 - (-7.5)" in done.out
    assert "DIFFERS" not in done.out


@pytest.mark.usefixtures("spoilt")
def test_findings_are_told_and_make_the_status_one(leg_audit):
    done = leg_audit("check", "spoilt.toml")
    assert done.status == 1
    assert "16S GF 4908 5915 would make legs 2 and 3 right" in done.out
    assert "It fits the grid-magnetic angle applied the wrong way" in done.out
    assert done.out.count("DIFFERS") == 5
    assert all(line.isprintable() for line in done.out.splitlines())


@pytest.mark.usefixtures("spoilt")
def test_the_document_holds_the_same(leg_audit):
    done = leg_audit("check", "spoilt.toml", "--json")
    assert (done.status, done.err) == (1, "")
    document = json.loads(done.out)
    assert document["format"] == 1
    assert document["plan"] == "spoilt.toml"
    slips = {slip for finding in document["findings"] for slip in finding["slips"]}
    assert {"digits-transposed", "gm-angle-reversed"} <= slips
    assert [leg["name"] for leg in document["legs"]] == list("1234567")
    sums = {one["what"]: one for one in document["legs"][6]["sums"]}
    assert (sums["magnetic_azimuth_deg"]["given"], sums["magnetic_azimuth_deg"]["agrees"]) == (
        239.0, False
    )  # fmt: skip


@pytest.mark.usefixtures("course")
def test_a_log_in_place_of_the_plan_is_known(leg_audit):
    done = leg_audit("check", "log.csv")
    assert done.status == 3
    assert done.err == (
        "log.csv: is a walker's log and no plan. Give it with --log, and the plan in its place.\n"
    )


def test_a_plan_that_cannot_be_read_is_refused(leg_audit, tmp_path):
    (tmp_path / "plan.toml").write_text("[course]\nname = 1.5\n")
    assert leg_audit("check", tmp_path / "plan.toml").status == 3
    assert leg_audit("check").status == 2


def test_several_legs_with_one_slip_are_told_at_the_head(leg_audit, course):
    text = (course / "plan.toml").read_text()
    for right, wrong in ((49.0, 41.5), (48.0, 40.5), (20.5, 13.0)):
        text = text.replace(f"magnetic_azimuth_deg = {right}", f"magnetic_azimuth_deg = {wrong}")
    (course / "omitted.toml").write_text(text)
    done = leg_audit("check", "omitted.toml")
    assert "The grid-magnetic angle left out: legs 1, 2, 3." in done.out.splitlines()


def test_a_hidden_turn_of_the_line_is_shown_in_every_form_of_a_plan(leg_audit, tmp_path):
    (tmp_path / "turned.csv").write_text(
        "leg,from,to,from_position,to_position\n"
        "1,Ga\u202ete,Knoll,16S GF 4832 5828,16S GF 4865 5865\n",
        encoding="utf-8",
    )
    (tmp_path / "turned.gpx").write_text(
        '<gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1"><rte>'
        '<rtept lat="36.6377" lon="-84.2225"><name>Ga\u202ete</name></rtept>'
        '<rtept lat="36.6400" lon="-84.2187"><name>Knoll</name></rtept></rte></gpx>',
        encoding="utf-8",
    )
    for name in ("turned.csv", "turned.gpx"):
        done = leg_audit("check", tmp_path / name, "--date", "2026-10-03")
        assert "Leg 1: Ga\\u202ete to Knoll" in done.out
        assert "\u202e" not in done.out + done.err


def test_a_hidden_turn_of_the_line_is_shown(leg_audit, course):
    text = (course / "plan.toml").read_text().replace("Gate", "Ga\u202ete")
    (course / "turned.toml").write_text(text, encoding="utf-8")
    done = leg_audit("check", "turned.toml")
    assert "Ga\\u202ete" in done.out
    assert "\u202e" not in done.out + done.err


@pytest.mark.usefixtures("course")
@pytest.mark.parametrize("written", ["-7,5", "7.5W"])
def test_an_angle_that_is_no_number_is_told_with_what_to_write(leg_audit, written):
    """Bug: "unable to parse string as a number", without the value and a remedy."""
    done = leg_audit("check", "plan.toml", "--grid-magnetic-angle", written)
    assert done.status == 2
    said = " ".join(done.err.split())
    assert f'"{written}" is no number; east is positive and west negative' in said


def test_one_name_with_two_places_is_something_to_put_right(leg_audit, tmp_path):
    """Bug: the check passed a leg that began 3.6 km from where the one before ended."""
    rows = "1,A,B,16S GF 4182 4279,16S GF 4265 4312\n2,B,C,16S GF 4625 4312,16S GF 4300 4400\n"
    (tmp_path / "lane.csv").write_text(f"leg,from,to,from_position,to_position\n{rows}")
    done = leg_audit("check", tmp_path / "lane.csv", "--date", "2026-10-03")
    assert done.status == 1
    assert "two digits of its easting swapped" in done.out


def test_a_day_of_the_command_is_not_said_to_be_the_plans(leg_audit, tmp_path):
    """Bug: "date_from" was "plan" for a CSV plan, which holds no date."""
    rows = "1,A,B,16S GF 4182 4279,16S GF 4265 4312\n"
    (tmp_path / "lane.csv").write_text(f"leg,from,to,from_position,to_position\n{rows}")
    done = leg_audit("check", tmp_path / "lane.csv", "--date", "2026-10-03", "--json")
    assert json.loads(done.out)["course"]["date_from"] == "option"
    done = leg_audit("check", tmp_path / "lane.csv", "--date", "2050-10-03")
    assert done.err.startswith("--date: 2050-10-03 is a day that no magnetic model")
