"""Where the sun stands, by the low-precision formulae of Meeus.

J. Meeus, Astronomical Algorithms (2nd edition, 1998): the sun's place by chapter 25, to
0.01 degrees; sidereal time by chapter 12; height by chapter 13; the equation of time by
chapter 28. Between the polar circles its rising and setting come out to some ten seconds.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from audit.units import direction_degrees, turn_degrees

J2000_S = 946_728_000.0
"""2000-01-01T12:00:00Z in seconds since 1970."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SunPlace:
    """The apparent place of the sun.

    Attributes
    ----------
    declination_deg, right_ascension_deg : float
    equation_of_time_s : float
        Apparent less mean solar time.
    """

    declination_deg: float
    right_ascension_deg: float
    equation_of_time_s: float


def sun_place(time_s: float) -> SunPlace:
    """Give the sun's place at a moment in seconds since 1970."""
    t = (time_s - J2000_S) / 86400.0 / 36525.0
    mean_longitude = 280.46646 + t * (36000.76983 + t * 0.0003032)
    anomaly = math.radians(357.52911 + t * (35999.05029 - t * 0.0001537))
    node = math.radians(125.04 - 1934.136 * t)
    nutation = -0.00478 * math.sin(node)
    centre = (1.914602 - t * (0.004817 + t * 0.000014)) * math.sin(anomaly)
    centre += (0.019993 - t * 0.000101) * math.sin(2.0 * anomaly) + 0.000289 * math.sin(3 * anomaly)
    longitude = math.radians(mean_longitude + centre - 0.00569 + nutation)
    obliquity_deg = 23.4392911 - t * (0.0130042 + t * 1.64e-7) + 0.00256 * math.cos(node)
    obliquity = math.radians(obliquity_deg)
    east, north = math.cos(obliquity) * math.sin(longitude), math.cos(longitude)
    right_ascension_deg = direction_degrees(east, north)
    mean_deg = mean_longitude - 0.0057183 + nutation * math.cos(obliquity)
    return SunPlace(
        declination_deg=math.degrees(math.asin(math.sin(obliquity) * math.sin(longitude))),
        right_ascension_deg=right_ascension_deg,
        equation_of_time_s=240.0 * turn_degrees(right_ascension_deg, mean_deg),
    )


def sun_height_deg(time_s: float, longitude_deg: float, latitude_deg: float) -> float:
    """Give the height of the sun's centre over the true horizon, refraction left out."""
    place = sun_place(time_s)
    days = (time_s - J2000_S) / 86400.0
    sidereal_deg = 280.46061837 + 360.98564736629 * days + longitude_deg
    hour_angle = math.radians(sidereal_deg - place.right_ascension_deg)
    latitude, declination = math.radians(latitude_deg), math.radians(place.declination_deg)
    sine = math.sin(latitude) * math.sin(declination)
    sine += math.cos(latitude) * math.cos(declination) * math.cos(hour_angle)
    return math.degrees(math.asin(min(1.0, max(-1.0, sine))))
