"""Whatever unit and term is chosen stands on every page and in every text, and no other beside it."""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path

import pytest
from classes import make_class
from classes.true_results import true_result
from words.test_nothing_leaks import SeenText

import audit
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.forecast.course_forecast import forecast_course
from audit.forecast.walker_scatter import scatter_of_walker
from audit.geodesy.areas_on_grid import GroundAreas
from audit.leg_card import work_out_card
from audit.rehearsal.rehearse import rehearse
from audit.rehearsal.ways_on_ground import Surroundings
from audit.reports.appeal_sheets import appeal_sheets
from audit.reports.card_words import card_words
from audit.reports.check_report import render_check
from audit.reports.class_page import render_class_html
from audit.reports.forecast_report import render_forecast
from audit.reports.lanes_report import render_lanes_html
from audit.reports.pace_report import render_pace
from audit.reports.rehearsal_report import render_rehearsal_html
from audit.words import Words, spoken
from audit.words.in_other_units import Units

DEMO = Path(audit.__file__).parent / "demo_course"
CHOSEN = Words(
    units=Units(angle="gon", length="yards", paces="single", paces_counted="double"),
    terms={"azimuth": "bearing", "point": "control"},
)
OTHERS = re.compile(r"\d ?°|\d mil\b|\d m\b|\bmetres?\b|[aA]zimuth|\bpoints?\b|double pace")
NAMES_OF_CAUSES = re.compile(
    r"hundred metres lost or added|90° out|180° out|single and double paces"
)


def seen(page: str) -> list[str]:
    read = SeenText()
    read.feed(page)
    return [text.replace("\N{NO-BREAK SPACE}", " ") for text in read.seen]


def of_card(plan) -> list[str]:
    """The legs; the rules of walking time and the clicks of a bezel are what they are."""
    words = card_words(audit.carried_card(plan))
    pieces = [piece for leg in words.legs for piece in leg.pieces]
    cells = [f"{one.label} {one.value}" for part in (*pieces, *words.legs) for one in part.cells]
    return [
        *words.facts,
        *words.warnings,
        *cells,
        *(one for piece in pieces for one in piece.bezel),
    ]


def of_class(_plan) -> list[str]:
    made = true_result(make_class(100_301, walkers=16, legs=4))
    # Made without judging: what speaks for and against is plain text there.
    sheets = list(appeal_sheets(made).values())[:3]
    told = {text for one in made.walkers for leg in one.legs
            for text in (*leg.point.evidence_for, *leg.point.evidence_against)}  # fmt: skip
    texts = [text for page in (render_class_html(made), *sheets) for text in seen(page)]
    # Heights stay in metres.
    told |= {f"{one.climb_m:.0f} m" for lane in made.lanes for one in (lane, *lane.legs)}
    return [text for text in texts if text.strip() not in told and "receiver noise" not in text]


def of_forecast(plan) -> list[str]:
    made = forecast_course(work_out_card(plan), scatter_of_walker(()), aim_off_m=40.0)
    return render_forecast(made).splitlines()


def of_lanes(plan) -> list[str]:
    card = work_out_card(plan)
    lanes = [Lane(name=name, source="plan.toml", card=card) for name in ("Oak", "Elm")]
    checked = check_lanes(lanes, GroundAreas(), sets_out=dt.time(23, 0))
    texts = seen(render_lanes_html(checked, GroundAreas()))
    return [re.sub(r"\(climb: [^;]+;", "", text) for text in texts]  # heights stay in metres


def of_rehearsal(plan) -> list[str]:
    return seen(render_rehearsal_html(rehearse(work_out_card(plan), Surroundings()), GroundAreas()))


def of_pace(_plan) -> list[str]:
    count = audit.pace_count([audit.read_track(DEMO / "walk.gpx")], each=[3200.0], pace="double")
    # The receiver's error stays in metres, and the line for the plan is the plan's own.
    return [re.sub(r"receiver [\d.]+ m", "", line) for line in render_pace(count).splitlines()]


def of_check(plan) -> list[str]:
    return render_check(audit.check_plan(plan)).splitlines()


@pytest.mark.parametrize(
    "told", [of_card, of_class, of_forecast, of_lanes, of_rehearsal, of_pace, of_check]
)
def test_nothing_is_told_in_another_unit_or_term(told):
    with spoken(CHOSEN):
        texts = told(audit.read_plan(DEMO / "plan.toml"))
    assert len(texts) > 3
    assert any(re.search(r"\d yd\b|\d gon\b", text) for text in texts)
    assert [one for one in texts if OTHERS.search(NAMES_OF_CAUSES.sub("", one))] == []
