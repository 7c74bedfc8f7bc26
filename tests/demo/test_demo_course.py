"""The demo that ships: remade byte for byte, and what was planted in its walk is found."""

from __future__ import annotations

import datetime as dt
import re
from importlib.resources import as_file, files
from pathlib import Path

import make_demo
import numpy as np
import pytest
from walks.truth import KINDS

import audit
from demo.course import GRID_MAGNETIC_ANGLE_DEG
from demo.files import BEGIN, SIMULATED
from demo.ground import CUT_OUT, cut_out
from demo.story import walk

COURSE = Path(__file__).resolve().parents[2] / "audit" / "demo_course"


@pytest.fixture(scope="module")
def document():
    with as_file(files("audit").joinpath("demo_course")) as folder:
        plan = audit.read_plan(folder / "plan.toml")
        track = audit.read_track(folder / "walk.gpx")
        log = audit.read_log(folder / "log.csv")
    return audit.debrief(plan, track, log=log).to_dict()


@pytest.fixture(scope="module")
def truth():
    """Give leg (from 1, 0 for none) and kind of every second of the walk."""
    _, columns = walk(np.random.default_rng(make_demo.SEED)).trail.arrays()
    return columns["label"] + 1, np.array(KINDS)[columns["kind"]]


def seconds(span: dict) -> slice:
    start, end = (
        int((dt.datetime.fromisoformat(span[key]) - BEGIN).total_seconds())
        for key in ("start", "end")
    )
    return slice(start, end)


def leg(document: dict, name: str) -> dict:
    return next(one for one in document["legs"] if one["name"] == name)


def causes(document: dict, name: str) -> dict[str, float]:
    return {one["cause"]: one["probability"] for one in leg(document, name)["causes"]}


# The files


def test_the_files_are_made_again_byte_for_byte():
    for name, text in make_demo.demo_texts().items():
        assert (COURSE / name).read_bytes() == text.encode(), f"{name}: see tests/make_demo.py"


def test_the_ground_is_cut_from_the_raster_byte_for_byte(shared_tracks):
    assert cut_out(shared_tracks / "elevation-jacksboro.npz") == CUT_OUT.read_text()


def test_the_walk_says_that_it_is_simulated():
    assert SIMULATED in (COURSE / "walk.gpx").read_text()
    assert "simulated" in (COURSE / "README.md").read_text()


def test_the_heights_are_those_of_the_ground():
    track = audit.read_track(COURSE / "walk.gpx")
    # The plateau lies between 470 and 590 m; receivers are off by some metres.
    assert track.elevation_m.min() > 450.0  # m
    assert track.elevation_m.max() < 610.0  # m
    assert np.ptp(track.elevation_m) > 40.0  # m


def test_the_plan_agrees_with_itself_and_with_the_magnetic_model(document):
    assert document["plan_findings"] == []
    course = document["course"]
    model_deg = course["model_grid_magnetic_angle_deg"]
    # Maps print the angle to half a degree (TC 3-25.26).
    assert abs(course["grid_magnetic_angle_deg"] - model_deg) < 0.5  # deg


def test_the_lengths_are_those_of_a_training_course(document):
    planned = [one["planned"]["distance_m"] for one in document["legs"]]
    assert len(planned) == 7
    assert min(planned) >= 300.0
    assert max(planned) <= 900.0


# What was planted


def test_every_leg_is_found(document, truth):
    labels, kinds = truth
    assert {one["status"] for one in document["legs"]} == {"walked"}
    assert all(one["found"] for one in document["legs"])
    for number, one in enumerate(document["legs"], start=1):
        own = np.flatnonzero((labels == number) & np.isin(kinds, ["walking", "halt", "bypass"]))
        start = (dt.datetime.fromisoformat(one["start"]["time"]) - BEGIN).total_seconds()
        assert abs(start - own[0]) < 30.0  # s, the aim that accuracy is measured by


def test_the_overshoot_is_measured(document):
    assert leg(document, "2")["distance_error_m"] > 40.0  # m; 66 m were planted


@pytest.mark.parametrize(
    ("number", "kind"),
    [(2, "search"), (3, "bypass"), (4, "search"), (5, "halt"), (6, "search"),
     (0, "approach"), (0, "walk-off")],
)  # fmt: skip
def test_spans_lie_where_they_were_walked(document, truth, number, kind):
    labels, kinds = truth
    planted = (labels == number) & (kinds == kind)
    said = np.zeros(len(kinds), dtype=bool)
    for span in document["spans"]:
        # A halt within a search is a halt in the document and part of the search in the truth.
        same = span["kind"] == kind or (kind == "search" and span["kind"] == "halt")
        if same and span["leg"] == (str(number) if number else None):
            said[seconds(span)] = True
    both = np.count_nonzero(planted & said)
    # The last 25 m of a search count as being at the point.
    assert both / np.count_nonzero(planted) > 0.7
    assert both / np.count_nonzero(said) > 0.8


def test_the_leg_without_the_angle_is_measured(document):
    one = leg(document, "6")
    assert one["azimuth_error_deg"] == pytest.approx(GRID_MAGNETIC_ANGLE_DEG, abs=1.5)  # deg
    low, high = one["walked"]["grid_azimuth_95_deg"]
    assert high - low < 3.0  # deg


def test_the_leg_without_the_angle_is_named(document):
    found = causes(document, "6")
    assert max(found, key=found.get) == "gm-angle-omitted"
    assert found["gm-angle-omitted"] > 0.5


def test_the_legs_without_a_mistake_are_not_accused(document):
    for name in ("1", "3", "5", "7"):
        found = causes(document, name)
        assert max(found, key=found.get) == "within-skill"


def test_two_strays_and_a_silence_are_found(document):
    track = document["track"]
    assert [(one["what"], one["count"]) for one in track["cleaning"]] == [("spike", 2)]
    assert len(track["gaps"]) == 1


def test_names_in_the_demo_are_of_no_person():
    text = (COURSE / "walk.gpx").read_text()
    assert not re.search(r"<(author|email|link|copyright)", text)
