"""The times of a walker's log as evidence of where his legs ended."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import replace

import numpy as np
import pytest
from debriefing.hand_walked import COURSE, plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk

import audit
from audit.settings import Settings
from audit.walkers_log import LogEntry, WalkersLog

POINTS = (*COURSE, (0.0, 300.0))
"""Three legs: 400 m east, 300 m north, 400 m west."""

WALK = HandWalk().halt(60).walk(90, 400).mark("1").halt(60).walk(0, 150).mark("stopped")
WALK.walk(90, 30).walk(270, 60).walk(90, 30).walk(0, 150).mark("2").halt(60)
WALK.walk(270, 400).mark("3").halt(60)
"""As planned, but that the walker looked about half way on leg 2, without a stop."""

BEYOND = HandWalk().halt(60).walk(90, 400).mark("1").halt(60).walk(0, 300).mark("2").halt(45)
BEYOND.walk(0, 200).mark("counted").halt(60).walk(180, 200).halt(60).walk(270, 400).mark("3")
BEYOND.halt(60)
"""As planned, but that leg 2 went on past its point by 200 m, and back to it."""

SURE = replace(Settings(), matching=replace(Settings().matching, cost_against_noted=60.0))
"""A log that is hardly ever wrong, so that no leg hangs on what the recording makes of it."""

AS_STOPPED = ("1", "stopped", "3")


def clock(time_s: float, *, zone_h: float = 0.0, fast_s: float = 0.0) -> dt.time:
    zone = dt.timezone(dt.timedelta(hours=zone_h))
    return dt.datetime.fromtimestamp(time_s + fast_s, zone).time().replace(microsecond=0)


def debriefed(
    *arrived: dt.time | dt.datetime | None,
    settings: Settings = SURE,
    walk: HandWalk = WALK,
    paces: tuple[float | None, ...] = (None, None, None),
) -> audit.Debrief:
    entries = tuple(
        LogEntry(leg=str(n + 1), arrived=at, paces=count)
        for n, (at, count) in enumerate(zip(arrived, paces, strict=True))
    )
    places = np.array(walk.places)
    track = track_of(BEGIN + np.arange(len(places)), places)
    plan, log = plan_of(*POINTS, paces_per_100m=65.0), WalkersLog(entries=entries)
    return audit.debrief(plan, track, log=log, settings=settings)


def claims(debrief: audit.Debrief) -> list[float]:
    return [leg.portion.claim_s for leg in debrief.legs]


def heard(debrief: audit.Debrief) -> list[str]:
    return [note for note in debrief.quality.notes if "walker's log moved the end" in note]


ALONE = debriefed(None, None, None)


def test_without_times_the_leg_ends_at_its_point() -> None:
    expected = [WALK.marks[mark] for mark in ("1", "2", "3")]
    assert claims(ALONE) == pytest.approx(expected, abs=10.0)
    assert not heard(ALONE)


@pytest.mark.parametrize("zone_h", [0.0, -4.0, -6.0])
@pytest.mark.parametrize("fast_s", [0.0, 420.0])
def test_a_time_noted_where_the_walker_stopped_ends_the_leg_there(zone_h, fast_s) -> None:
    """Two other legs say what the watch shows: its zone, and that it is seven minutes fast."""
    times = [clock(WALK.marks[mark], zone_h=zone_h, fast_s=fast_s) for mark in AS_STOPPED]
    debrief = debriefed(*times)
    expected = [WALK.marks[mark] for mark in AS_STOPPED]
    assert claims(debrief) == pytest.approx(expected, abs=15.0)
    (note,) = heard(debrief)
    ends = dt.datetime.fromtimestamp(claims(ALONE)[1], dt.UTC)
    assert f"of leg 2 from {ends:%H:%M}:" in note
    assert f"--claim 2={ends:%H:%M}:" in note


@pytest.mark.parametrize("zone_h", [12.0, -11.0])
def test_a_watch_far_from_utc_has_all_its_moments_on_the_day_of_the_walk(zone_h) -> None:
    """Bug: half of the moments of a watch 12 hours off lay a day off the other half, unheard."""
    anywhere = replace(SURE, quality=replace(SURE.quality, zone_off_most_h=24.0))
    times = [clock(WALK.marks[mark], zone_h=zone_h) for mark in AS_STOPPED]
    expected = [WALK.marks[mark] for mark in AS_STOPPED]
    assert claims(debriefed(*times, settings=anywhere)) == pytest.approx(expected, abs=15.0)


def test_a_zone_on_the_other_side_of_the_earth_explains_no_log() -> None:
    """Bug: among 40 zones one fits the log of any walk, which then pulled legs down."""
    times = [clock(WALK.marks[mark], zone_h=9.0) for mark in AS_STOPPED]
    assert claims(debriefed(*times)) == claims(ALONE)


def test_times_of_the_find_agree_with_a_match_of_either_kind() -> None:
    """Who writes down when he found the point says nothing of where his count ended."""
    debrief = debriefed(*(clock(WALK.marks[mark] + 30.0) for mark in ("1", "2", "3")))
    assert claims(debrief) == claims(ALONE)
    assert not heard(debrief)


def test_one_wrong_time_among_right_ones_moves_no_leg() -> None:
    """A note may be wrong, one in a hundred: what the recording shows plainly stays."""
    wrong = clock(WALK.marks["3"] - 160.0)
    times = clock(WALK.marks["1"]), clock(WALK.marks["2"]), wrong
    assert claims(debriefed(*times, settings=Settings())) == claims(ALONE)


def test_times_that_no_clock_explains_are_not_heard() -> None:
    """Three moments, each off by another number of minutes: no watch ran like that."""
    off_s = (700.0, -800.0, 1500.0)
    times = [clock(WALK.marks[mark] + off) for mark, off in zip("123", off_s, strict=True)]
    debrief = debriefed(*times)
    assert claims(debrief) == claims(ALONE)
    assert not heard(debrief)


def test_a_date_of_another_day_leaves_the_time_of_day() -> None:
    day = dt.timedelta(days=1)
    times = [dt.datetime.fromtimestamp(WALK.marks[mark], dt.UTC) - day for mark in AS_STOPPED]
    assert claims(debriefed(*times))[1] == pytest.approx(WALK.marks["stopped"], abs=15.0)


@pytest.mark.parametrize(("counted_m", "ends"), [(500.0, "counted"), (300.0, "2")])
def test_a_time_that_the_count_leads_to_ends_the_leg_where_it_was_noted(counted_m, ends) -> None:
    """Bug: a leg of 1.6 times its distance by count and time ended at the point that it passed.

    A time alone may be that of the find, or of writing it down: the count says which.
    """
    noted = [clock(BEYOND.marks[mark]) for mark in ("1", "counted", "3")]
    paces = (None, counted_m * 0.65, None)
    debrief = debriefed(*noted, walk=BEYOND, paces=paces, settings=Settings())
    assert claims(debrief)[1] == pytest.approx(BEYOND.marks[ends], abs=20.0)


def test_a_leg_left_out_that_the_log_says_was_walked_is_less_surely_left_out() -> None:
    """Bug: "the points taken in another order (89 %)" of a leg with count and time in the log."""
    walk = HandWalk().halt(60).walk(90, 400).mark("1").halt(60).mark("left")
    walk.walk(math.degrees(math.atan2(-4.0, 3.0)), 500).mark("3").halt(60)
    ended = clock(walk.marks["1"])
    noted = clock(walk.marks["left"] + 180.0)
    alone, beside = (
        debriefed(ended, at, None, walk=walk, settings=Settings()).legs[1] for at in (None, noted)
    )
    assert alone.portion.status == beside.portion.status == "skipped"
    assert beside.portion.confidence < alone.portion.confidence - 0.1
