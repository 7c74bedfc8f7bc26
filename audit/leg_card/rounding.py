"""How finely a number was written: half of its last step, as far as the number shows it."""

from __future__ import annotations

import math

from audit.plan import PlannedLeg
from audit.units import mils_from_degrees

_SAME = 1e-6


def grid_rounding_deg(leg: PlannedLeg) -> float:
    """Give half the step of a leg's grid azimuth; 0 where it has none."""
    if leg.grid_azimuth is None:
        return 0.0
    converted = leg.grid_azimuth_half_step_deg
    return plan_rounding_deg(leg.grid_azimuth.degrees) if converted is None else converted


def distance_rounding_m(leg: PlannedLeg, distance_m: float, most_m: float) -> float:
    """Give half the step of the distance of a leg, which need not be written on it."""
    if leg.distance_half_step_m is not None and distance_m == leg.distance_m:
        return min(leg.distance_half_step_m, most_m)
    return length_rounding(distance_m, most_m)


def plan_rounding_deg(azimuth_deg: float) -> float:
    """Give half the step of an azimuth of a plan, where half degrees are rounded to such."""
    if is_whole(azimuth_deg * 2.0) and not is_whole(azimuth_deg):
        return 0.25
    return azimuth_rounding_deg(azimuth_deg)


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
