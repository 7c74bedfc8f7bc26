"""Simulated walks: at walking pace, marked as such, and debriefed for what they are."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from rehearsal.courses import card, only, rehearsed

from audit.errors import InputRefusedError
from audit.rehearsal.teaching_tracks import course_track, leg_track
from audit.reports.rehearsal_gpx import course_gpx, leg_gpx
from audit.settings import RehearsalSettings

SETTINGS = RehearsalSettings()


def test_a_leg_is_walked_at_the_pace_said_with_halts():
    way = only(rehearsed().legs[0], "gm-angle-omitted").way
    made = leg_track(card(), way, SETTINGS)
    step = np.hypot(*np.diff(made.places, axis=0).T)
    assert step.max() <= SETTINGS.walking_m_s * SETTINGS.fix_s + 1e-9
    assert (step == 0.0).sum() >= 2 * SETTINGS.halt_s / SETTINGS.fix_s - 2
    assert made.places[0] == pytest.approx(way.line[0])
    assert made.places[-1] == pytest.approx(way.line[-1])
    assert np.unique(np.diff(made.time_s)) == pytest.approx([SETTINGS.fix_s])


@pytest.mark.parametrize("leg", [0, 1, 2])
@pytest.mark.parametrize("cause", ["gm-angle-reversed", "veer", "point-skipped", "order-changed"])
def test_a_whole_walk_ends_at_the_last_point(leg, cause):
    found = [end for end in rehearsed().legs[leg].ends if end.way.cause == cause]
    if not found:
        pytest.skip("nothing follows the last leg")
    made = course_track(card(), leg, found[0].way, SETTINGS)
    last = card().legs[-1].line[-1]
    assert made.places[-1] == pytest.approx(last)


def test_tracks_say_that_nobody_walked_them():
    leg = rehearsed().legs[0]
    text = leg_gpx(card(), leg, SETTINGS)
    tracks = text.count("<trk>")
    assert tracks == len({end.way.cause for end in leg.ends})
    assert text.count("<name>SIMULATED") == tracks + 1
    assert text.count("<time>") > 1000
    whole = course_gpx(card(), 0, only(leg, "gm-angle-omitted"), SETTINGS)
    assert whole.count("<trk>") == 1
    assert "<name>SIMULATED leg 1: the grid-magnetic angle left out (7.5° left)" in whole


@pytest.mark.parametrize(("source", "place"), [("plan", "course, date"), ("option", "option date")])
def test_a_walk_past_the_end_of_the_calendar_is_refused_with_its_date(source, place):
    """Bug: a simulated walk past 31 December 9999 ended the rehearsal as a fault."""
    last_day = replace(card(), date=dt.date(9999, 12, 31), date_source=source)
    way = only(rehearsed().legs[0], "gm-angle-omitted").way
    assert leg_track(last_day, way, SETTINGS).time_s[-1] < 253_402_300_800.0
    slowly = replace(SETTINGS, walking_m_s=0.01)
    with pytest.raises(InputRefusedError) as refused:
        leg_track(last_day, way, slowly)
    (problem,) = refused.value.problems
    assert (problem.place, problem.value) == (place, "9999-12-31")
    assert "too near the end of the calendar for a simulated walk of 17 hours" in problem.rule
