"""Angles and lengths as bare numbers: the only code that wraps or compares directions.

Signs, once for the whole package: azimuths run clockwise from their north in
[0, 360); turns are positive clockwise, in (-180, 180]; offsets are positive to
the right of the direction of travel; east of north is positive.
"""

from __future__ import annotations

import math
from typing import overload

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]

MILS_PER_CIRCLE = 6400.0
"""The mil of the lensatic compass: 6400 to the circle (FM 21-26, 1993, para 6-1b)."""


@overload
def wrap_degrees(angle_deg: float) -> float: ...
@overload
def wrap_degrees(angle_deg: FloatArray) -> FloatArray: ...
def wrap_degrees(angle_deg: float | FloatArray) -> float | FloatArray:
    """Bring an angle into [0, 360) degrees."""
    if isinstance(angle_deg, float) and math.isfinite(angle_deg):
        one = float(angle_deg % 360.0)
        return 0.0 if one >= 360.0 else one
    wrapped = np.mod(angle_deg, 360.0)
    # A tiny negative angle rounds up to 360.0 itself; 360 is not in [0, 360).
    wrapped = np.where(wrapped >= 360.0, 0.0, wrapped)
    return wrapped if isinstance(angle_deg, np.ndarray) else float(wrapped)


@overload
def turn_degrees(from_deg: float, to_deg: float) -> float: ...
@overload
def turn_degrees(from_deg: FloatArray | float, to_deg: FloatArray) -> FloatArray: ...
@overload
def turn_degrees(from_deg: FloatArray, to_deg: FloatArray | float) -> FloatArray: ...
def turn_degrees(from_deg: float | FloatArray, to_deg: float | FloatArray) -> float | FloatArray:
    """Give the signed turn from one direction to another, in (-180, 180], clockwise positive."""
    turn = to_deg - from_deg
    if isinstance(turn, float) and math.isfinite(turn):
        one = float(turn - 360.0 * math.ceil((turn - 180.0) / 360.0)) + 0.0  # never -0.0
        return one if -180.0 < one <= 180.0 else 180.0
    turn = turn - 360.0 * np.ceil((turn - 180.0) / 360.0)
    # Half a circle either way is 180, however it was rounded.
    turn = np.where((turn <= -180.0) | (turn > 180.0), 180.0, turn)
    return turn if turn.ndim else float(turn)


@overload
def direction_degrees(east_m: float, north_m: float) -> float: ...
@overload
def direction_degrees(east_m: FloatArray, north_m: FloatArray) -> FloatArray: ...
def direction_degrees(
    east_m: float | FloatArray, north_m: float | FloatArray
) -> float | FloatArray:
    """Give the direction of a vector, clockwise from its north axis, in [0, 360)."""
    direction = wrap_degrees(np.asarray(np.degrees(np.arctan2(east_m, north_m))))
    return direction if isinstance(east_m, np.ndarray) else float(direction)


def unit_vector(direction_deg: float) -> FloatArray:
    """Give (east, north) of length one in a direction; shape (2,)."""
    angle = np.radians(direction_deg)
    return np.array([np.sin(angle), np.cos(angle)])


def turned_aside_m(length_m: float, turn_deg: float) -> float:
    """Give how far apart two lines of one length end that begin together: a chord."""
    return 2.0 * length_m * abs(math.sin(math.radians(turn_deg) / 2.0))


def degrees_from_mils(mils: float) -> float:
    """Turn mils of 6400 to the circle into degrees."""
    return mils * 360.0 / MILS_PER_CIRCLE


def mils_from_degrees(degrees: float) -> float:
    """Turn degrees into mils of 6400 to the circle."""
    return degrees * MILS_PER_CIRCLE / 360.0


def on_other_scale_deg(azimuth_deg: float) -> tuple[float, float]:
    """Give what is set when an azimuth is read on the other scale of a dial.

    Hundreds of mils as tens of degrees; and degrees on the numerals that stand for 100 mils.
    """
    return mils_from_degrees(azimuth_deg) / 10.0, azimuth_deg * degrees_from_mils(100.0)


def east_north(vector_m: FloatArray) -> tuple[float, float]:
    """Give a vector of the plane as two plain numbers."""
    return float(vector_m[0]), float(vector_m[1])
