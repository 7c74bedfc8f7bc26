"""Any plan that reads, with any track that reads, gives a result of the schema, or a refusal."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

import pytest
from hostile.any_walk import AnyWalk, any_walks, outcome_of
from hostile.strained_course import (
    BASE,
    ORDINARY,
    PLACES,
    STRAINED,
    Fix,
    plan_text,
    shifted,
    stamp,
    walk,
)
from hypothesis import HealthCheck, given, settings

from audit.classroom.walk_time import roster_start_s
from audit.moments import calendar_moment, utc_text
from audit.readers.gpx_track import read_track
from audit.words import PLAIN_ENGLISH
from audit.words.figures import Moment


def outcome(folder: Path, plan: str, fixes: Sequence[Fix], *, page: bool = False) -> str:
    return outcome_of(folder, AnyWalk(ending="toml", plan=plan, fixes=[*fixes], log="", page=page))


@pytest.mark.parametrize("name", PLACES)
def test_a_walk_is_a_walk_anywhere(tmp_path, name):
    places = PLACES[name]
    # The recordings end in mid-stride, a step before the last point; this one on an arc.
    told = {"walked walked"} | ({"walked unfinished"} if name == "from the north pole" else set())
    assert outcome(tmp_path, plan_text(places), walk(places)) in told


@pytest.mark.parametrize("name", STRAINED)
def test_a_strained_walk_gives_a_result_or_a_refusal(tmp_path, name):
    plan, fixes, expected = STRAINED[name]
    found = outcome(tmp_path, plan, fixes)
    assert not expected or found in expected


# Found by strain; each stopped the page with a fault of the program.


def test_a_gap_of_centuries_stops_no_page(tmp_path):
    assert outcome(tmp_path, plan_text(BASE), shifted(2.5e11), page=True) == "skipped walked"


def test_heights_of_no_place_on_earth_are_missing(tmp_path):
    fixes = [
        (north, east, time, (-1e300, 1e300)[number % 2])
        for number, (north, east, time, _) in enumerate(ORDINARY)
    ]
    assert outcome(tmp_path, plan_text(BASE), fixes, page=True) == "walked walked"
    assert any("elevations" in note for note in read_track(tmp_path / "walk.gpx").notes)


def test_two_fixes_half_the_world_apart_are_no_fault(tmp_path):
    # Found by the structure-aware fuzzing below: a piece of the recording without a fix.
    places = [(0.0, -180.0), (0.0, -179.9921875)]
    fixes: list[Fix] = [(0.0, -180.0, stamp(0.0), None), (-1.7, 117.1, stamp(1.0), None)]
    assert outcome(tmp_path, plan_text(places), fixes) == "not-started"


def test_moments_beyond_the_calendar_are_told_as_its_ends():
    # Found by the structure-aware fuzzing below, with clocks in the years 9892 and 2026.
    assert utc_text(4.98e11) == "9999-12-31T23:59:59Z"
    assert utc_text(-4.98e11) == "0001-01-01T00:00:00Z"
    assert Moment(time_s=4.98e11, day=True).shown(PLAIN_ENGLISH) == "9999-12-31T23:59:59Z"
    assert Moment(time_s=-4.98e11).shown(PLAIN_ENGLISH) == "00:00:00Z"
    assert Moment(time_s=-6.21e10, day=True).shown(PLAIN_ENGLISH) == "0002-02-17T00:00:00Z"
    assert calendar_moment(4.98e11) == dt.datetime(9999, 12, 31, 23, 59, 59, tzinfo=dt.UTC)


@pytest.mark.parametrize(
    ("near_s", "day"), [(2.534023e11, (9999, 12, 31)), (-6.21355968e10, (1, 1, 1))]
)
def test_a_clock_time_of_a_roster_is_of_a_day_that_there_is(near_s, day):
    found = roster_start_s(dt.time(8, 0), near_s)
    assert found == dt.datetime(*day, 8, tzinfo=dt.UTC).timestamp()


def test_a_free_course_of_points_on_one_heap_is_refused(tmp_path):
    # Found by the structure-aware fuzzing: no way from point to point was left to weigh.
    places = [(0.0, -180.0), (0.0, -179.99985)]
    plan = plan_text(places, 'order = "free"\n')
    assert outcome(tmp_path, plan, walk(places)) == "refused"
    apart = plan_text([(0.0, -180.0), (0.0, -179.9995)], 'order = "free"\n')
    assert outcome(tmp_path, apart, walk([(0.0, -180.0), (0.0, -179.9995)])) != "refused"


# Structure-aware fuzzing; by hand and at night thousands: tests/fuzz/whole_walks.py


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(walk=any_walks())
def test_whatever_reads_gives_a_result_of_the_schema(tmp_path_factory, walk):
    outcome_of(tmp_path_factory.mktemp("any"), walk)
