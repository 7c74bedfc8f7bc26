"""A leg that by count and time of the log ended before it is taken to have ended."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from debriefing.hand_walked import COURSE, plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk

import audit
from audit.settings import Settings
from audit.walkers_log import LogEntry, WalkersLog

SHORT_M = 200.0
STOPPED = HandWalk().halt(60).walk(90, SHORT_M)
ENDED_S = BEGIN + len(STOPPED.places) - 1.0
SEARCHED = STOPPED.walk(0, 40).walk(90, 40).walk(180, 80).walk(270, 80).walk(0, 80).walk(90, 40)
FOUND = SEARCHED.walk(180, 40).walk(90, 200).halt(60)
WALKED = np.array(FOUND.walk(0, 300).halt(60).places)
TIME_S = BEGIN + np.arange(len(WALKED))
RATE = 65.0


PLAIN = Settings()
UNHEARD = replace(
    PLAIN,
    matching=replace(PLAIN.matching, cost_against_noted=0.0, cost_against_counted=0.0),
    quality=replace(PLAIN.quality, log_at_odds=1.0),
)
"""As if the recording spoke against the log so much that no match goes by it."""


def debriefed(paces, arrived, *others, settings=UNHEARD) -> audit.Debrief:
    """Debrief a walk that stopped half way on leg 1, looked about and walked on to the point."""
    first = LogEntry(leg="1", paces=paces, arrived=arrived)
    plan, log = plan_of(*COURSE, paces_per_100m=RATE), WalkersLog(entries=(first, *others))
    return audit.debrief(plan, track_of(TIME_S, WALKED), log=log, settings=settings)


def moment(time_s, zone_h=0.0) -> dt.datetime:
    return dt.datetime.fromtimestamp(time_s, dt.timezone(dt.timedelta(hours=zone_h)))


def second(zone_h=0.0, *, zoned=False) -> LogEntry:
    """What was noted of leg 2, which was walked as planned."""
    there = moment(BEGIN + len(WALKED) - 61.0, zone_h)
    return LogEntry(leg="2", paces=3.0 * RATE, arrived=there if zoned else there.time())


@pytest.mark.parametrize("zone_h", [0.0, -4.0, -6.0])
@pytest.mark.parametrize("zoned", [True, False])
def test_where_count_and_time_meet_the_leg_ended(zone_h, zoned) -> None:
    """Bug: told as hardly sure, and not measured where the walker says that he ended it."""
    noted = moment(ENDED_S, zone_h)
    debrief = debriefed(
        SHORT_M * RATE / 100.0,
        noted if zoned else noted.time(),
        second(zone_h, zoned=zoned),
        settings=PLAIN,
    )
    leg, other = debrief.legs
    assert leg.portion.claim_s == pytest.approx(ENDED_S, abs=30.0)
    assert other.audit.confidence > 0.9
    assert any("moved the end of leg 1" in note for note in debrief.quality.notes)


@pytest.mark.parametrize(
    ("share", "late_s", "sure"), [(1.0, 0.0, False), (0.75, 0.0, False), (0.5, None, True)]
)
def test_a_time_at_odds_with_a_leg_makes_it_less_sure_and_a_count_alone_does_not(
    share, late_s, sure
) -> None:
    arrived = None if late_s is None else moment(ENDED_S + late_s)
    noted = share * 4.0 * RATE, arrived, second(zoned=True)
    debrief = debriefed(*noted, settings=PLAIN)
    leg = debrief.legs[0]
    told = leg.doubt is not None or any("moved the end" in one for one in debrief.quality.notes)
    assert (leg.audit.confidence > 0.8) is sure
    assert told is not sure


@pytest.mark.parametrize("zone_h", [0.0, -4.0, 5.75])
@pytest.mark.parametrize("zoned", [True, False])
def test_count_and_time_of_the_log_that_meet_short_of_the_point_are_told(zone_h, zoned) -> None:
    """Bug: "arrived, 1 m off", and "the walk shows nothing of it", of a leg that ended half way."""
    noted = moment(ENDED_S, zone_h)
    debrief = debriefed(
        SHORT_M * RATE / 100.0, noted if zoned else noted.time(), second(zone_h, zoned=zoned)
    )
    leg, other = debrief.legs
    assert leg.portion.claim_s > ENDED_S + 300.0, "the match takes stop, search and way on as one"
    assert leg.audit.confidence <= 0.1
    assert other.audit.confidence > 0.9
    assert f"--claim 1={moment(ENDED_S):%H:%M:%S}Z" in leg.doubt
    assert "200 m from its start" in leg.doubt
    assert any(leg.doubt in note for note in debrief.quality.notes)
    assert not any("shows nothing of it" in said for said in leg.steps.sentences)
    assert not any("1" in keep.legs for keep in debrief.coaching.keep)
    assert leg.causes[0].cause == "cannot-tell"


@pytest.mark.parametrize(("share", "late_s"), [(1.0, 0.0), (0.5, 240.0), (0.75, 0.0), (0.5, None)])
def test_a_log_of_which_only_count_or_time_meets_changes_nothing(share, late_s) -> None:
    """The count of the card's, another moment, another count, and no moment at all."""
    arrived = None if late_s is None else moment(ENDED_S + late_s)
    debrief = debriefed(share * 4.0 * RATE, arrived, second(zoned=True))
    assert debrief.legs[0].audit.confidence > 0.9
    assert debrief.legs[0].doubt is None


def test_one_time_of_a_watch_without_a_zone_settles_nothing_that_its_claim_explains() -> None:
    claim_s = debriefed(None, None).legs[0].audit.measures.claim.time_s
    arrived = (moment(claim_s, 2.0)).time()
    assert debriefed(2.0 * RATE, arrived).legs[0].doubt is None


def test_the_day_noted_is_told_where_the_moment_is_told_with_the_count() -> None:
    """Bug: a log of the day before was taken for the time of day alone, without a word."""
    noted = moment(ENDED_S) - dt.timedelta(days=1)
    debrief = debriefed(SHORT_M * RATE / 100.0, noted, second(zoned=True))
    assert debrief.legs[0].doubt is not None
    assert any(f"{noted:%Y-%m-%d}" in note for note in debrief.quality.notes)
