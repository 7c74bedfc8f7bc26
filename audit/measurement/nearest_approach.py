"""How near a walk came to a point, and when, fixes joined by straight lines."""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import nearest_on_steps
from audit.matching.leg_match import CleanTrack
from audit.units import FloatArray


def nearest_approach(
    clean: CleanTrack, times_s: tuple[float, float], target: FloatArray
) -> tuple[float, float]:
    """Give metres and moment of the nearest approach within a stretch of time."""
    begin_s, end_s = times_s
    within = clean.time_s[(clean.time_s > begin_s) & (clean.time_s < end_s)]
    time_s = np.concatenate([[begin_s], within, [end_s]])
    place = clean.places_at(time_s) - target
    share, distance = nearest_on_steps(place[:-1], np.diff(place, axis=0))
    nearest = int(np.argmin(distance))
    moment = time_s[nearest] + share[nearest] * (time_s[nearest + 1] - time_s[nearest])
    return float(distance[nearest]), float(moment)
