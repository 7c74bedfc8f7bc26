"""How finely a number was written: half of its last step, as far as the number shows it."""

from __future__ import annotations

import math

from audit.units import mils_from_degrees

_SAME = 1e-6


def azimuth_rounding_deg(azimuth_deg: float) -> float:
    """Give half the step of an azimuth: 0.5 for 68, 0.05 for 68.3, half a mil for 1214 mil.

    Mils in whole tens count as rounded to ten.
    """
    if is_whole(azimuth_deg):
        return 0.5
    if is_whole(azimuth_deg * 10.0):
        return 0.05
    mils = mils_from_degrees(azimuth_deg)
    if is_whole(mils):
        step_mil = 10.0 if is_whole(mils / 10.0) else 1.0
        return 0.5 * step_mil * 360.0 / 6400.0
    return 0.005


def length_rounding(value: float, most: float) -> float:
    """Give half the step of a distance or a count: 0.5 for 893, 5 for 890, 50 for 900.

    ``most`` caps it: 1000 may well be known better than to 500.
    """
    if not is_whole(value):
        return 0.05
    half = 0.5
    while half < most and value != 0.0 and is_whole(value / (20.0 * half)):
        half *= 10.0
    return min(half, most)


def is_whole(value: float) -> bool:
    """Tell whether a number was written without decimals."""
    return math.isclose(value, round(value), rel_tol=0.0, abs_tol=_SAME)
