"""The pictures: valid Vega-Lite, true to scale, near enough to the recording, readable."""

from __future__ import annotations

import math
from itertools import combinations

import altair as alt
import numpy as np
import pytest
import shapely
from defusedxml.ElementTree import fromstring
from reports.sample_debrief import sample_debrief

from audit.reports import ink, map_margin
from audit.reports.display_lines import thinned, tolerance_m, walked_lines
from audit.reports.figure_map import map_specification
from audit.reports.figure_strip import shows_own_line, strip_specification
from audit.reports.label_places import Label, place_labels
from audit.reports.map_frame import (
    MARGIN_STRIP_PX,
    bar_length_m,
    lines_between,
    map_frame,
)
from audit.reports.picture import prepare, svg_picture


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


@pytest.fixture(scope="module")
def map_spec(debrief):
    return map_specification(debrief)


def rows_of(specification, **mark):
    """Rows of the layers whose mark has these attributes."""
    return [
        specification["datasets"][layer["data"]["name"]]
        for layer in specification["layer"]
        if mark.items() <= layer["mark"].items()
    ]


def test_specifications_follow_the_vega_lite_schema(debrief, map_spec):
    # Altair carries the published JSON Schema of Vega-Lite and validates against it.
    for specification in (map_spec, *(strip_specification(debrief, leg) for leg in range(3))):
        alt.LayerChart.from_dict(specification, validate=True)
        alt.LayerChart.from_dict(specification).to_dict(validate=True)


def test_leg_not_walked_has_no_strip(debrief):
    assert strip_specification(debrief, 3) is None


@pytest.mark.parametrize("stretch", [0.2, 1.0, 7.0, 60.0])
def test_one_metre_is_one_metre_east_and_north(stretch):
    debrief = sample_debrief(stretch=stretch, interval_s=max(5.0, 5.0 * stretch))
    specification = map_specification(debrief)
    frame = map_frame(debrief)
    x = specification["encoding"]["x"]["scale"]["domain"]
    y = specification["encoding"]["y"]["scale"]["domain"]
    east_m_per_px = (x[1] - x[0]) / specification["width"]
    north_m_per_px = (y[1] - y[0]) / specification["height"]
    assert east_m_per_px == pytest.approx(north_m_per_px, rel=1e-9)
    assert 0.45 <= frame.height_px / frame.width_px <= 1.1
    assert specification["height"] == pytest.approx(frame.height_px + MARGIN_STRIP_PX)
    # Lines of 100 m or whole powers of ten of it, as many as can be told apart.
    assert math.log10(frame.line_m / 100.0).is_integer()
    lines = lines_between(frame.west_m, frame.east_m, frame.line_m)
    assert all(line % frame.line_m == 0 for line in lines)
    assert len(lines) <= 32
    assert frame.label_m % frame.line_m == 0


def test_whole_course_is_in_the_frame(debrief):
    frame = map_frame(debrief)
    for point in debrief.points:
        assert frame.west_m + 30 < point.east_m < frame.east_m - 30
        assert frame.south_m + 30 < point.north_m < frame.north_m - 30


def test_way_to_the_course_does_not_shrink_the_map():
    """A car ride before the walk lies outside the frame."""
    from dataclasses import replace

    debrief = sample_debrief()
    east = debrief.clean.east_m.copy()
    east[:20] -= 40_000.0
    far = replace(debrief, clean=replace(debrief.clean, east_m=east))
    assert map_frame(far) == map_frame(debrief)


def test_arrival_circle_is_true_to_scale(debrief, map_spec):
    frame = map_frame(debrief)
    circle = next(layer for layer in map_spec["layer"] if layer["mark"].get("shape") == "circle")
    radius_px = math.sqrt(circle["mark"]["size"] / math.pi)  # Vega: size is an area
    assert radius_px * frame.metres_per_pixel == pytest.approx(30.0, abs=1e-6)  # metres


def test_scale_bar_is_as_long_as_it_says(debrief, map_spec):
    frame = map_frame(debrief)
    halves = next(rows for rows in rows_of(map_spec, type="rect") if len(rows) == 2)
    length_m = halves[1]["x2"] - halves[0]["x"]
    assert length_m == pytest.approx(bar_length_m(frame), abs=1e-6)
    numbers = [row["t"] for rows in rows_of(map_spec, type="text") for row in rows]
    assert f"{length_m:.0f} m" in numbers
    assert 0.15 < length_m / (frame.east_m - frame.west_m) < 0.5


@pytest.mark.parametrize(
    ("angle_deg", "shown_deg"), [(-23.5, -23.5), (23.5, 23.5), (-1.0, -9.0), (0.0, 9.0)]
)
def test_magnetic_north_leans_to_its_side(debrief, angle_deg, shown_deg):
    from dataclasses import replace

    from audit.azimuths import NorthAngles

    angles = NorthAngles(grid_magnetic_angle_deg=angle_deg, convergence_deg=1.6)
    turned = replace(debrief, card=replace(debrief.card, angles=angles))
    rows = rows_of(map_specification(turned), shape="triangle-up")[0]
    assert [row["a"] for row in rows] == [0.0, shown_deg]
    assert math.copysign(1, rows[1]["x"] - rows[0]["x"]) == math.copysign(1, shown_deg)
    assert abs(shown_deg) >= map_margin.NARROWEST_DEG


