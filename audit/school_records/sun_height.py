"""Day or night: the height of the sun at a place, by the low-precision formulae of Meeus.

J. Meeus, Astronomical Algorithms (2nd edition, 1998): the sun's place by chapter 25, to
0.01 degrees; sidereal time by chapter 12; height by chapter 13.
"""

from __future__ import annotations

import math

from audit.school_records.attempt import Light
from audit.settings import RecordsSettings
from audit.units import direction_degrees

_J2000_S = 946_728_000.0
"""2000-01-01T12:00:00Z in seconds since 1970."""


def light_at(
    time_s: float | None,
    longitude_deg: float,
    latitude_deg: float,
    settings: RecordsSettings | None = None,
) -> Light:
    """Tell what light a moment has, in seconds since 1970; "unknown" without one."""
    if time_s is None:
        return "unknown"
    limits = settings or RecordsSettings()
    height = sun_height_deg(time_s, longitude_deg, latitude_deg)
    if height > limits.sun_up_deg:
        return "day"
    return "night" if height < limits.civil_dusk_deg else "twilight"


def sun_height_deg(time_s: float, longitude_deg: float, latitude_deg: float) -> float:
    """Give the height of the sun's centre over the true horizon, refraction left out."""
    days = (time_s - _J2000_S) / 86400.0
    declination, right_ascension = sun_place(days)
    sidereal = math.radians(280.46061837 + 360.98564736629 * days + longitude_deg)
    hour_angle = sidereal - right_ascension
    latitude = math.radians(latitude_deg)
    sine = math.sin(latitude) * math.sin(declination)
    sine += math.cos(latitude) * math.cos(declination) * math.cos(hour_angle)
    return math.degrees(math.asin(min(1.0, max(-1.0, sine))))


def sun_place(days: float) -> tuple[float, float]:
    """Give apparent declination and right ascension in radians, days after 2000-01-01 12 h."""
    t = days / 36525.0
    mean_longitude = 280.46646 + t * (36000.76983 + t * 0.0003032)
    anomaly = math.radians(357.52911 + t * (35999.05029 - t * 0.0001537))
    node = math.radians(125.04 - 1934.136 * t)
    centre = (1.914602 - t * (0.004817 + t * 0.000014)) * math.sin(anomaly)
    centre += (0.019993 - t * 0.000101) * math.sin(2.0 * anomaly) + 0.000289 * math.sin(3 * anomaly)
    longitude = math.radians(mean_longitude + centre - 0.00569 - 0.00478 * math.sin(node))
    obliquity = math.radians(23.4392911 - 0.0130042 * t + 0.00256 * math.cos(node))
    declination = math.asin(math.sin(obliquity) * math.sin(longitude))
    east, north = math.cos(obliquity) * math.sin(longitude), math.cos(longitude)
    return declination, math.radians(direction_degrees(east, north))
