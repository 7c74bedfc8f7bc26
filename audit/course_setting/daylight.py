"""Sunrise, sunset and civil twilight at a place.

Refraction and the sun's radius put the rim on the horizon at -0.833 degrees (J. Meeus,
Astronomical Algorithms, 2nd edition, 1998, chapter 15).
"""

from __future__ import annotations

import datetime as dt
import math
from typing import Literal

from audit.course_setting.checked_lanes import Daylight
from audit.sun import SunPlace, sun_place

CIVIL_DEG = -6.0
"""Height of the sun's middle at civil dawn and dusk."""
_RIM_DEG = -0.833
_ROUNDS = 5
"""The sun moves between noon and its setting; each round halves what that leaves by far."""


def daylight(date: dt.date, longitude_deg: float, latitude_deg: float) -> Daylight:
    """Give the sun's times of the solar day around local noon of a date, in UTC."""
    noon = _noon(date, longitude_deg)
    dawn, dusk = (_passage(noon, latitude_deg, CIVIL_DEG, s) for s in (-1, 1))
    rise, setting = (_passage(noon, latitude_deg, _RIM_DEG, s) for s in (-1, 1))
    always: Literal["", "light", "dark"] = ""
    if rise is None or setting is None:
        rise = setting = None
        always = "light" if latitude_deg * _sun(noon).declination_deg > 0.0 else "dark"
    return Daylight(
        civil_dawn=dawn,
        sunrise=rise,
        sunset=setting,
        civil_dusk=dusk,
        always=always,
    )


def _sun(moment: dt.datetime) -> SunPlace:
    return sun_place(moment.timestamp())


def _noon(date: dt.date, longitude_deg: float) -> dt.datetime:
    """Give the moment at which the sun stands highest on a date of the place's own day."""
    mean = dt.datetime(date.year, date.month, date.day, 12, tzinfo=dt.UTC) - dt.timedelta(
        seconds=240.0 * longitude_deg
    )
    return mean - dt.timedelta(seconds=_sun(mean).equation_of_time_s)


def _passage(
    noon: dt.datetime, latitude_deg: float, height_deg: float, side: int
) -> dt.datetime | None:
    """Give when the sun passes a height before (-1) or after (1) noon; None where it does not."""
    moment = noon
    for _ in range(_ROUNDS):
        declination = math.radians(_sun(moment).declination_deg)
        latitude = math.radians(min(max(latitude_deg, -89.9), 89.9))
        cosine = math.sin(math.radians(height_deg)) - math.sin(latitude) * math.sin(declination)
        cosine /= math.cos(latitude) * math.cos(declination)
        if abs(cosine) > 1.0:
            return None
        hours_s = 240.0 * math.degrees(math.acos(cosine))
        later_s = _sun(noon).equation_of_time_s - _sun(moment).equation_of_time_s
        transit = noon + dt.timedelta(seconds=later_s)
        moment = transit + dt.timedelta(seconds=side * hours_s)
    return moment
