"""How fast and which way the walker was going, moment by moment."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.settings import MeasuringSettings
from audit.units import FloatArray, direction_degrees


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SpeedAndDirection:
    """Movement at each kept fix. Arrays have shape (n,), read-only.

    Attributes
    ----------
    speed_m_s : float array
        NaN in gaps, and throughout a recording without times.
    direction_deg : float array
        Grid direction of travel; NaN where the walker stood or the recording is silent.
    """

    speed_m_s: FloatArray
    direction_deg: FloatArray


def speed_and_direction(clean: CleanTrack, settings: MeasuringSettings) -> SpeedAndDirection:
    """Give speed and direction from where the walker was half a window before and after.

    The window is cut at the ends of the recording; a chord over it says less than the
    path did where the walker turned within it.
    """
    time_s, half_s = clean.time_s, settings.passage_window_s / 2
    before_s = np.maximum(time_s - half_s, time_s[0])
    after_s = np.minimum(time_s + half_s, time_s[-1])
    east, north = (
        np.interp(after_s, time_s, where) - np.interp(before_s, time_s, where)
        for where in (clean.east_m, clean.north_m)
    )
    speed = np.hypot(east, north) / np.maximum(after_s - before_s, 1e-9)
    direction = direction_degrees(east, north)
    direction[speed < settings.passage_standing_m_s] = np.nan
    for gap in clean.gaps:
        silent = (after_s > gap.start_s) & (before_s < gap.end_s)
        speed[silent], direction[silent] = np.nan, np.nan
    if not clean.timed:
        speed[:] = np.nan
    for column in (speed, direction):
        column.flags.writeable = False
    return SpeedAndDirection(speed_m_s=speed, direction_deg=direction)
