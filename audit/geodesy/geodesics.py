"""The shortest way over the ellipsoid: distance and true azimuth."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import pyproj

from audit.azimuths import TrueAzimuth
from audit.geodesy.utm_zones import check_degrees


@dataclass(frozen=True, slots=True, kw_only=True)
class Geodesic:
    """The shortest way between two places on WGS 84.

    Attributes
    ----------
    start_azimuth, end_azimuth : TrueAzimuth
        Direction of travel where the way begins, and where it ends; it turns on the way.
    """

    distance_m: float
    start_azimuth: TrueAzimuth
    end_azimuth: TrueAzimuth


def geodesic_between(
    longitude_deg: float,
    latitude_deg: float,
    to_longitude_deg: float,
    to_latitude_deg: float,
    *,
    ellipsoid: str = "WGS84",
) -> Geodesic:
    """Give the geodesic from one place to another (Karney's method, through PROJ).

    Raises
    ------
    ValueError
        For degrees out of range.
    """
    check_degrees(longitude_deg, latitude_deg)
    check_degrees(to_longitude_deg, to_latitude_deg)
    # return_back_azimuth=False gives the direction of travel, not the way back.
    start_deg, end_deg, distance_m = _geod(ellipsoid).inv(
        longitude_deg, latitude_deg, to_longitude_deg, to_latitude_deg, return_back_azimuth=False
    )
    return Geodesic(
        distance_m=float(distance_m),
        start_azimuth=TrueAzimuth(float(start_deg)),
        end_azimuth=TrueAzimuth(float(end_deg)),
    )


@lru_cache(maxsize=8)
def _geod(ellipsoid: str) -> pyproj.Geod:
    return pyproj.Geod(ellps=ellipsoid)
