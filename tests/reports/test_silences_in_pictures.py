"""What is drawn where the recorder was silent: the demo with holes cut into its recording."""

from __future__ import annotations

from dataclasses import fields, replace
from datetime import datetime
from pathlib import Path

import numpy as np
import pytest

import audit
from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports import ink
from audit.reports.figure_map import map_specification
from audit.reports.figure_strip import strip_specification
from audit.reports.figure_walk import walk_specification
from audit.reports.html_report import render_html
from audit.reports.map_key import map_key
from audit.reports.strip_frame import strip_of_leg
from audit.settings import Settings

DEMO = Path(audit.__file__).parent / "demo_course"
HOLES = ("17:40:00/17:43:00", "18:01:00/18:07:00", "18:16:00/18:19:00")
"""About the start of leg 3, about the end of leg 4, in the midst of leg 5."""
LEG_3, LEG_4, LEG_5 = 2, 3, 4


def at_s(clock: str) -> float:
    return datetime.fromisoformat(f"2026-09-19T{clock}Z").timestamp()


@pytest.fixture(scope="module")
def debrief():
    track = audit.read_track(DEMO / "walk.gpx")
    kept = np.ones(len(track), dtype=bool)
    for hole in HOLES:
        begin_s, end_s = (at_s(clock) for clock in hole.split("/"))
        kept &= (track.time_s <= begin_s) | (track.time_s >= end_s)
    columns = {
        one.name: getattr(track, one.name)[kept]
        for one in fields(track)
        if isinstance(getattr(track, one.name), np.ndarray)
    }
    found = audit.debrief(audit.read_plan(DEMO / "plan.toml"), replace(track, **columns))
    reckoned = [leg.audit.measures.ends_reckoned for leg in found.legs]
    assert reckoned[LEG_3] == (True, False)
    assert reckoned[LEG_4] == (False, True)
    assert reckoned[LEG_5] == (False, False)
    return found


@pytest.fixture(scope="module")
def moved(debrief):
    return speed_and_direction(debrief.clean, Settings().measuring)


def rows(specification, view=0, **mark):
    """All rows of the layers of a view whose marks have these attributes."""
    layers = specification["vconcat"][view]["layer"]
    return [
        row
        for layer in layers
        if mark.items() <= layer["mark"].items()
        for row in specification["datasets"][layer["data"]["name"]]
    ]


def xs(found) -> list[float]:
    return [row["x"] for row in found if row["x"] is not None]


def seen_at_m(debrief, leg, clock) -> float:
    """How far along its line the leg had come at the fix of a moment."""
    card = debrief.legs[leg].audit.card
    fix = debrief.clean.index_at(at_s(clock))
    here = np.array([debrief.clean.east_m[fix], debrief.clean.north_m[fix]])
    line = card.line[-1] - card.line[0]
    return float((here - card.line[0]) @ line / np.hypot(*line))


def test_what_was_last_seen_is_not_drawn_out_into_the_silence(debrief) -> None:
    """Bug: smoothing ran over the silence, and put the last that was seen of leg 4 halfway to
    the claim that was reckoned: 481 m along its line instead of 255 m."""
    last_m = strip_of_leg(debrief, LEG_4).curve[-2, 0]
    assert last_m == pytest.approx(seen_at_m(debrief, LEG_4, "18:01:00"), abs=10.0)
    first_m = strip_of_leg(debrief, LEG_3).curve[1, 0]
    assert first_m == pytest.approx(seen_at_m(debrief, LEG_3, "17:43:00"), abs=10.0)


