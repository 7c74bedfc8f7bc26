"""Still pictures are what the drawing library draws, line for line and word for word.

The judge is vl-convert, which draws each chart again.
"""

from __future__ import annotations

import math
from copy import deepcopy
from pathlib import Path
from unittest import mock

import numpy as np
import pytest
import vl_convert
from classes.made_class import make_class
from classes.members import Plants
from classes.true_results import true_result
from reports.flat_svg import flat
from reports.sample_debrief import sample_debrief

import audit
from audit.measurement.speed_and_direction import speed_and_direction
from audit.reports import appeal_sheets, chart_layers, class_page, page_pictures, picture
from audit.reports.chart_compiler import chart_of
from audit.reports.html_report import render_html
from audit.reports.picture import draw
from audit.reports.still import BeyondStillError, still
from audit.reports.still.expressions import meaning
from audit.settings import Settings
from audit.words import Words, spoken
from audit.words.in_other_units import Units

DEMO = Path(audit.__file__).parent / "demo_course"
NEAR_PX = 0.03
"""Both drawers write hundredths of a pixel, one of them cut off."""
FRAME_PX = 1.01
"""Room round a picture depends on the widths of letters."""


@pytest.fixture(scope="module")
def demo():
    return audit.debrief(audit.read_plan(DEMO / "plan.toml"), audit.read_track(DEMO / "walk.gpx"))


@pytest.fixture(scope="module")
def graded():
    return true_result(make_class(100_301, walkers=6, legs=4, plants=Plants()))


def drawn_of(make, words: Words | None = None) -> list[dict]:
    """The specifications that are drawn while something is made."""
    drawn = []

    def kept(specification, ident, title, said):
        drawn.append(specification)
        return draw(specification, ident, title, said)

    places = [
        mock.patch.object(one, "draw", kept) for one in (page_pictures, class_page, appeal_sheets)
    ]
    with spoken(words), places[0], places[1], places[2]:
        make()
    return drawn


def of_page(debrief, words=None):
    moved = speed_and_direction(debrief.clean, Settings().measuring)
    return drawn_of(lambda: page_pictures.page_pictures(debrief, moved), words)


