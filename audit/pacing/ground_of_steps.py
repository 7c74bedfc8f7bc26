"""Whether each step of a recording goes uphill, level or downhill, by its own elevations."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.measurement.ground_walked import kinds_of_ground, smoothed_heights
from audit.pacing.recorded_walk import RecordedWalk
from audit.settings import Settings
from audit.units import FloatArray


def ground_of_steps(walk: RecordedWalk, settings: Settings) -> tuple[NDArray[np.str_], str]:
    """Give the kind of ground of each step, "" where it is not known, and why it is not."""
    nothing = np.full(len(walk.step_m), "", dtype="<U8")
    if not walk.elevation.trusted:
        return nothing, walk.elevation.why_not
    along = np.concatenate([[0.0], np.cumsum(walk.step_m)])
    count = max(int(along[-1] // settings.ground.stretch_m), 1)
    marks = np.linspace(0.0, along[-1], count + 1)
    moments = np.interp(marks, along, walk.samples.time_s)
    known = np.isfinite(walk.clean.elevation_m)
    height = _heights(walk.clean.time_s[known], walk.clean.elevation_m[known], moments, settings)
    kinds = kinds_of_ground(np.diff(height), np.diff(marks), settings.ground)
    middle = (along[1:] + along[:-1]) / 2.0
    stretch = np.clip(np.searchsorted(marks, middle, side="right") - 1, 0, count - 1)
    return kinds[stretch], ""


def _heights(
    time_s: FloatArray, elevation: FloatArray, moments: FloatArray, settings: Settings
) -> FloatArray:
    """Smooth the heights part by part: a long recording is more than one table can hold."""
    parts = []
    for some in np.array_split(moments, max(len(moments) // 200, 1)):
        reach_s = 30.0 * settings.ground.smoothing_s
        first, last = np.searchsorted(time_s, [some[0] - reach_s, some[-1] + reach_s])
        first, last = max(first - 1, 0), min(last + 1, len(time_s))
        near = slice(first, last)
        parts.append(smoothed_heights(time_s[near], elevation[near], some, settings.ground))
    return np.concatenate(parts)
