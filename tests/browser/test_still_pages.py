"""Pages of before and after a walk in a browser, in both languages: no request, no serious fault."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from axe_playwright_python.sync_playwright import Axe
from school_records.attempts import walks

import audit
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.geodesy.areas_on_grid import GroundAreas
from audit.leg_card import work_out_card
from audit.rehearsal.rehearse import rehearse
from audit.rehearsal.ways_on_ground import Surroundings
from audit.reports.card_page import render_card_page
from audit.reports.lanes_report import render_lanes_html
from audit.reports.rehearsal_report import render_rehearsal_html
from audit.reports.trend_page import render_trend_page
from audit.school_records.work_out_trend import work_out_trend
from audit.words import Words, spoken

DEMO = Path(audit.__file__).parent / "demo_course"


def card_page(plan) -> str:
    return render_card_page(audit.carried_card(plan), "a6")


def lanes_page(plan) -> str:
    card = work_out_card(plan)
    lanes = [Lane(name=name, source="plan.toml", card=card) for name in ("Oak", "Elm")]
    return render_lanes_html(
        check_lanes(lanes, GroundAreas(), sets_out=dt.time(23, 0)), GroundAreas()
    )


def rehearsal_page(plan) -> str:
    return render_rehearsal_html(rehearse(work_out_card(plan), Surroundings()), GroundAreas())


def trend_page(_plan) -> str:
    rng = np.random.default_rng(21)
    day = walks(rng, 9, 6, bias=12.0, drift=-1.5)
    night = [
        replace(one, begun_s=one.begun_s + 4e4, ended_s=one.ended_s + 4e4)
        for one in walks(rng, 5, 5, light="night")
    ]
    return render_trend_page(work_out_trend("Somebody", [*day, *night]))


@pytest.fixture(scope="module", params=["en", "de"])
def words(request):
    return Words(language=request.param)


@pytest.fixture(scope="module", params=[card_page, lanes_page, rehearsal_page, trend_page])
def written(request, words, tmp_path_factory) -> Path:
    path = tmp_path_factory.mktemp("pages") / "page.html"
    with spoken(words):
        path.write_text(request.param(audit.read_plan(DEMO / "plan.toml")), encoding="utf-8")
    return path


@pytest.mark.parametrize("width_px", [390, 1200])
def test_whoever_hears_it_read_or_has_no_mouse_can_use_it(chrome, written, words, width_px):
    context = chrome.new_context(bypass_csp=True, viewport={"width": width_px, "height": 800})
    asked: list[str] = []
    try:
        page = context.new_page()
        page.on("request", lambda request: asked.append(request.url))
        page.goto(written.as_uri())
        assert page.evaluate("document.documentElement.lang") == words.language
        assert page.evaluate("document.documentElement.scrollWidth") <= width_px
        # Whatever scrolls sideways must be reached by the keyboard.
        assert page.evaluate(
            "[...document.querySelectorAll('.wide')].filter("
            "one => one.scrollWidth > one.clientWidth && one.tabIndex < 0).length"
        ) == 0  # fmt: skip
        assert asked == [written.as_uri()]
        found = Axe().run(page).response["violations"]
        serious = [one["id"] for one in found if one["impact"] in {"serious", "critical"}]
        assert serious == []
    finally:
        context.close()
