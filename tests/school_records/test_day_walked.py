"""Days of walks: by the recording, the plan's where the walk was begun on it or about it."""

from __future__ import annotations

import datetime as dt

import pytest

from audit.school_records.day_walked import day_walked

SEPTEMBER_19 = dt.date(2026, 9, 19)


def utc(day: int, hour: float) -> float:
    return dt.datetime(2026, 9, day, tzinfo=dt.UTC).timestamp() + 3600.0 * hour


@pytest.mark.parametrize(
    ("begun_s", "longitude_deg", "planned", "day"),
    [
        (utc(19, 14.0), -84.2, SEPTEMBER_19, SEPTEMBER_19),
        # The plan of the first day of three, used again on the third.
        (utc(21, 14.0), -84.2, SEPTEMBER_19, dt.date(2026, 9, 21)),
        # Nine in the evening in Kentucky is past midnight in Greenwich.
        (utc(20, 2.0), -84.2, None, SEPTEMBER_19),
        # Nine in the morning in Auckland is the evening before in Greenwich.
        (utc(18, 21.0), 174.8, None, SEPTEMBER_19),
        # A night course that is begun at half past one.
        (utc(20, 1.5), 0.0, SEPTEMBER_19, SEPTEMBER_19),
        (None, 0.0, SEPTEMBER_19, SEPTEMBER_19),
        (None, 0.0, None, None),
    ],
)
def test_a_walk_is_of_the_day_on_which_it_was_begun(begun_s, longitude_deg, planned, day) -> None:
    """Bug: a plan used on three days put all three walks on its own day."""
    assert day_walked(begun_s, longitude_deg, planned) == day


def test_a_walk_of_the_last_night_of_the_calendar_is_of_its_last_day() -> None:
    """Bug: by the sun of a place in the east it was beyond what a calendar tells: a fault."""
    assert day_walked(253_402_300_000.0, 174.8, None) == dt.date.max
