"""Sunrise, sunset and civil twilight at a place, by the low-precision solar formulae of Meeus.

J. Meeus, Astronomical Algorithms (2nd edition, 1998), chapter 25 for the sun's place and
chapter 28 for the equation of time; good to some ten seconds between the polar circles.
Refraction and the sun's radius put the rim on the horizon at -0.833 degrees (chapter 15).
"""

from __future__ import annotations

import datetime as dt
import math
from typing import Literal

from audit.course_setting.records import Daylight
from audit.units import direction_degrees, turn_degrees

_RIM_DEG, _CIVIL_DEG = -0.833, -6.0
_J2000 = dt.datetime(2000, 1, 1, 12, tzinfo=dt.UTC)
_ROUNDS = 5
"""The sun moves between noon and its setting; each round halves what that leaves by far."""


def daylight(date: dt.date, longitude_deg: float, latitude_deg: float) -> Daylight:
    """Give the sun's times of the solar day around local noon of a date, in UTC."""
    noon = _noon(date, longitude_deg)
    dawn, dusk = (_passage(noon, latitude_deg, _CIVIL_DEG, s) for s in (-1, 1))
    rise, setting = (_passage(noon, latitude_deg, _RIM_DEG, s) for s in (-1, 1))
    always: Literal["", "light", "dark"] = ""
    if rise is None or setting is None:
        rise = setting = None
        always = "light" if latitude_deg * sun_declination_deg(noon) > 0.0 else "dark"
    return Daylight(
        civil_dawn=dawn,
        sunrise=rise,
        sunset=setting,
        civil_dusk=dusk,
        always=always,
    )


def sun_declination_deg(moment: dt.datetime) -> float:
    """Give the sun's apparent declination."""
    obliquity, apparent_longitude, _ = _sun(moment)
    return math.degrees(
        math.asin(math.sin(math.radians(obliquity)) * math.sin(math.radians(apparent_longitude)))
    )


def sun_right_ascension_deg(moment: dt.datetime) -> float:
    """Give the sun's apparent right ascension in [0, 360)."""
    obliquity, apparent_longitude, _ = _sun(moment)
    return _right_ascension_deg(obliquity, apparent_longitude)


def equation_of_time_s(moment: dt.datetime) -> float:
    """Give apparent less mean solar time."""
    obliquity, apparent_longitude, mean_longitude = _sun(moment)
    nutation = _nutation_deg(moment) * math.cos(math.radians(obliquity))
    mean = mean_longitude - 0.0057183 + nutation
    off = turn_degrees(_right_ascension_deg(obliquity, apparent_longitude), mean)
    return 240.0 * off


def _sun(moment: dt.datetime) -> tuple[float, float, float]:
    """Give obliquity (corrected), apparent longitude and mean longitude, in degrees."""
    t = _centuries(moment)
    mean_longitude = 280.46646 + t * (36000.76983 + t * 0.0003032)
    anomaly = math.radians(357.52911 + t * (35999.05029 - t * 0.0001537))
    centre = (
        (1.914602 - t * (0.004817 + t * 0.000014)) * math.sin(anomaly)
        + (0.019993 - t * 0.000101) * math.sin(2.0 * anomaly)
        + 0.000289 * math.sin(3.0 * anomaly)
    )
    apparent = mean_longitude + centre - 0.00569 + _nutation_deg(moment)
    obliquity = 23.4392911 - t * (0.0130042 + t * 1.64e-7) + 0.00256 * math.cos(_node(moment))
    return obliquity, apparent, mean_longitude


def _centuries(moment: dt.datetime) -> float:
    return (moment - _J2000).total_seconds() / 86400.0 / 36525.0


def _node(moment: dt.datetime) -> float:
    """Give the longitude of the moon's ascending node, in radians."""
    return math.radians(125.04 - 1934.136 * _centuries(moment))


def _nutation_deg(moment: dt.datetime) -> float:
    return -0.00478 * math.sin(_node(moment))


def _right_ascension_deg(obliquity_deg: float, longitude_deg: float) -> float:
    longitude = math.radians(longitude_deg)
    east = math.cos(math.radians(obliquity_deg)) * math.sin(longitude)
    return direction_degrees(east, math.cos(longitude))


def _noon(date: dt.date, longitude_deg: float) -> dt.datetime:
    """Give the moment at which the sun stands highest on a date of the place's own day."""
    mean = dt.datetime(date.year, date.month, date.day, 12, tzinfo=dt.UTC) - dt.timedelta(
        seconds=240.0 * longitude_deg
    )
    return mean - dt.timedelta(seconds=equation_of_time_s(mean))


def _passage(
    noon: dt.datetime, latitude_deg: float, height_deg: float, side: int
) -> dt.datetime | None:
    """Give when the sun passes a height before (-1) or after (1) noon; None where it does not."""
    moment = noon
    for _ in range(_ROUNDS):
        declination = math.radians(sun_declination_deg(moment))
        latitude = math.radians(min(max(latitude_deg, -89.9), 89.9))
        cosine = math.sin(math.radians(height_deg)) - math.sin(latitude) * math.sin(declination)
        cosine /= math.cos(latitude) * math.cos(declination)
        if abs(cosine) > 1.0:
            return None
        hours_s = 240.0 * math.degrees(math.acos(cosine))
        transit = noon + dt.timedelta(seconds=equation_of_time_s(noon) - equation_of_time_s(moment))
        moment = transit + dt.timedelta(seconds=side * hours_s)
    return moment
