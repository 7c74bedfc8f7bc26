"""The recording as a rival method needs it: even seconds, on the grid, lightly smoothed."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from pyproj import Transformer
from scipy.ndimage import gaussian_filter1d
from walks import Walk

from audit.units import FloatArray


@lru_cache(maxsize=64)
def _to_grid(grid: str) -> Transformer:
    return Transformer.from_crs("EPSG:4326", grid, always_xy=True)


def fixes_m(walk: Walk) -> FloatArray:
    """Give the fixes on the grid of the course, shape (n, 2)."""
    east, north = _to_grid(walk.plan.grid).transform(
        walk.track.longitude_deg, walk.track.latitude_deg
    )
    return np.column_stack([east, north])


def points_m(walk: Walk) -> FloatArray:
    """Give the points of the plan in the order of its legs, shape (legs + 1, 2)."""
    names = [walk.plan.legs[0].start, *(leg.end for leg in walk.plan.legs)]
    places = [walk.plan.position(name) for name in names]
    east, north = _to_grid(walk.plan.grid).transform(
        [place.longitude_deg for place in places], [place.latitude_deg for place in places]
    )
    return np.column_stack([east, north])


def even_places(
    walk: Walk, step_s: float, smoothing_s: float = 8.0
) -> tuple[FloatArray, FloatArray]:
    """Give times at even steps and smoothed places, single jumps beyond 50 m left out."""
    time_s, places = walk.track.time_s, fixes_m(walk)
    kept = _without_jumps(places)
    times = np.arange(time_s[0], time_s[-1] + 0.5 * step_s, step_s)
    axes = []
    for axis in range(2):
        even = np.interp(times, time_s[kept], places[kept, axis])
        axes.append(gaussian_filter1d(even, smoothing_s / step_s, mode="nearest"))
    return times, np.column_stack(axes)


def _without_jumps(places: FloatArray) -> np.ndarray:
    if len(places) < 5:
        return np.ones(len(places), dtype=bool)
    padded = np.pad(places, ((2, 2), (0, 0)), mode="edge")
    middle = np.median(np.stack([padded[i : i + len(places)] for i in range(5)]), axis=0)
    return np.asarray(np.hypot(*(places - middle).T) < 50.0)
