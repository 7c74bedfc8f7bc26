"""Steps from fix to fix, and how far this walker may have come in one."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_fixes import Fixes
from audit.matching.clean_intervals import usual_intervals_s
from audit.settings import CleaningSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Steps:
    """Steps between fixes that follow each other. Arrays have shape (n - 1,) but the last.

    Attributes
    ----------
    fixes : Fixes
        Between which the steps lie.
    length_m, time_s : float arrays
    silent : bool array
        Steps over a gap.
    fast : bool array
        Longer than this walker's pace allows.
    pace_m_s : float
        Brisk pace of the whole walk.
    neighbours : int
        How many steps before and after another show the pace just then.
    around_m_s : float array, shape (n + neighbours,)
        The fastest pace of so many steps in a row; to be asked by ``before`` and ``after``.
    """

    fixes: Fixes
    length_m: FloatArray
    time_s: FloatArray
    silent: NDArray[np.bool_]
    fast: NDArray[np.bool_]
    pace_m_s: float
    neighbours: int
    around_m_s: FloatArray

    def before(self, step: NDArray[np.int64]) -> FloatArray:
        """Give the fastest pace shortly before a step."""
        return self.around_m_s[step]

    def after(self, step: NDArray[np.int64]) -> FloatArray:
        """Give the fastest pace shortly after a step."""
        return self.around_m_s[step + self.neighbours + 1]

    def speed_m_s(self, step: NDArray[np.int64] | slice | int) -> FloatArray:
        """Give the speed of a step or of several."""
        return np.asarray(self.length_m[step] / self.time_s[step])

    def cosine(self, one: NDArray[np.int64], other: NDArray[np.int64]) -> FloatArray:
        """Give the cosine of the angle between steps: 1 straight on, -1 straight back."""
        east, north = self.fixes.east_m, self.fixes.north_m
        along = (east[one + 1] - east[one]) * (east[other + 1] - east[other])
        along += (north[one + 1] - north[one]) * (north[other + 1] - north[other])
        length = self.length_m[one] * self.length_m[other]
        return np.divide(along, length, out=np.zeros_like(along), where=length > 0.0)


def measure_steps(fixes: Fixes, settings: CleaningSettings) -> Steps:
    """Measure the steps of fixes whose times rise strictly."""
    length_m, time_s = fixes.steps_m(), np.diff(fixes.time_s)
    speed_m_s = length_m / time_s
    pace_m_s = settings.slow_pace_m_s
    if len(speed_m_s):
        brisk = settings.pace_margin * float(np.quantile(speed_m_s, settings.pace_quantile))
        pace_m_s = float(np.clip(brisk, settings.slow_pace_m_s, settings.fast_pace_m_s))
    return Steps(
        fixes=fixes,
        length_m=length_m,
        time_s=time_s,
        silent=time_s > silence_s(usual_intervals_s(fixes, settings), settings),
        fast=length_m > settings.spike_slack_m + pace_m_s * time_s,
        pace_m_s=pace_m_s,
        neighbours=settings.neighbour_steps,
        around_m_s=_fastest_around(speed_m_s, settings),
    )


def silence_s(usual_s: FloatArray, settings: CleaningSettings) -> FloatArray:
    """Give the interval beyond which each step is a gap, by the usual one about each fix."""
    # Between two outings lies a night, whichever of them it is judged by.
    return np.maximum(settings.gap_s, settings.gap_intervals * usual_s[:-1])


def longest_step_s(usual_s: float, settings: CleaningSettings) -> float:
    """Give the interval that no step exceeds where a fix usually follows after ``usual_s``."""
    return max(settings.gap_s, settings.gap_intervals * usual_s)


def _fastest_around(speed_m_s: FloatArray, settings: CleaningSettings) -> FloatArray:
    """Give the fastest of each few steps; what nobody does on foot only where it lasts."""
    width, lasts = settings.neighbour_steps, settings.ride_steps
    fence = np.zeros(width)
    fenced = np.concatenate([fence, speed_m_s, fence])
    ride = _rolling(np.maximum, _rolling(np.minimum, fenced, lasts), width - lasts + 1)
    fastest = _rolling(np.maximum, fenced, width)
    np.minimum(fastest, settings.spike_speed_m_s, out=fastest)
    return np.maximum(fastest, ride, out=fastest)


def _rolling(pick: np.ufunc, values: FloatArray, width: int) -> FloatArray:
    """Reduce each ``width`` values in a row; shape (n - width + 1,)."""
    size = len(values) - width + 1
    result = values[:size].copy()
    for shift in range(1, width):
        pick(result, values[shift : shift + size], out=result)
    return result
