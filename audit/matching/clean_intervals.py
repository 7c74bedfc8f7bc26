"""After how long a fix usually follows: on foot, and in each outing by itself.

A receiver that writes a fix every so many metres writes ten a minute on foot and a hundred on the
drive home, and one set anew for another day keeps another rate. Neither says how long a silence on
the walk must be to be one.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_fixes import Fixes, usual_interval_s
from audit.settings import CleaningSettings
from audit.statistics.runs import runs_of_true
from audit.units import FloatArray


def usual_intervals_s(fixes: Fixes, settings: CleaningSettings) -> FloatArray:
    """Give for each fix, its times rising, the median interval on foot of the outing it is of."""
    interval_s = np.diff(fixes.time_s)
    ridden = _ridden(fixes, settings)
    night = np.flatnonzero(interval_s > settings.outing_silence_s) + 1
    return np.concatenate(
        [
            np.full(len(outing), _on_foot_s(fixes.time_s[outing], ridden[outing[:-1]]))
            for outing in np.split(np.arange(len(fixes)), night)
        ]
    )


def _on_foot_s(time_s: FloatArray, ridden: NDArray[np.bool_]) -> float:
    """Give the median interval of an outing without what is ridden, unless all of it is."""
    if not ridden.any() or ridden.all():
        return usual_interval_s(time_s)
    return float(np.median(np.diff(time_s)[~ridden]))


def _ridden(fixes: Fixes, settings: CleaningSettings) -> NDArray[np.bool_]:
    """Tell which steps are of a ride: several in a row faster than anybody goes on foot."""
    fast = fixes.steps_m() > settings.spike_speed_m_s * np.diff(fixes.time_s)
    ridden = np.zeros(len(fast), dtype=np.bool_)
    for first, beyond in runs_of_true(fast).tolist():
        ridden[first:beyond] = beyond - first >= settings.ride_steps
    return ridden
