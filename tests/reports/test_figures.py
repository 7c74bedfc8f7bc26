"""The pictures: valid Vega-Lite, true to scale, near enough to the recording, readable."""

from __future__ import annotations

import json
import math
import re
from dataclasses import replace
from itertools import combinations

import altair as alt
import numpy as np
import pytest
import shapely
import vl_convert
from defusedxml.ElementTree import fromstring
from reports.sample_debrief import sample_debrief

from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports import ink, map_margin
from audit.reports.chart_compiler import chart_of
from audit.reports.display_lines import thinned, tolerance_m, walked_lines
from audit.reports.figure_dial import _where_to_meet, dial_specification
from audit.reports.figure_ledger import ledger_specification
from audit.reports.figure_map import map_lines, map_specification
from audit.reports.figure_strip import shows_own_line, strip_specification
from audit.reports.figure_target import target_note, target_specification
from audit.reports.figure_walk import _apart, walk_specification
from audit.reports.label_places import Label, boxes_round, place_labels
from audit.reports.map_frame import MARGIN_STRIP_PX, map_frame
from audit.reports.map_key import map_key
from audit.reports.map_layers import letters
from audit.reports.picture import draw
from audit.settings import ReportSettings, Settings
from audit.words import Words, spoken
from audit.words.in_other_units import Units


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


@pytest.fixture(scope="module")
def map_spec(debrief):
    return map_specification(debrief)


@pytest.fixture(scope="module")
def moved(debrief):
    return speed_and_direction(debrief.clean, Settings().measuring)


def rows_of(specification, **mark):
    """Rows of the layers whose mark has these attributes."""
    view = specification if "layer" in specification else specification["vconcat"][0]
    return [
        specification["datasets"][layer["data"]["name"]]
        for layer in view["layer"]
        if mark.items() <= layer["mark"].items()
    ]


def drawn(specification, kind) -> list:
    """Items of a kind of mark as the library has placed them, in pixels of the picture."""
    found = []

    def gather(mark):
        for item in mark["items"]:
            if mark["marktype"] == kind:
                found.append(item)
            for inner in item.get("items", ()):
                gather(inner)

    scene = vl_convert.vega_to_scenegraph(chart_of(specification).vega())
    gather(scene["scenegraph"])
    return found


def test_specifications_follow_the_vega_lite_schema(debrief, map_spec, moved):
    # Altair carries the published JSON Schema of Vega-Lite and validates against it.
    walked = range(3)
    stacked = [walk_specification(debrief, moved)]
    stacked += [strip_specification(debrief, number, moved) for number in walked]
    layered = [map_spec, target_specification(debrief)]
    for make in (dial_specification, ledger_specification):
        layered += [make(debrief.legs[number]) for number in walked]
    for kind, charts in ((alt.VConcatChart, stacked), (alt.LayerChart, layered)):
        for specification in charts:
            kind.from_dict(json.loads(json.dumps(specification)), validate=True)


def test_charts_of_one_shape_share_it_and_differ_in_rows_and_numbers(debrief):
    charts = [chart_of(ledger_specification(leg)) for leg in debrief.legs[:3]]
    assert len({id(chart.shape) for chart in charts}) < len(charts)
    for chart, leg in zip(charts, debrief.legs, strict=False):
        put_in = vl_convert.vega_to_svg(chart.vega())
        directly = vl_convert.vegalite_to_svg(ledger_specification(leg))
        assert texts(put_in) == texts(directly)


def texts(svg) -> list[str]:
    return re.findall(r"<text[^>]*>([^<]*)<", svg)


def test_leg_not_walked_has_no_pictures(debrief, moved):
    assert strip_specification(debrief, 3, moved) is None
    assert dial_specification(debrief.legs[3]) is None
    assert ledger_specification(debrief.legs[3]) is None


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
    upright = [one for one in drawn(specification, "rule") if one.get("y2") == 0]
    across_px = sorted({one["x"] for one in upright if "x2" not in one})
    lines_m = [frame.west_m + x * frame.metres_per_pixel for x in across_px]
    assert 1 <= len(lines_m) <= 32
    spacing_m = np.diff(lines_m).mean() if len(lines_m) > 1 else 100.0
    power = round(math.log10(spacing_m / 100.0))
    assert spacing_m == pytest.approx(100.0 * 10**power, rel=0.03)
    spacing_m = 100.0 * 10**power
    px_m = frame.metres_per_pixel  # lines stand on whole pixels
    assert all(abs(line - spacing_m * round(line / spacing_m)) <= px_m for line in lines_m)


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


def circle_radii_px(svg):
    """Radii of the circles as they stand in a still picture."""
    return [float(radius) for radius in re.findall(r'd="M([\d.]+),0A\1,\1,', svg)]


