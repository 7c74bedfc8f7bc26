"""The sun's place against a printed worked example, its height against another library."""

from __future__ import annotations

import datetime as dt

import pytest
from astral import Observer
from astral.sun import elevation

from audit.sun import sun_height_deg, sun_place

# J. Meeus, Astronomical Algorithms, example 25.a: 1992 October 13.0 TD (from memory).
MEEUS_25A = dt.datetime(1992, 10, 13, tzinfo=dt.UTC).timestamp()


def test_the_suns_place_is_that_of_the_worked_example():
    place = sun_place(MEEUS_25A)
    assert place.right_ascension_deg == pytest.approx(198.38083, abs=2e-4)  # deg
    assert place.declination_deg == pytest.approx(-7.78507, abs=2e-4)  # deg


def test_the_equation_of_time_is_that_of_the_worked_example():
    # J. Meeus, example 28.a: 13 min 42.7 s for the same moment (from memory).
    assert sun_place(MEEUS_25A).equation_of_time_s == pytest.approx(13 * 60 + 42.7, abs=1.5)


@pytest.mark.parametrize("latitude", [-70.0, -33.0, 0.0, 36.6, 52.0, 68.0])
def test_another_library_gives_the_same_height(latitude):
    for month in (1, 3, 6, 9, 12):
        for hour in range(0, 24, 3):
            moment = dt.datetime(2026, month, 21, hour, 17, tzinfo=dt.UTC)
            theirs = elevation(Observer(latitude, -84.2), moment, with_refraction=False)
            ours = sun_height_deg(moment.timestamp(), -84.2, latitude)
            assert ours == pytest.approx(theirs, abs=0.03)  # deg
