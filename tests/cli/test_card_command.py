"""`leg-audit card` as a walker meets it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pyproj
import pytest

HILL = Path(__file__).resolve().parents[2] / "fixtures/elevation/demo-ground.asc"


@pytest.fixture
def hill(course: Path) -> Path:
    """Give the heights under the demo's course, with the word on where they lie."""
    shutil.copy(HILL, course / "hill.asc")
    wkt = pyproj.CRS.from_epsg(4326).to_wkt("WKT1_ESRI")
    (course / "hill.prj").write_text(wkt)
    return course / "hill.asc"


@pytest.mark.usefixtures("course")
def test_the_card_is_text_where_no_file_is_named(leg_audit):
    done = leg_audit("card", "plan.toml")
    assert done.status == 0
    assert "Leg 1: Gate to Beech Knoll" in done.out
    assert "magnetic 049.0°" in done.out
    assert "climb ________" in done.out


@pytest.mark.parametrize(("name", "begin"), [("card.html", b"<!DOCTYPE html>"),
                                             ("card.pdf", b"%PDF"), ("card.txt", b"Fernbank")])  # fmt: skip
def test_the_name_of_the_file_says_what_is_made(leg_audit, course, name, begin):
    done = leg_audit("card", "plan.toml", "--out", name, "--paper", "a5")
    assert (done.status, done.out) == (0, "")
    assert (course / name).read_bytes().startswith(begin)
    assert f"Written to {name}" in done.err


def test_warnings_call_counts_by_their_kind(leg_audit, course):
    """Bug: a warning said "250 paces" over a leg of "double paces", and check "double paces"."""
    text = (course / "plan.toml").read_text(encoding="utf-8")
    (course / "slip.toml").write_text(text.replace("paces = 325", "paces = 250"), encoding="utf-8")
    said = " ".join(leg_audit("card", "slip.toml").out.split())
    assert "the plan gives 250 double paces" in said


def test_heights_make_climb(leg_audit, course, hill):
    done = leg_audit("card", "plan.toml", "--ground", hill.name)
    assert done.status == 0
    assert "climb ________" not in done.out
    assert "hill.asc" in done.out
    assert "taken for level" not in done.out
    del course


@pytest.mark.usefixtures("course")
def test_clicks_pace_and_safety_come_from_options(leg_audit):
    done = leg_audit(
        "card", "plan.toml", "--bezel-click", 5, "--pace", "single",
        "--safety-grid-azimuth", 180, "--safety-note", "to the road",
    )  # fmt: skip
    assert "Clicks of 5°, 72 round the bezel" in done.out
    assert "single paces 325" in done.out
    assert "187.5° magnetic" in done.out
    magnetic = leg_audit("card", "plan.toml", "--safety-magnetic-azimuth", 180)
    assert "180.0° magnetic (given as magnetic; grid 172.5°)" in magnetic.out


@pytest.mark.usefixtures("course")
@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--out", "card.doc"), "does not say what to make"),
        (("--bezel-click", "7"), "do not go round a bezel evenly"),
        (("--bezel-click", "0"), "do not go round a bezel evenly"),
        (("--paper", "a3"), 'there is no paper "a3"'),
        (("--pace", "triple"), 'there is no pace "triple"'),
        (("--safety-grid-azimuth", "361"), "out of range"),
    ],
)
def test_wrong_use_is_told(leg_audit, options, said):
    done = leg_audit("card", "plan.toml", *options)
    assert done.status == 2
    assert said in " ".join(done.err.replace("│", " ").split())
    assert "Traceback" not in done.err


def test_a_plan_with_findings_still_gives_a_card_that_says_so(leg_audit, course):
    text = (course / "plan.toml").read_text()
    (course / "off.toml").write_text(text.replace("azimuth_deg = 49.0", "azimuth_deg = 34.0"))
    done = leg_audit("card", "off.toml")
    assert done.status == 0
    assert "Not to be carried yet" in done.out
    assert "to put right" in done.err


@pytest.mark.parametrize("command", ["card", "check"])
def test_a_pace_count_of_another_pace_than_is_counted_is_noted(leg_audit, course, command):
    """Bug: 65 double paces taken for single ones made a card of half the paces."""
    words = course / "words.toml"
    words.write_text('[units]\npaces = "double"\npaces_counted = "single"\n')
    done = leg_audit(command, "plan.toml", "--words", "words.toml")
    assert "65 single paces to 100 m make a step of 1.54 m" in done.err
    words.write_text('[units]\npaces = "double"\npaces_counted = "double"\n')
    assert "make a step" not in leg_audit(command, "plan.toml", "--words", "words.toml").err
