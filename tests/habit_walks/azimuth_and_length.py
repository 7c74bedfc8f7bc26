"""The azimuth and the length of a way."""

from __future__ import annotations

import numpy as np


def azimuth_and_length(
    from_east_m: float, from_north_m: float, to_east_m: float, to_north_m: float
) -> tuple[float, float]:
    """Give the grid azimuth in degrees and the distance in metres from one place to another."""
    east, north = to_east_m - from_east_m, to_north_m - from_north_m
    return float(np.degrees(np.arctan2(east, north))) % 360.0, float(np.hypot(east, north))
