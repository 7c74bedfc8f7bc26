"""Light by the sun: against Meeus's worked example, published times, and another library."""

from __future__ import annotations

import datetime as dt
import math

import pytest
from astral import Observer
from astral.sun import elevation

from audit.school_records.sun_height import light_at, sun_height_deg, sun_place


def seconds(*moment):
    return dt.datetime(*moment, tzinfo=dt.UTC).timestamp()


def test_the_worked_example_of_the_book():
    # J. Meeus, Astronomical Algorithms, example 25.a: 1992 October 13, 0 h TD (JDE 2448908.5).
    declination, right_ascension = sun_place(2448908.5 - 2451545.0)
    assert math.degrees(right_ascension) == pytest.approx(198.38083, abs=2e-4)  # deg
    assert math.degrees(declination) == pytest.approx(-7.78507, abs=2e-4)  # deg


@pytest.mark.parametrize("latitude", [-70.0, -33.0, 0.0, 36.6, 52.0, 68.0])
def test_another_library_gives_the_same_height(latitude):
    for month in (1, 3, 6, 9, 12):
        for hour in range(0, 24, 3):
            moment = dt.datetime(2026, month, 21, hour, 17, tzinfo=dt.UTC)
            theirs = elevation(Observer(latitude, -84.2), moment, with_refraction=False)
            ours = sun_height_deg(moment.timestamp(), -84.2, latitude)
            assert ours == pytest.approx(theirs, abs=0.03)  # deg


def test_light_turns_at_sunset_and_at_the_end_of_civil_twilight():
    # Greenwich on the March equinox: the sun goes through the western horizon near 18:14 UTC,
    # half an hour before the end of civil twilight (from memory; US Naval Observatory's
    # definitions: rim on the horizon, then centre 6 degrees below it).
    place = (0.0, 51.48)
    assert light_at(seconds(2026, 3, 20, 18, 5), *place) == "day"
    assert light_at(seconds(2026, 3, 20, 18, 25), *place) == "twilight"
    assert light_at(seconds(2026, 3, 20, 18, 55), *place) == "night"
    assert light_at(None, *place) == "unknown"


def test_no_night_beyond_the_circle_in_june_and_no_day_in_december():
    hours = range(24)
    assert {light_at(seconds(2026, 6, 21, hour), 25.0, 70.0) for hour in hours} == {"day"}
    assert "day" not in {light_at(seconds(2026, 12, 21, hour), 25.0, 70.0) for hour in hours}
