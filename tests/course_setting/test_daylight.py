"""Sunrise and sunset against published tables and another library."""

from __future__ import annotations

import datetime as dt

import astral
import pytest
from astral import sun

from audit.course_setting.daylight import daylight


@pytest.mark.parametrize("latitude", [-54.8, -33.0, 0.0, 36.6, 51.5, 64.0])
@pytest.mark.parametrize("longitude", [-84.2, 0.0, 151.2])
@pytest.mark.parametrize("day", ["2026-03-20", "2026-06-21", "2026-09-19", "2026-12-21"])
def test_times_are_those_of_another_library(latitude, longitude, day):
    date = dt.date.fromisoformat(day)
    here = astral.Observer(latitude, longitude, 0.0)
    found = daylight(date, longitude, latitude)
    for name, moment in (
        ("dawn", found.civil_dawn), ("sunrise", found.sunrise),
        ("sunset", found.sunset), ("dusk", found.civil_dusk),
    ):  # fmt: skip
        try:
            near = [
                getattr(sun, name)(here, date + dt.timedelta(days=shift)) for shift in (-1, 0, 1)
            ]
        except ValueError:
            assert moment is None
            continue
        assert moment is not None
        off = min(abs((moment - one).total_seconds()) for one in near)
        # The library takes the place of the sun at the hour of an earlier guess.
        assert off < 90.0, name


def test_sun_that_does_not_set_and_does_not_rise():
    # By rule: beyond 66.6 degrees of latitude, at the solstices.
    summer = daylight(dt.date(2026, 6, 21), 25.0, 70.0)
    assert (summer.always, summer.sunset) == ("light", None)
    winter = daylight(dt.date(2026, 12, 21), 25.0, 70.0)
    assert (winter.always, winter.sunrise) == ("dark", None)
    assert winter.civil_dawn is not None  # civil twilight comes up to 72 degrees or so
    south = daylight(dt.date(2026, 12, 21), 0.0, -70.0)
    assert south.always == "light"
