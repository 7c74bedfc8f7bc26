"""How a recording's clock runs from one fix of the file to the next."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_fixes import Fixes
from audit.matching.clean_steps import longest_step_s
from audit.settings import CleaningSettings
from audit.units import FloatArray


def part_begins(fixes: Fixes) -> NDArray[np.bool_]:
    """Tell which fixes begin a part of the file, shape (n,)."""
    begins: NDArray[np.bool_] = np.diff(fixes.segment, prepend=-1) != 0
    return begins


def in_orderly_parts(
    step_s: FloatArray, begins: NDArray[np.bool_], settings: CleaningSettings
) -> NDArray[np.bool_]:
    """Tell which fixes lie in parts whose order says something, shape (n,).

    In a part whose order is lost altogether, steps back say nothing about the clock.
    ``step_s`` holds the seconds from the fix before, shape (n,).
    """
    first = np.flatnonzero(begins)
    back = np.add.reduceat((step_s < 0.0) & ~begins, first, dtype=np.int64)
    size = np.diff(first, append=len(begins))
    orderly: NDArray[np.bool_] = np.repeat(back <= settings.disorder_share * size, size)
    return orderly


def leaps(fixes: Fixes, step_s: FloatArray, settings: CleaningSettings) -> NDArray[np.int64]:
    """Give the fixes, in orderly parts, before which the clock leapt and the walker did not.

    A leap is longer than any step of the walk, forward or back. One forward alone may be a
    silence; so none are given where no clock leaps back, as in nearly every recording.
    """
    if step_s.min() >= -settings.gap_s:
        return np.empty(0, dtype=np.int64)
    begins = part_begins(fixes)
    orderly = in_orderly_parts(step_s, begins, settings)
    far = np.abs(step_s) > longest_step_s(float(np.median(step_s)), settings)
    places = np.flatnonzero(far & orderly)
    places = places[fixes.apart_m(places - 1, places) <= settings.same_place_m]
    return places[~_late_beside_a_silence(fixes.time_s, places, settings.late_fixes)]


def _late_beside_a_silence(
    time_s: FloatArray, places: NDArray[np.int64], few: int
) -> NDArray[np.bool_]:
    """Tell before which fixes the times go back only since some from a silence's edges are late.

    Put in order with the few before and after them, they rise again.
    """
    before = np.maximum(places - 1 - few, 0)
    after = np.minimum(places + few, len(time_s) - 1)
    late: NDArray[np.bool_] = time_s[places] < time_s[places - 1]
    return late & (time_s[places] >= time_s[before]) & (time_s[after] >= time_s[places - 1])
