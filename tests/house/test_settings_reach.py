"""Settings that somebody hands in go all the way down; no part takes a default in their place."""

from __future__ import annotations

from functools import cache

import pytest
from house.watched_settings import ROOT, given_settings, watched

import audit

COURSE = ROOT / "demo_course"


@cache
def read():
    """Give plan, track and log of the demo, and the settings that are handed in."""
    return (
        audit.read_plan(COURSE / "plan.toml"),
        audit.read_track(COURSE / "walk.gpx"),
        audit.read_log(COURSE / "log.csv"),
        given_settings(),
    )


def debrief_with_card_and_log():
    plan, track, log, settings = read()
    audit.debrief(plan, track, log=log, own_card=plan, settings=settings).to_dict()


def check_of_a_plan():
    plan, _, _, settings = read()
    audit.check_plan(plan, settings=settings)


def card_to_carry():
    plan, _, _, settings = read()
    audit.carried_card(plan, settings=settings)


def plan_on_another_grid():
    plan, _, _, settings = read()
    audit.plan_onto_grid(plan, "EPSG:32617", settings=settings)


@pytest.mark.parametrize(
    "asked", [debrief_with_card_and_log, check_of_a_plan, card_to_carry, plan_on_another_grid]
)
def test_what_is_asked_with_settings_goes_by_them_alone(asked):
    """Bug: the card was worked out by the defaults, whatever settings its debrief was given."""
    read()
    with watched() as reads:
        asked()
    assert reads.defaults == set()
    assert reads.given
