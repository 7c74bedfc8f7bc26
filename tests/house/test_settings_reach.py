"""Settings that somebody hands in go all the way down; no part takes a default in their place."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from house.watched_settings import ROOT, given_settings, watched
from school_records.attempts import walks

import audit
from audit.classroom.attempt_of_debrief import attempt_of_debrief
from audit.course_setting.check_lanes import check_lanes
from audit.course_setting.checked_lanes import Lane
from audit.forecast.course_forecast import forecast_course
from audit.leg_card import work_out_card
from audit.rehearsal.rehearse import rehearse
from audit.reports.card_text import render_card_text
from audit.reports.write import render_gpx, render_html
from audit.school_records.work_out_trend import work_out_trend

COURSE = ROOT / "demo_course"
SETTINGS = given_settings()


@cache
def read():
    """Give plan, track and log of the demo."""
    return (
        audit.read_plan(COURSE / "plan.toml"),
        audit.read_track(COURSE / "walk.gpx"),
        audit.read_log(COURSE / "log.csv"),
    )


def debrief_with_card_and_log():
    plan, track, log = read()
    made = audit.debrief(plan, track, log=log, own_card=plan, settings=SETTINGS)
    made.to_dict()
    made.legs_frame()
    render_html(made)
    render_gpx(made)
    attempt_of_debrief(made, "walker-1", "0")


def class_on_two_lanes():
    plan, track, _ = read()
    lanes = {"east": plan, "west": replace(plan, name="West")}
    audit.grade(lanes, [track], audit.read_standard("day-course"), settings=SETTINGS)


def check_of_a_plan():
    audit.check_plan(read()[0], settings=SETTINGS)


def card_to_carry():
    render_card_text(audit.carried_card(read()[0], settings=SETTINGS))


def plan_on_another_grid():
    audit.plan_onto_grid(read()[0], "EPSG:32617", settings=SETTINGS)


def pace_count():
    audit.pace_count([read()[1]], settings=SETTINGS)


def card():
    return work_out_card(read()[0], settings=SETTINGS)


def forecast():
    forecast_course(card(), settings=SETTINGS.forecast)


def rehearsal_on_a_slope():
    one = card()
    rehearse(replace(one, legs=one.legs[:2]), heights=lambda at: 0.1 * at[:, 0], settings=SETTINGS)


def lanes_side_by_side():

    lanes = [Lane(name=name, source="", card=card()) for name in ("east", "west")]
    check_lanes(lanes, settings=SETTINGS)


def trend():
    work_out_trend("Somebody", list(walks(np.random.default_rng(1), 5, 4)), SETTINGS)


@pytest.mark.parametrize(
    "asked",
    [
        debrief_with_card_and_log,
        class_on_two_lanes,
        check_of_a_plan,
        card_to_carry,
        plan_on_another_grid,
        pace_count,
        forecast,
        rehearsal_on_a_slope,
        lanes_side_by_side,
        trend,
    ],
)
def test_what_is_asked_with_settings_goes_by_them_alone(asked):
    """Bug: the card was worked out by the defaults, whatever settings its debrief was given."""
    read()
    with watched() as reads:
        asked()
    assert reads.defaults == set()
    assert reads.given
