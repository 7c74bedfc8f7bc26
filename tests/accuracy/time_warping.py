"""Rival: dynamic time warping of the planned line on the recording, by a general library.

The warping is dtaidistance's; both ends of the recording are left free, so that the
approach and the walk-off fall outside.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from walks import Walk

from accuracy.positions_on_grid import even_places, points_m
from accuracy.scoring import Portion
from audit.units import FloatArray

STEP_M = 10.0


def time_warping(walk: Walk) -> list[Portion | None]:
    """Give each leg the recording that its planned line was warped on."""
    from dtaidistance import dtw, dtw_ndim

    times, places = even_places(walk, 5.0)
    walked_m = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(places, axis=0).T))])
    marks = np.unique(np.searchsorted(walked_m, np.arange(0.0, walked_m[-1], STEP_M)))
    trail = np.ascontiguousarray(places[marks])
    line, first_of_leg = _planned_line(points_m(walk))
    middle = line.mean(axis=0)
    free = len(trail)
    _, costs = dtw_ndim.warping_paths_fast(line - middle, trail - middle, psi=(0, 0, free, free))
    pairs = np.array(dtw.best_path(costs))
    portions: list[Portion | None] = []
    for leg in range(len(first_of_leg) - 1):
        at_start = pairs[pairs[:, 0] == first_of_leg[leg], 1]
        at_end = pairs[pairs[:, 0] == first_of_leg[leg + 1], 1]
        if not len(at_start) or not len(at_end) or at_end.min() <= at_start.max():
            portions.append(None)
            continue
        # The index in ``marks`` is where that place is first reached; a halt ends later.
        left = marks[min(at_start.max() + 1, len(marks) - 1)] - 1
        portions.append((float(times[left]), float(times[marks[at_end.min()]])))
    return portions


def _planned_line(points: FloatArray) -> tuple[FloatArray, list[int]]:
    """Give places every 10 m along the plan, and the index of each point of the plan."""
    places: list[FloatArray] = []
    first_of_leg: list[int] = []
    for start, end in pairwise(points):
        first_of_leg.append(len(places))
        steps = max(int(np.hypot(*(end - start)) / STEP_M), 2)
        places += [start + (end - start) * step / steps for step in range(steps)]
    first_of_leg.append(len(places))
    places.append(points[-1])
    return np.array(places), first_of_leg