def test_strip_has_left_up_and_right_down(debrief):
    specification = strip_specification(debrief, 0)
    assert specification["encoding"]["y"]["scale"]["reverse"] is True
    words = {row["t"]: row["y"] for rows in rows_of(specification, type="text") for row in rows}
    assert words["left of the planned line"] < 0 < words["right of the planned line"]
    assert words["109 m left"] == pytest.approx(-109.4, abs=0.1)  # metres


def test_strip_breaks_where_the_recording_is_silent(debrief):
    specification = strip_specification(debrief, 2)
    walked = rows_of(specification, stroke=ink.BLUE, type="line")[0]
    silent = rows_of(specification, stroke=ink.GREY, strokeDash=list(ink.GAP_DASH))[0]
    assert {row["s"] for row in walked} == {0, 1}
    assert len(silent) == 2
    before = max(row["x"] for row in walked if row["s"] == 0)
    assert silent[0]["x"] == pytest.approx(before, abs=1e-6)


def test_own_line_is_drawn_where_it_can_be_told_from_the_planned_one(debrief):
    # Leg 3 was begun 12 m off, leg 1 within the noise of the receiver.
    assert [shows_own_line(debrief, leg) for leg in range(4)] == [False, False, True, False]


@pytest.mark.parametrize("within_m", [1.0, 5.0])
def test_thinned_lines_keep_within_what_is_stated(debrief, within_m):
    where = np.column_stack([debrief.clean.east_m, debrief.clean.north_m])
    for span, line in zip(debrief.spans, walked_lines(debrief, within_m), strict=True):
        portion = where[span.first : span.last + 1]
        apart_m = shapely.hausdorff_distance(
            shapely.LineString(portion), shapely.LineString(line.points), densify=0.05
        )
        assert apart_m <= within_m + 1e-6
        assert len(line.points) >= 2


def test_single_fix_is_still_a_line():
    assert thinned(np.array([[3.0, 4.0]]), 1.0).shape == (2, 2)


@pytest.mark.parametrize(("metres_per_pixel", "stated_m"), [(0.2, 1.0), (4.0, 1.0), (100.0, 25.0)])
def test_stated_tolerance(metres_per_pixel, stated_m):
    assert tolerance_m(metres_per_pixel) == stated_m


def test_labels_keep_off_each_other_and_inside():
    names = [Label(text="Post 12", right_px=x, down_px=y, clear_px=10, kind="point")
             for x in (20.0, 60.0, 110.0, 430.0) for y in (15.0, 60.0, 280.0)]  # fmt: skip
    placed = place_labels(names, np.array([[60.0, 60.0]]), 460.0, 300.0)
    boxes = [
        shapely.box(one.right_px - 26, one.down_px - 7, one.right_px + 26, one.down_px + 7)
        for one in placed
    ]
    assert all(shapely.box(0, 0, 460, 300).contains(box) for box in boxes)
    assert not any(a.intersection(b).area > 1e-9 for a, b in combinations(boxes, 2))


def test_control_character_in_a_name_does_not_end_the_drawing():
    spec = map_specification(sample_debrief(names={"Start": "St\x1bart"}))
    picture = svg_picture(spec, "map", "", "")
    fromstring(picture)
    assert "St art" in picture


def test_svg_can_be_read_aloud_and_stands_beside_others(debrief, map_spec):
    thread = prepare()
    first = svg_picture(map_spec, "map", "Plan & walk", "Where <it> went")
    thread.join()
    root = fromstring(first)
    names = {"svg": "http://www.w3.org/2000/svg"}
    assert root.get("role") == "img"
    title, description = root.get("aria-labelledby").split()
    assert root.find("svg:title", names).get("id") == title
    assert root.find("svg:title", names).text == "Plan & walk"
    assert root.find("svg:desc", names).get("id") == description
    second = svg_picture(strip_specification(debrief, 0), "strip0", "Leg 1", "")
    ids = [node.get("id") for text in (first, second) for node in fromstring(text).iter()]
    ids = [one for one in ids if one]
    assert len(ids) == len(set(ids))
    assert "href" not in first + second


def test_same_picture_twice_is_the_same_text(map_spec):
    assert svg_picture(map_spec, "map", "", "") == svg_picture(map_spec, "map", "", "")


def luminance(colour):
    """Relative luminance, WCAG 2.2."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("colour", [ink.INK, ink.BLUE, ink.ORANGE, ink.GREY])
def test_colours_on_white_can_be_read(colour):
    # WCAG 2.2: 4.5 for text (1.4.3). Graphics would do with 3 (1.4.11).
    assert contrast(colour, "#ffffff") >= 4.5


def test_blue_and_orange_differ_in_grey():
    assert contrast(ink.BLUE, ink.ORANGE) > 1.7


def test_letters_keep_off_claims_and_each_other(debrief, map_spec):
    frame = map_frame(debrief)
    letters = [
        row
        for shape in ("circle", "square")
        for rows in rows_of(map_spec, shape=shape, fill="white")
        for row in rows
    ]
    claims = rows_of(map_spec, shape="diamond")[0]
    assert {row["t"] for row in letters} == {"S", "H"}
    places = [(row["x"], row["y"]) for row in [*letters, *claims]]
    for (x1, y1), (x2, y2) in combinations(places, 2):
        assert math.hypot(x1 - x2, y1 - y2) / frame.metres_per_pixel >= 12.9  # pixels
