"""How near a walk came to a point, and when, fixes joined by straight lines."""

from __future__ import annotations

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.units import FloatArray


def nearest_approach(
    clean: CleanTrack, times_s: tuple[float, float], target: FloatArray
) -> tuple[float, float]:
    """Give metres and moment of the nearest approach within a stretch of time."""
    begin_s, end_s = times_s
    within = clean.time_s[(clean.time_s > begin_s) & (clean.time_s < end_s)]
    time_s = np.concatenate([[begin_s], within, [end_s]])
    east = np.interp(time_s, clean.time_s, clean.east_m) - target[0]
    north = np.interp(time_s, clean.time_s, clean.north_m) - target[1]
    step_e, step_n = np.diff(east), np.diff(north)
    square = np.maximum(step_e**2 + step_n**2, 1e-12)
    share = np.clip(-(east[:-1] * step_e + north[:-1] * step_n) / square, 0.0, 1.0)
    distance = np.hypot(east[:-1] + share * step_e, north[:-1] + share * step_n)
    nearest = int(np.argmin(distance))
    moment = time_s[nearest] + share[nearest] * (time_s[nearest + 1] - time_s[nearest])
    return float(distance[nearest]), float(moment)
