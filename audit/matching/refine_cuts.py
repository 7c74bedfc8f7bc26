"""Cuts put to the second on the full recording, where candidates stand on coarser steps."""

from __future__ import annotations

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.settings import MatchingSettings
from audit.statistics.two_pieces import best_meeting, fit_meeting
from audit.units import FloatArray


def refine_cut(
    clean: CleanTrack,
    time_s: float,
    not_before_s: float,
    not_after_s: float,
    settings: MatchingSettings,
) -> float:
    """Move a cut to where two straight pieces of walking meet, if they meet clearly nearby.

    ``not_before_s`` and ``not_after_s`` are the cuts next to it: neither the fit nor
    the answer reaches past them.
    """
    interval = clean.median_interval_s
    if interval is None or interval > settings.refine_interval_s:
        return time_s
    reach = max(settings.refine_window_s, 3.0 * interval)
    window = (max(time_s - reach, not_before_s), min(time_s + reach, not_after_s))
    first, last = np.searchsorted(clean.time_s, window, side="left")
    times = clean.time_s[first : last + 1]
    if len(times) < settings.refine_least_fixes:
        return time_s
    position = clean.places(slice(first, last + 1))
    times, position = _thinned(times, position, settings.refine_most_fixes)
    move = max(settings.refine_move_s, 1.5 * interval)
    low, high = max(time_s - move, window[0]), min(time_s + move, window[1])
    if high <= low:
        return time_s
    here = fit_meeting(times, position, time_s)
    best = best_meeting(times, position, np.linspace(low, high, settings.refine_steps))
    clearly = best.residual < (1.0 - settings.refine_gain) * here.residual
    return best.time_s if clearly else time_s


def _thinned(time_s: FloatArray, position: FloatArray, most: int) -> tuple[FloatArray, FloatArray]:
    if len(time_s) <= most:
        return time_s, position
    pick = np.round(np.linspace(0, len(time_s) - 1, most)).astype(np.int64)
    return time_s[pick], position[pick]