def test_arrival_circle_is_true_to_scale(debrief, map_spec):
    """Bug: circles were drawn 11 % too small, as a sign's size is not the circle's own area."""
    metres_a_px = map_frame(debrief).metres_per_pixel
    radii_m = [
        radius * metres_a_px for radius in circle_radii_px(draw(map_spec, "map", "", "").svg)
    ]
    near = [radius == pytest.approx(30.0, abs=0.01 * metres_a_px) for radius in radii_m]
    assert sum(near) == len(debrief.points)


def test_circles_of_the_claims_are_true_to_scale(debrief):
    """Bug: 50 m by the ring were 44 m by the axis beside it."""
    specification = target_specification(debrief)
    low, high = specification["encoding"]["x"]["scale"]["domain"]
    px_a_metre = specification["width"] / (high - low)
    drawn_m = [
        radius / px_a_metre for radius in circle_radii_px(draw(specification, "a", "", "").svg)
    ]
    assert any(one == pytest.approx(30.0, abs=0.01 / px_a_metre) for one in drawn_m)
    assert all(
        any(
            one == pytest.approx(step, abs=0.01 / px_a_metre)
            for step in (30.0, *range(10, 1000, 10))
        )
        for one in drawn_m
    )


def test_scale_bar_is_as_long_as_it_says(debrief, map_spec):
    frame = map_frame(debrief)
    bar = [one for one in drawn(map_spec, "rect") if one.get("height") == 6]
    assert len(bar) == 2
    length_m = sum(one["width"] for one in bar) * frame.metres_per_pixel
    numbers = [one["text"] for one in drawn(map_spec, "text")]
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
    # "r" counts from the right edge, so magnetic north to the right has less of it.
    assert math.copysign(1, rows[0]["r"] - rows[1]["r"]) == math.copysign(1, shown_deg)
    assert abs(shown_deg) >= map_margin.NARROWEST_DEG


def test_strip_has_left_up_and_right_down(debrief, moved):
    specification = strip_specification(debrief, 0, moved)
    assert specification["vconcat"][0]["encoding"]["y"]["scale"]["reverse"] is True
    words = {row["t"]: row["y"] for rows in rows_of(specification, type="text") for row in rows}
    sides = {
        one["text"]: one["y"] for one in drawn(specification, "text") if "line" not in one["text"]
    }
    left, right = (
        min(y for text, y in sides.items() if text.endswith(f" m {side}"))
        for side in ("left", "right")
    )
    assert left < right  # up is less, in pixels
    assert words["109 m left"] == pytest.approx(-109.4, abs=0.1)  # metres


def test_strip_breaks_where_the_recording_is_silent(debrief, moved):
    specification = strip_specification(debrief, 2, moved)
    walked = rows_of(specification, stroke=ink.BLUE, type="line")[0]
    silent = rows_of(specification, stroke=ink.GREY, strokeDash=ink.GAP_DASH)[0]
    breaks = [place for place, row in enumerate(walked) if row["x"] is None]
    assert len(breaks) == 1
    assert len(silent) == 2
    before = max(row["x"] for row in walked[: breaks[0]])
    assert silent[0]["x"] == pytest.approx(before, abs=0.1)  # rows are to a tenth of a metre


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
    assert tolerance_m(metres_per_pixel, ReportSettings()) == stated_m


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


def test_labels_keep_off_signs_that_stand_already():
    """Bug: the names of claims covered other claims, where two lay near each other."""
    places = np.array([[170.0, 170.0], [181.0, 172.0], [150.0, 168.0]])
    names = [Label(text="7", right_px=x, down_px=y, clear_px=9, kind="leg") for x, y in places]
    signs = boxes_round(places, 5.0)
    placed = place_labels(names, places, 340.0, 340.0, signs)
    boxes = [
        shapely.box(one.right_px - 3.7, one.down_px - 7, one.right_px + 3.7, one.down_px + 7)
        for one in placed
    ]
    boxes += [shapely.box(*sign) for sign in signs]
    assert not any(a.intersection(b).area > 1e-9 for a, b in combinations(boxes, 2))


def test_label_begins_beside_its_place_in_any_size():
    """Bug: on a phone the words of the map ran over the points that they name."""
    long = Label(text="Spring Head", right_px=200.0, down_px=150.0, clear_px=12, kind="point")
    (one,) = place_labels([long], np.array([[230.0, 150.0]]), 460.0, 300.0)
    assert (one.align, one.edge_px) == ("right", 188.0)


def test_map_key_lists_what_the_map_shows():
    """Bug: the key listed halts whose letter had no room, and ways between legs of no length."""
    debrief = sample_debrief()
    frame = map_frame(debrief)
    drawn_kinds = {line.kind for line in map_lines(debrief, frame)}
    lettered = letters(debrief, frame)
    key = {sign for sign, _ in map_key(debrief)}
    assert key - drawn_kinds <= {"point", "claim", "halt", "walked", "search", "bypass"}
    assert ("halt" in key) == bool(lettered["H"])
    still = replace(debrief, spans=tuple(one for one in debrief.spans if one.leg is not None))
    assert "other" not in {sign for sign, _ in map_key(still)}


