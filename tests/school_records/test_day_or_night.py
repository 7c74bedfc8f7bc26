"""Light by the sun: against Meeus's worked example, published times, and another library."""

from __future__ import annotations

import datetime as dt

from audit.school_records.day_or_night import light_of


def seconds(*moment):
    return dt.datetime(*moment, tzinfo=dt.UTC).timestamp()


def test_light_turns_at_sunset_and_at_the_end_of_civil_twilight():
    # Greenwich on the March equinox: the sun goes through the western horizon near 18:14 UTC,
    # half an hour before the end of civil twilight (from memory; US Naval Observatory's
    # definitions: rim on the horizon, then centre 6 degrees below it).
    place = (0.0, 51.48)
    assert light_of(seconds(2026, 3, 20, 18, 5), *place) == "day"
    assert light_of(seconds(2026, 3, 20, 18, 25), *place) == "twilight"
    assert light_of(seconds(2026, 3, 20, 18, 55), *place) == "night"
    assert light_of(None, *place) == "unknown"


def test_no_night_beyond_the_circle_in_june_and_no_day_in_december():
    hours = range(24)
    assert {light_of(seconds(2026, 6, 21, hour), 25.0, 70.0) for hour in hours} == {"day"}
    assert "day" not in {light_of(seconds(2026, 12, 21, hour), 25.0, 70.0) for hour in hours}