def assert_drawn_alike(specification) -> None:
    vega = chart_of(specification).vega()
    made = still(vega, "i")
    size = f'viewBox="0 0 {made.width_px} {made.height_px}"'
    own = flat(f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{made.body}</svg>')
    judge = flat(vl_convert.vega_to_svg(vega))
    assert np.abs(np.subtract(own.size, judge.size)).max() <= FRAME_PX
    assert len(own.seen) == len(judge.seen)
    assert len(own.seen) > 3
    for one, other in zip(own.seen, judge.seen, strict=True):
        assert (one.paint, one.text, one.clipped) == (other.paint, other.text, other.clipped)
        assert (one.closed, len(one.places)) == (other.closed, len(other.places))
    apart = origin(own, judge)
    assert np.abs(apart).max() <= FRAME_PX
    for one, other in zip(own.seen, judge.seen, strict=True):
        ways = [other.places, other.places[::-1]] if len(other.places) == 2 else [other.places]
        off = [np.abs(np.subtract(one.places, way) - apart).max() for way in ways]
        assert min(off) <= NEAR_PX, (one, other)


def origin(own, judge):
    """How far apart the frames lie, by what is drawn first."""
    firsts = [
        np.subtract(a.places[0], b.places[0]) for a, b in zip(own.seen, judge.seen, strict=True)
    ]
    return np.round(np.median(firsts, axis=0))


@pytest.mark.parametrize("language", ["en", "de"])
def test_pictures_of_the_demo_are_what_the_library_draws(demo, language):
    drawn = of_page(demo, Words(language=language))
    assert len(drawn) > 15
    for specification in drawn:
        assert_drawn_alike(specification)


def test_pictures_in_other_units_are_what_the_library_draws():
    units = Units(angle="mil6400", length="yards")
    for specification in of_page(sample_debrief(), Words(units=units)):
        assert_drawn_alike(specification)


def test_pictures_of_a_class_are_what_the_library_draws(graded):
    drawn = drawn_of(lambda: class_page.leg_figures(graded))
    drawn += drawn_of(lambda: appeal_sheets.appeal_sheets(graded))
    assert len(drawn) > 6
    for specification in drawn:
        assert_drawn_alike(specification)


def test_a_page_needs_no_library(demo):
    with mock.patch.object(picture, "_drawn_by_library", side_effect=AssertionError):
        assert render_html(demo).count("<svg") > 15


EXPRESSIONS = [
    "datum.a > 2 ? 'more' : datum.a === 2 ? 'two' : 'less'",
    "(datum.a < 0 ? '−' : '') + round(abs(datum.a) / 2.0)",
    "floor(datum.a * 1000 / 3600) + ':' + format(floor(datum.a * 1000 % 3600 / 60), '02d')",
    "replace(replace(format(datum.a / 7, ',.2f'), /,/g, ''), /[.]/g, ',')",
    "format(datum.a / 4, '~f') + ' km'",
    "format(datum.a * 1234.5, ',.1f')",
    "1 + 2 * 3 - datum['a'] / 4 + -1",
    "isValid(datum.a) && isFinite(+datum.a) || datum.a !== 3",
    "pow(10, floor(log(abs(datum.a) * 300) / LN10 + 1e-9)) + max(1, datum.a) + min(2, 3)",
    "sequence(ceil(datum.a), 9 + 1e-6, 2)[1]",
    'PI * 2 >= 6 ? ceil(datum.a) : "" + datum.t',
]


@pytest.mark.parametrize("expression", EXPRESSIONS)
@pytest.mark.parametrize("value", [-3.5, 1, 2, 2.5, 3])
def test_expressions_say_what_the_library_says(expression, value):
    row = {"a": value, "t": "x"}
    text = {"type": "text", "from": {"data": "rows"}}
    text["encode"] = {"enter": {"text": {"signal": f"'' + ({expression})"}}}
    chart = {"width": 9, "height": 9, "data": [{"name": "rows", "values": [row]}], "marks": [text]}
    judge = vl_convert.vega_to_scenegraph(chart)["scenegraph"]["items"][0]["items"][0]["items"][0]
    assert meaning(f"'' + ({expression})")(None, row).lower() == judge["text"].lower()


@pytest.mark.parametrize(
    "expression", ["sin(datum.a)", "datum.a = 3", "a b", "(1", "`a`", "{a: 1}", "datum.a ? 1"]
)
def test_what_is_not_known_is_left_to_the_library(expression):
    with pytest.raises(BeyondStillError):
        meaning(expression)


def test_a_chart_beyond_our_own_is_drawn_by_the_library():
    chart = {
        "datasets": {"rows": [{"a": 1}, {"a": 3}]},
        "data": {"name": "rows"},
        "mark": "bar",
        "encoding": {"x": {"field": "a", "bin": True}, "y": {"aggregate": "count"}},
    }
    with pytest.raises(BeyondStillError):
        still(chart_of(chart).vega(), "i")
    assert "<path" in draw(chart, "i", "Bars", "").svg


@pytest.mark.parametrize(
    "broken",
    [
        {"domain": [0, 1, 2]},
        {"range": "width"},
        {"range": [0, {"signal": "log(0)"}]},
        {"range": [0, {"signal": "width.x.y"}]},
    ],
)
def test_a_scale_put_together_in_another_way_is_left_to_the_library(broken):
    content = {
        "data": {"name": "rows"},
        "mark": {"type": "line", "strokeWidth": 1},
        "encoding": {
            axis: {
                "field": field,
                "type": "quantitative",
                "scale": {"domain": [0, 4]},
                "axis": None,
            }
            for axis, field in (("x", "a"), ("y", "b"))
        },
        "width": 100,
        "height": 50,
    }
    chart = chart_layers.specification(content, {"rows": [{"a": 1, "b": 2}, {"a": 3, "b": 4}]})
    vega = deepcopy(chart_of(chart).vega())
    assert "<path" in still(vega, "i").body
    vega["scales"][0].update(broken)
    with pytest.raises(BeyondStillError):
        still(vega, "i")


def test_half_a_pixel_rounds_up_as_the_library_has_it():
    assert [meaning("round(datum.a)")(None, {"a": one}) for one in (-2.5, -0.5, 0.5, 1.5)] == [
        math.floor(one + 0.5) for one in (-2.5, -0.5, 0.5, 1.5)
    ]
