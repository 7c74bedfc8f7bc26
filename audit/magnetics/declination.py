"""Magnetic declination at a place on a day, with what it may be off."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from audit.geodesy.utm_zones import check_degrees
from audit.units import turn_degrees

if TYPE_CHECKING:
    import pygeomag

_FIRST_YEAR = 2010
FIRST_DAY = dt.date(_FIRST_YEAR, 1, 1)
"""Of the first model at hand."""
_SPAN_YEARS = 5
"""Each model holds for five years from a year divisible by five."""
_BEFORE_2015_SD = (0.23, 5430.0)
"""For the model of 2010, whose library states no error: that of WMM2015, its successor."""
_LOWEST_M, _HIGHEST_M = -1_000.0, 850_000.0
"""The heights for which the World Magnetic Model is made (technical report, 2024)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Declination:
    """The angle from true north to magnetic north, east positive.

    Attributes
    ----------
    sd_deg : float
        One standard error by the model's own error formula; iron nearby and local
        rock are not in it.
    model : str
        Such as "WMM-2025".
    yearly_change_deg : float
        How much the angle grows in a year, east positive.
    horizontal_nt : float
        Horizontal strength of the field; under 6000 nT a compass is sluggish and
        under 2000 nT useless (WMM technical report, caution and blackout zones).
    """

    degrees: float
    sd_deg: float
    model: str
    yearly_change_deg: float
    horizontal_nt: float


def declination(
    longitude_deg: float, latitude_deg: float, *, date: dt.date, height_m: float = 0.0
) -> Declination:
    """Give the declination by the World Magnetic Model made for that date.

    Raises
    ------
    ValueError
        With one sentence, for a place or height out of range, and for a date that no
        model covers: then the sentence says what to give instead.
    """
    # The library takes any number for latitude and longitude and answers something.
    _check_place(longitude_deg, latitude_deg, height_m)
    model = _model(date.year - date.year % _SPAN_YEARS) if date.year >= _FIRST_YEAR else None
    if model is None:
        message = (
            f"no magnetic model at hand covers {date.isoformat()} (they begin with {_FIRST_YEAR} "
            "and each holds for five years); give grid_magnetic_angle_deg as printed on the map"
        )
        raise ValueError(message)
    year = _decimal_year(date)
    height_km = height_m / 1000.0

    def at(time: float) -> pygeomag.GeoMagResult:
        # Half a year past a model's end the field is still its straight continuation.
        return model.calculate(
            glat=latitude_deg,
            glon=longitude_deg,
            alt=height_km,
            time=time,
            allow_date_outside_lifespan=True,
        )

    field = at(year)
    return Declination(
        degrees=turn_degrees(0.0, float(field.d)),
        sd_deg=_sd_deg(field, date),
        model=str(model.model),
        yearly_change_deg=turn_degrees(float(at(year - 0.5).d), float(at(year + 0.5).d)),
        horizontal_nt=float(field.h),
    )


@lru_cache(maxsize=16)
def _model(first_year: int) -> pygeomag.GeoMag | None:
    """Give the model that begins with a year, or None where there is none."""
    import pygeomag  # noqa: PLC0415

    # Without base_year the newest model is taken whatever the date.
    model = pygeomag.GeoMag(base_year=first_year)
    try:
        life_span = model.life_span
    except ValueError:
        return None
    return model if life_span == (first_year, first_year + _SPAN_YEARS) else None


def _sd_deg(field: pygeomag.GeoMagResult, date: dt.date) -> float:
    if date.year < 2015:
        steady_deg, per_horizontal_nt = _BEFORE_2015_SD
        return math.hypot(steady_deg, per_horizontal_nt / float(field.h))
    return float(field.calculate_uncertainty().d)


def _decimal_year(date: dt.date) -> float:
    """Give the date in years, whole days only: 2026-11-25 is 2026.8986."""
    first = dt.date(date.year, 1, 1)
    days = (dt.date(date.year + 1, 1, 1) - first).days
    return date.year + (date.timetuple().tm_yday - 1) / days


def _check_place(longitude_deg: float, latitude_deg: float, height_m: float) -> None:
    check_degrees(longitude_deg, latitude_deg)
    if not _LOWEST_M <= height_m <= _HIGHEST_M:
        message = f"height {height_m} m is out of range; it runs from -1000 m to 850 km"
        raise ValueError(message)