def test_band_and_line_of_a_strip_end_where_the_walk_was_last_seen(debrief, moved) -> None:
    """Bug: the band of the receiver's noise ran on to a claim that nobody saw."""
    strip = strip_specification(debrief, LEG_4, moved)
    last_m = seen_at_m(debrief, LEG_4, "18:01:00")
    for mark in ({"fill": ink.PALE_BLUE}, {"stroke": ink.BLUE, "strokeWidth": 2.4}):
        assert max(xs(rows(strip, **mark))) == pytest.approx(last_m, abs=10.0)
    for view in (1, 2):  # height and speed
        assert max(xs(rows(strip, view, type="line"))) < last_m + 10.0
    strip = strip_specification(debrief, LEG_3, moved)
    first_m = seen_at_m(debrief, LEG_3, "17:43:00")
    for mark in ({"fill": ink.PALE_BLUE}, {"stroke": ink.BLUE, "strokeWidth": 2.4}):
        assert min(xs(rows(strip, **mark))) == pytest.approx(first_m, abs=10.0)
    dashes = rows(strip, strokeDash=ink.GAP_DASH)
    assert (min(xs(dashes)), max(xs(dashes))) == pytest.approx((0.0, first_m), abs=10.0)


def test_band_of_a_strip_breaks_over_a_silence_in_the_midst(debrief, moved) -> None:
    """Bug: it went straight on, as if the offset there were known as well as anywhere."""
    strip = strip_specification(debrief, LEG_5, moved)
    silence_m = [seen_at_m(debrief, LEG_5, clock) for clock in ("18:16:00", "18:19:00")]
    low, high = silence_m[0] + 10.0, silence_m[1] - 10.0
    assert high - low > 100.0
    band = rows(strip, fill=ink.PALE_BLUE)
    assert {"x": None, "y": None} in band
    for found in (band, *(rows(strip, view, type="line", stroke=ink.BLUE) for view in (1, 2))):
        assert not [x for x in xs(found) if low < x < high]
    assert rows(strip, strokeDash=ink.GAP_DASH)


def test_reckoned_claim_is_a_hollow_diamond_and_says_so(debrief, moved) -> None:
    """Bug: an end that was reckoned into a silence was drawn like one that was seen."""
    hollow = {"shape": "diamond", "fill": "white"}
    strip = strip_specification(debrief, LEG_4, moved)
    assert len(rows(strip, **hollow)) == 1
    assert {row["t"] for row in rows(strip, type="text", fill=ink.ORANGE)} == {
        "53 m right, reckoned"
    }
    assert not rows(strip_specification(debrief, LEG_5, moved), **hollow)
    chart = map_specification(debrief)
    drawn = {
        layer["mark"]["fill"]: len(chart["datasets"][layer["data"]["name"]])
        for layer in chart["layer"]
        if layer["mark"].get("shape") == "diamond"
    }
    assert drawn == {ink.ORANGE: 6, "white": 1}
    assert {"claim", "reckoned"} <= {sign for sign, _ in map_key(debrief)}
    page = render_html(debrief)
    assert "Where a leg begins or ends in them, that place is reckoned" in page
    assert "; where it ended is reckoned" in page
    assert "; where the leg began is reckoned" in page


def test_over_time_a_leg_is_drawn_as_far_as_it_was_seen(debrief, moved) -> None:
    """Bug: leg 4, whose end lies in a silence, was drawn up to the fix after it."""
    walk = walk_specification(debrief, moved)
    begun_s = float(debrief.clean.time_s[0])
    measures = debrief.legs[LEG_4].audit.measures
    claim_s = float(measures.curve_time_s[-1]) - begun_s
    last_s, again_s = (at_s(clock) - begun_s for clock in ("18:01:00", "18:07:00"))
    assert last_s < claim_s < again_s
    line = xs(rows(walk, stroke=ink.BLUE, strokeWidth=1.8))
    assert last_s in line
    assert not [x for x in line if last_s < x <= again_s]
    (claim,) = rows(walk, shape="diamond", fill="white")
    assert claim["x"] == pytest.approx(claim_s)
    dashes = rows(walk, strokeDash=ink.GAP_DASH)
    joined = dashes[xs(dashes).index(round(claim_s, 1)) :]
    assert round(claim_s, 1) in xs(joined)
    assert last_s in xs(dashes)
