"""Azimuths that carry their north, and the angles that lead from one north to another."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Self

from audit.units import turn_degrees, wrap_degrees


@dataclass(frozen=True, slots=True)
class _Azimuth:
    """A direction clockwise from a north. Each north has a type; types never mix."""

    degrees: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "degrees", wrap_degrees(float(self.degrees)))

    def turn_to(self, other: Self) -> float:
        """Give the signed turn to another azimuth of the same north, in (-180, 180]."""
        if type(other) is not type(self):
            message = (
                f"a {type(self).__name__} cannot be compared with a {type(other).__name__}; "
                "convert one of them with NorthAngles first"
            )
            raise TypeError(message)
        return turn_degrees(self.degrees, other.degrees)

    def turned(self, degrees: float) -> Self:
        """Give the azimuth this many degrees clockwise of this one."""
        return type(self)(self.degrees + degrees)

    def back(self) -> Self:
        """Give the back azimuth."""
        return self.turned(180.0)


class GridAzimuth(_Azimuth):
    """Clockwise from the grid north of the course."""

    __slots__ = ()


class TrueAzimuth(_Azimuth):
    """Clockwise from true north."""

    __slots__ = ()


class MagneticAzimuth(_Azimuth):
    """Clockwise from magnetic north: what the compass shows."""

    __slots__ = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class NorthAngles:
    """The angles between the three norths at one place and day; east positive.

    Attributes
    ----------
    grid_magnetic_angle_deg : float
        G: from grid north to magnetic north. Magnetic azimuth = grid azimuth - G.
    convergence_deg : float
        C: from true north to grid north. Grid azimuth = true azimuth - C.

    Its methods raise TypeError for an azimuth from another north than the one they turn.
    """

    grid_magnetic_angle_deg: float
    convergence_deg: float

    def magnetic(self, azimuth: GridAzimuth) -> MagneticAzimuth:
        """Turn a grid azimuth into the magnetic one to set on the compass."""
        _require(azimuth, GridAzimuth)
        return MagneticAzimuth(azimuth.degrees - self.grid_magnetic_angle_deg)

    def grid_from_magnetic(self, azimuth: MagneticAzimuth) -> GridAzimuth:
        """Turn a magnetic azimuth into the grid one to draw on the map."""
        _require(azimuth, MagneticAzimuth)
        return GridAzimuth(azimuth.degrees + self.grid_magnetic_angle_deg)

    def grid_from_true(self, azimuth: TrueAzimuth) -> GridAzimuth:
        """Turn a true azimuth into the grid one."""
        _require(azimuth, TrueAzimuth)
        return GridAzimuth(azimuth.degrees - self.convergence_deg)

    def true(self, azimuth: GridAzimuth) -> TrueAzimuth:
        """Turn a grid azimuth into the true one."""
        _require(azimuth, GridAzimuth)
        return TrueAzimuth(azimuth.degrees + self.convergence_deg)


def _require(azimuth: _Azimuth, wanted: type[_Azimuth]) -> None:
    """Refuse an azimuth of another north: the same angle taken off twice looks like any other."""
    if not isinstance(azimuth, wanted):
        message = f"a {wanted.__name__} is wanted here, not a {type(azimuth).__name__}"
        raise TypeError(message)
