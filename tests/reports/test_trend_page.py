"""The trend in text, document and page: every figure with its error, nothing fetched or run."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import numpy as np
import pytest
from lxml import html
from school_records.attempts import attempt, leg, walks

from audit.reports.figure_trend import is_cut, trend_key, trend_specification
from audit.reports.trend_page import render_trend_page
from audit.reports.trend_report import render_trend, render_trend_json
from audit.school_records.work_out_trend import work_out_trend

SOMEBODY = "walker-00000000000000000000"


@pytest.fixture(scope="module")
def trend():
    rng = np.random.default_rng(21)
    day = walks(rng, 9, 6, bias=12.0, drift=-1.5)
    night = [
        replace(one, begun_s=one.begun_s + 4e4, ended_s=one.ended_s + 4e4)
        for one in walks(rng, 5, 5, light="night")
    ]
    return work_out_trend(SOMEBODY, [*day, *night])


def test_the_text_tells_a_planted_change_and_no_other(trend):
    text = render_trend(trend)
    lines = {line.split("  ")[1]: line for line in text.splitlines() if "an attempt" in line}
    day, night = text.split("By night")
    assert re.search(
        r"heading bias .* changes: from .* over 9 attempts, .* \(\d\.\d° left an attempt, ", day
    )
    assert "changes:" not in night
    assert "no change that the numbers carry" in night
    assert lines
    assert "all 10 figures asked here together" in " ".join(text.split())


def test_every_mean_has_an_error_and_every_figure_an_interval(trend):
    rows = [line for line in render_trend(trend).splitlines() if re.match("  (heading|pace)", line)]
    assert len(rows) == 6
    assert all(re.search(r"\(.+ to .+\)", row) for row in rows)
    assert all("±" in row for row in rows if "scatter" not in row)


def test_the_document_holds_every_figure_in_full(trend):
    document = json.loads(render_trend_json(trend))
    assert document["format"] == 1
    day = document["lights"][0]
    assert day["heading"]["mean"]["value"] == trend.lights[0].heading.mean.value
    assert day["attempts"][0]["walked_on"] == "2026-03-07"
    assert day["heading"]["change"]["carried"] is True


def test_the_page_fetches_and_runs_nothing_and_shows_what_the_text_does(trend):
    page = render_trend_page(trend)
    tree = html.fromstring(page)
    assert tree.xpath("//script | //link | //img | //iframe") == []
    assert "default-src 'none'" in page
    assert len(tree.xpath("//svg[@role='img']")) == 1
    assert len(tree.xpath("//table")) == 6
    words = " ".join(tree.text_content().split()).replace("\N{NO-BREAK SPACE}", " ")
    for row in ("By day", "By night", "heading scatter", "no change that the numbers carry"):
        assert row in words
    assert page == render_trend_page(trend)


def test_what_a_name_holds_is_never_taken_for_a_tag():
    nasty = attempt(course="<script>alert(1)</script>\x1b[2J")
    made = work_out_trend(SOMEBODY, [nasty])
    assert "<script>" not in render_trend_page(made)
    assert "\x1b" not in render_trend(made)


def test_a_line_is_drawn_only_where_the_numbers_carry_a_change(trend):
    specification = trend_specification(trend)
    lines = [
        layer["mark"]
        for layer in specification["vconcat"][0]["layer"]
        if layer["mark"]["type"] == "line" and layer["mark"]["stroke"] != "#1c1c1c"
    ]
    assert ["strokeDash" in line for line in lines] == [False, True]


def test_nothing_to_draw_is_no_picture():
    skipped = leg("1", None, status="skipped", heading_sd_deg=None, distance_ratio=None)
    bare = attempt(legs=(skipped,), paces_per_100m=None, paces_sd=None)
    made = work_out_trend(SOMEBODY, [bare])
    assert trend_specification(made) is None
    assert "0 legs" in render_trend(made) or made.lights == ()
    assert render_trend_page(made)


@pytest.mark.parametrize(
    ("attempts", "numbers"), [(1, [1]), (2, [1, 2]), (25, [1, 4, 7, 10, 13, 16, 19, 22, 25])]
)
def test_attempts_are_numbered_once_each(attempts, numbers):
    """Bug: the axis of two attempts read 1, 1, 2."""
    made = work_out_trend(SOMEBODY, list(walks(np.random.default_rng(3), attempts, 6)))
    written = json.dumps(trend_specification(made))
    assert f'"values": {numbers}' in written


def test_key_lists_the_lights_that_are_drawn(trend):
    """Bug: the note told of twilight and of attempts without times where there were none."""
    signs = {sign for sign, _ in trend_key(trend)}
    assert signs >= {"trend-day", "trend-night"}
    assert not signs & {"trend-twilight", "trend-unknown"}


def test_interval_of_few_legs_does_not_press_the_others_down():
    """Bug: the scatter of two legs, 2 to 142 degrees, left no room to see any other."""
    rng = np.random.default_rng(3)
    few = work_out_trend(SOMEBODY, [*walks(rng, 4, 6), *walks(rng, 1, 2)])
    assert is_cut(few)
    assert "beyond the picture" in render_trend_page(few)
    (domain,) = [
        one["encoding"]["y"]["scale"]["domain"]
        for one in trend_specification(few)["vconcat"]
        if "scatter" in str(one["encoding"]["y"]["axis"]["title"])
    ]
    scatters = [one.heading_scatter_deg.value for one in few.lights[0].attempts]
    assert domain[1] < 5.0 * max(scatters)