def test_note_on_the_claims_tells_of_no_ellipse_that_is_not_drawn(debrief):
    """Bug: the note told of dotted ellipses where there was no forecast."""
    legs = tuple(replace(leg, forecast=None) for leg in debrief.legs)
    assert "Dotted" not in target_note(replace(debrief, legs=legs))


def test_control_character_in_a_name_does_not_end_the_drawing():
    spec = map_specification(sample_debrief(names={"Start": "St\x1bart"}))
    picture = draw(spec, "map", "", "").svg
    fromstring(picture)
    assert "St art" in picture


def test_svg_can_be_read_aloud_and_stands_beside_others(debrief, map_spec, moved):
    first = draw(map_spec, "map", "Plan & walk", "Where <it> went").svg
    root = fromstring(first)
    names = {"svg": "http://www.w3.org/2000/svg"}
    assert root.get("role") == "img"
    title, description = root.get("aria-labelledby").split()
    assert root.find("svg:title", names).get("id") == title
    assert root.find("svg:title", names).text == "Plan & walk"
    assert root.find("svg:desc", names).get("id") == description
    second = draw(strip_specification(debrief, 0, moved), "strip0", "Leg 1", "").svg
    ids = [node.get("id") for text in (first, second) for node in fromstring(text).iter()]
    ids = [one for one in ids if one]
    assert len(ids) == len(set(ids))
    assert "href" not in first + second


def test_same_picture_twice_is_the_same_text(map_spec):
    assert draw(map_spec, "map", "", "") == draw(map_spec, "map", "", "")


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


def test_ledger_figure_closes_on_the_miss(debrief):
    for leg in debrief.legs[:3]:
        specification = ledger_specification(leg)
        miss = rows_of(specification, type="rule", stroke=ink.ORANGE)[0][0]
        vectors = rows_of(specification, type="rule", stroke=ink.BLUE)[0]
        joints = [(0.0, 0.0), *((one["x2"], one["y2"]) for one in vectors)]
        for before, one in zip(joints, vectors, strict=False):
            assert (one["x"], one["y"]) == pytest.approx(
                before, abs=0.2
            )  # short ones are not drawn
        assert joints[-1] == pytest.approx((miss["x2"], miss["y2"]), abs=0.2)  # metres


def test_dial_turns_the_walked_arrow_by_the_error(debrief):
    for leg in debrief.legs[:3]:
        heads = rows_of(dial_specification(leg), shape="triangle-up")
        assert [rows[0]["a"] for rows in heads] == [0.0, leg.audit.measures.azimuth_error_deg]


def test_target_has_right_of_the_line_on_the_right_and_beyond_up(debrief):
    claims = rows_of(target_specification(debrief), shape="diamond")[0]
    first, measures = claims[0], debrief.legs[0].audit.measures
    assert first["x"] == pytest.approx(measures.miss_across_m, abs=0.06)  # metres
    assert first["y"] == pytest.approx(measures.miss_along_m, abs=0.06)


def test_walk_without_times_has_no_strips_over_time(moved):
    assert walk_specification(sample_debrief(timed=False), moved) is None


# Names that need room


def test_the_names_of_the_arrows_stand_below_each_other_where_the_dial_is_too_narrow(debrief):
    """Bug: of "gegangen 0750 mil" the end was cut off."""
    leg = debrief.legs[1]
    german = Words(language="de", units=Units(angle="mil6400"))
    with spoken(german):
        walked, planned = (
            rows_of(dial_specification(leg), type="text", align="center", fontWeight=weight)[0][0]
            for weight in ("bold", "normal")
        )
    assert walked["y"] > planned["y"]
    assert walked["x"] == planned["x"] == 0.0
    assert rows_of(dial_specification(leg), type="text", align="center") == []


@pytest.mark.parametrize(
    ("left", "right", "meet_px"),
    [("x" * 10, "x" * 10, 0.0), ("x" * 16, "x" * 10, 9.0), ("x" * 10, "x" * 16, -9.0),
     ("x" * 15, "x" * 15, None)],
)  # fmt: skip
def test_names_side_by_side_meet_where_both_have_room(left, right, meet_px) -> None:
    """A dial of 230 px, letters of 7.5 and 4 beside each name: 124 px of sixteen letters."""
    assert _where_to_meet(left, right) == meet_px


def test_names_of_legs_that_would_run_into_the_one_before_are_left_out() -> None:
    """Bug: over the strips of 60 legs they were a black bar. 760 px for as many seconds."""
    begins = [{"x": at, "t": name} for at, name in ((0, "1"), (15, "2"), (16, "3"), (39, "10"))]
    assert [row["t"] for row in _apart(begins, (0.0, 760.0))] == ["1", "3", "10"]
    assert [row["t"] for row in _apart(begins, (0.0, 7600.0))] == ["1"]
