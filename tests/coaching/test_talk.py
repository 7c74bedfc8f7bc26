"""What if, and two to keep and two to work on: each with evidence and an exercise."""

from __future__ import annotations

import datetime as dt
import math

import pytest
from coaching.demo_walk import demo

from audit.azimuths import MagneticAzimuth
from audit.coaching.shown import Shown
from audit.coaching.talk_over import log_holds
from audit.coaching.to_keep import to_keep
from audit.coaching.to_work_on import with_work
from audit.coaching.walkers_card import _is_used
from audit.coaching.what_if import what_if
from audit.guide.pages_on_file import cause_pages, exercise
from audit.settings import CoachingSettings, Settings
from audit.units import unit_vector
from audit.walkers_log import LogEntry, WalkersLog
from audit.words import sentence

SETTINGS = CoachingSettings()


def test_the_planned_azimuth_takes_the_turn_off_the_miss():
    # Leg 6 of the demo: 7.2 degrees left over 850 m, with nothing else wrong to speak of.
    _, finished, _ = demo()
    leg = finished.legs[5].audit
    other = what_if(leg.card, leg.measures).planned_azimuth
    assert other.miss_m < 0.3 * leg.measures.miss_m
    assert other.sd_m >= leg.measures.miss_sd_m


def test_both_ends_are_the_walk_with_one_thing_changed():
    # By hand: from where the walker began, the planned azimuth for the length walked (and the
    # walked azimuth for the planned length), then the detour of the ledger.
    _, finished, _ = demo()
    for one in finished.legs:
        leg, measures = one.audit.card, one.audit.measures
        walked, planned = (unit_vector(a.degrees) for a in (measures.heading.azimuth, leg.azimuth))
        way = (measures.claim.east_m - measures.start.east_m,
               measures.claim.north_m - measures.start.north_m)  # fmt: skip
        made = way[0] * walked[0] + way[1] * walked[1]
        ends = what_if(leg, measures)
        for vector, length, end in ((planned, made, ends.planned_azimuth),
                                    (walked, leg.distance_m, ends.planned_distance)):  # fmt: skip
            east = measures.start.east_m + length * vector[0] + measures.ledger.detour[0]
            north = measures.start.north_m + length * vector[1] + measures.ledger.detour[1]
            assert end.east_m == pytest.approx(east - leg.end.east_m, abs=1e-6)
            assert end.north_m == pytest.approx(north - leg.end.north_m, abs=1e-6)
            assert end.miss_m == pytest.approx(math.hypot(end.east_m, end.north_m))


def test_the_demo_gets_two_of_each():
    _, finished, _ = demo()
    talk = finished.coaching
    assert [len(talk.keep), len(talk.work_on)] == [2, 2]
    first = talk.work_on[0]
    assert first.cause == "gm-angle-omitted"
    assert first.certain
    assert first.legs == ("6",)
    assert first.exercise == exercise("gm-angle-omitted")
    assert all(any(sign.isdigit() for sign in one.evidence) for one in (*talk.keep, *talk.work_on))
    assert len({one.cause for one in talk.work_on}) == 2


def test_a_mistake_is_named_only_where_the_diagnosis_names_one():
    _, finished, _ = demo()
    audits = [leg.audit for leg in finished.legs]
    works = with_work((), Shown(legs=audits, radius_m=30.0), Settings()).work_on
    assert len(works) == 2
    assert not any(work.certain for work in works)
    assert all("No mistake is named on leg" in work.evidence for work in works)
    assert all(work.cause in cause_pages() for work in works)


def test_nothing_walked_is_nothing_said():
    nothing = Shown(legs=[], radius_m=30.0, logged=True)
    assert to_keep(nothing, SETTINGS) == ()
    assert with_work((), nothing, Settings()).work_on == ()


def test_praise_has_its_figures():
    _, finished, _ = demo()
    audits = [leg.audit for leg in finished.legs]
    first, second = to_keep(Shown(legs=audits, radius_m=30.0, logged=True), SETTINGS)
    within = [leg.card.name for leg in audits if abs(leg.measures.azimuth_error_deg) <= 3.0]
    told = {first.what: first.evidence, second.what: second.evidence}
    assert "The azimuth held" in told
    assert f"legs {', '.join(within[:-1])} and {within[-1]}" in told["The azimuth held"]


def test_a_note_on_the_walkers_card_is_known_by_its_message():
    """Bug: a note was left out where a name in it read like one that the comparison has no use for."""
    assert _is_used(sentence("plan-on-no-leg", point="names no one, grid: old"))
    assert _is_used(sentence("plan-option", name="paces_per_100m", value="65", other="60"))
    assert not _is_used(sentence("plan-option", name="grid", value="auto", other="EPSG:32616"))
    assert not _is_used(sentence("plan-no-name", name="card"))
    assert not _is_used(sentence("plan-no-radius", radius="30"))


@pytest.mark.parametrize(
    ("entry", "holds"),
    [
        ({"paces": 322.0, "arrived": dt.time(14, 12)}, "The log says what was counted, which"),
        ({"magnetic_azimuth": MagneticAzimuth(33.0)}, "The log says what was set, which"),
        ({"arrived": dt.time(14, 12)}, "The log says when the legs ended"),
        ({"note": "rain"}, None),
    ],
)
def test_a_log_is_praised_for_what_it_holds(entry, holds):
    """Bug: "the log says what was set and counted" of a log of paces and times alone."""
    _, finished, _ = demo()
    log = WalkersLog(entries=(LogEntry(leg="1", **entry),))
    of = Shown(legs=[finished.legs[0].audit], radius_m=30.0, logged=True, log_holds=log_holds(log))
    said = [one.evidence for one in to_keep(of, CoachingSettings(things=9)) if one.skill == "log"]
    assert [one.startswith(holds) for one in said] == ([True] if holds else [])
