"""The grid of a course: metres east and north for degrees, and back, longitude always first."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, overload

import numpy as np
from pyproj.exceptions import CRSError

from audit.geodesy.grid_systems import (
    check_axes,
    datum_uncertainty_m,
    degrees_outside,
    plain_name,
)
from audit.geodesy.projections import (
    arrays_through,
    degrees_to_grid,
    grid_system,
    grid_to_degrees,
    projection,
)
from audit.geodesy.utm_zones import utm_code, utm_zone_code
from audit.units import FloatArray, turn_degrees

__all__ = ["CourseGrid", "course_grid", "utm_code", "utm_zone_code"]

_CODE = re.compile(r"[A-Za-z]+:[0-9]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseGrid:
    """A projected grid with metres as its unit; grid north is up.

    Two grids of the same code are equal, and a grid can be sent to another process.
    Positions are degrees on WGS 84; the datum of the grid is taken care of. Where
    arrays are given they keep their shape.

    Attributes
    ----------
    code : str
        Authority code, such as "EPSG:32616".
    name : str
        In plain words, such as "UTM zone 16 north, WGS 84".
    datum_uncertainty_m : float
        What the step from WGS 84 to the grid's datum may be off, after PROJ; 0 for
        grids on WGS 84.
    definition : str
        What PROJ is to read where that is not the code itself; "" otherwise.
    """

    code: str
    name: str
    datum_uncertainty_m: float
    definition: str = ""

    @overload
    def to_grid(self, longitude_deg: float, latitude_deg: float) -> tuple[float, float]: ...
    @overload
    def to_grid(
        self, longitude_deg: FloatArray, latitude_deg: FloatArray
    ) -> tuple[FloatArray, FloatArray]: ...
    def to_grid(
        self, longitude_deg: float | FloatArray, latitude_deg: float | FloatArray
    ) -> tuple[float, float] | tuple[FloatArray, FloatArray]:
        """Give (east, north) in metres.

        Raises
        ------
        ValueError
            For a single position that the grid cannot reach. In arrays such places
            become NaN, so that one mad fix does not cost the walk.
        """
        if isinstance(longitude_deg, np.ndarray):
            east, north = arrays_through(
                degrees_to_grid(self._crs), longitude_deg, np.asarray(latitude_deg)
            )
            return _finite_or_nan(east, north)
        east_m, north_m = degrees_to_grid(self._crs).transform(longitude_deg, latitude_deg)
        if not (np.isfinite(east_m) and np.isfinite(north_m)):
            message = (
                f"the position {latitude_deg:.5f}, {longitude_deg:.5f} lies beyond "
                f"the reach of the grid {self.code} ({self.name})"
            )
            raise ValueError(message)
        return float(east_m), float(north_m)

    @overload
    def to_geographic(self, east_m: float, north_m: float) -> tuple[float, float]: ...
    @overload
    def to_geographic(
        self, east_m: FloatArray, north_m: FloatArray
    ) -> tuple[FloatArray, FloatArray]: ...
    def to_geographic(
        self, east_m: float | FloatArray, north_m: float | FloatArray
    ) -> tuple[float, float] | tuple[FloatArray, FloatArray]:
        """Give (longitude, latitude) in degrees on WGS 84, longitudes in [-180, 180].

        Raises
        ------
        ValueError
            For single coordinates that are no place on Earth; NaN in arrays.
        """
        if isinstance(east_m, np.ndarray):
            longitude, latitude = arrays_through(
                grid_to_degrees(self._crs), east_m, np.asarray(north_m)
            )
            longitude, latitude = _finite_or_nan(longitude, latitude)
            within = np.abs(longitude) <= 180.0
            return np.where(within, longitude, turn_degrees(0.0, longitude)), latitude
        longitude_deg, latitude_deg = grid_to_degrees(self._crs).transform(east_m, north_m)
        if not (np.isfinite(longitude_deg) and np.isfinite(latitude_deg)):
            message = (
                f"easting {east_m:.0f}, northing {north_m:.0f} is no place "
                f"on the grid {self.code} ({self.name})"
            )
            raise ValueError(message)
        if abs(longitude_deg) > 180.0:
            longitude_deg = turn_degrees(0.0, float(longitude_deg))
        return float(longitude_deg), float(latitude_deg)

    def convergence_deg(self, longitude_deg: float, latitude_deg: float) -> float:
        """Give C, the angle from true north to grid north, east positive.

        The sign of PROJ and of DMA TM 8358.2, section 3-5; the GDA technical manual
        uses the other one. In (-180, 180]; at a pole, the limit along the meridian given.
        """
        factors = self._factors(longitude_deg, latitude_deg)
        return turn_degrees(0.0, float(factors.meridian_convergence))

    def scale_factor(self, longitude_deg: float, latitude_deg: float) -> float:
        """Give grid distance over distance on the ellipsoid, along the meridian."""
        return float(self._factors(longitude_deg, latitude_deg).meridional_scale)

    def degrees_outside(self, longitude_deg: float, latitude_deg: float) -> float:
        """Give how far a place lies outside the area that the grid is made for; 0 inside."""
        return degrees_outside(grid_system(self._crs), longitude_deg, latitude_deg)

    @property
    def _crs(self) -> str:
        return self.definition or self.code

    def _factors(self, longitude_deg: float, latitude_deg: float) -> Any:  # noqa: ANN401
        # The projection wants degrees on the grid's own datum, so it goes round by the grid.
        bare = projection(self._crs)
        own = bare(*self.to_grid(longitude_deg, latitude_deg), inverse=True)
        if abs(own[1]) == 90.0:
            # On a pole every longitude is as good: keep the one that was asked for.
            own = (longitude_deg, own[1])
        return bare.get_factors(*own)


@lru_cache(maxsize=64)
def course_grid(code: str) -> CourseGrid:
    """Give the grid of an authority code such as "EPSG:32616" or "epsg:27700".

    Raises
    ------
    ValueError
        With one sentence, for a code that PROJ does not know, or whose grid is not a
        projected one in metres east and north, or that cannot be tied to WGS 84.
    """
    if not _CODE.fullmatch(code.strip()):
        message = f'"{code}" is no grid code; write one such as "EPSG:32616"'
        raise ValueError(message)
    code = code.strip().upper()
    try:
        crs = grid_system(code)
    except CRSError:
        message = f'the grid "{code}" is not known to PROJ; write a code such as "EPSG:32616"'
        raise ValueError(message) from None
    check_axes(code, crs)
    return CourseGrid(
        code=code,
        name=plain_name(code, crs.name),
        datum_uncertainty_m=datum_uncertainty_m(code, crs),
    )


def _finite_or_nan(first: FloatArray, second: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Put NaN where either of a pair is not finite."""
    lost = ~(np.isfinite(first) & np.isfinite(second))
    return np.where(lost, np.nan, first), np.where(lost, np.nan, second)
