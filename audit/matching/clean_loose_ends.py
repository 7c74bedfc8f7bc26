"""Stray fixes where a receiver starts, wakes or falls silent: only one side to judge by."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_fixes import Fixes
from audit.matching.clean_steps import Steps
from audit.settings import CleaningSettings


def loose_ends(fixes: Fixes, steps: Steps, settings: CleaningSettings) -> NDArray[np.int64]:
    """Give the places of stray fixes at the ends of unbroken stretches of the recording.

    They are strays when nobody on foot could get from the last of them to the next fix
    (or from the fix before to the first of them), and the steps next to that leap are
    much slower: a ride that sets in or ends changes its pace by degrees. They are none
    where they go straight on as fast, which is a ride too, nor where they lie close to
    the other side of the silence.
    """
    reach_m = settings.spike_slack_m + settings.spike_speed_m_s * steps.time_s
    leaps = np.flatnonzero((steps.length_m > reach_m) & ~steps.silent)
    edges = np.concatenate([[-1], np.flatnonzero(steps.silent), [len(fixes) - 1]])
    strays = [np.zeros(0, dtype=np.int64)]
    for leap in leaps.tolist():
        stretch = int(np.searchsorted(edges, leap))
        first, last = int(edges[stretch - 1]) + 1, int(edges[stretch])
        few, many = sorted((leap + 1 - first, last - leap))
        longest = settings.spike_longest_fixes
        if few > longest or many < settings.stray_majority * longest:
            continue
        if leap + 1 - first == few:
            outer, silence, calm = np.arange(first, leap + 1), first - 1, leap + 1
        else:
            outer, silence = np.arange(leap + 1, last + 1), last
            calm = leap - steps.neighbours
        if not (
            _close(steps, silence, settings)
            or _by_degrees(steps, leap, calm, settings)
            or _ride(fixes, steps, outer, leap, settings)
        ):
            strays.append(outer)
    return np.unique(np.concatenate(strays))


def _close(steps: Steps, silence: int, settings: CleaningSettings) -> bool:
    """Tell whether there is another side of the silence, and it is close by."""
    if not 0 <= silence < len(steps.length_m):
        return False
    return bool(steps.length_m[silence] <= settings.spike_slack_m + steps.pace_m_s * settings.gap_s)


def _by_degrees(steps: Steps, leap: int, calm: int, settings: CleaningSettings) -> bool:
    """Tell whether the leap is not much faster than the steps on its better side."""
    around = steps.speed_m_s(slice(calm, calm + steps.neighbours))
    return bool(steps.speed_m_s(leap) < settings.leap_over_pace * around.max())


def _ride(
    fixes: Fixes, steps: Steps, outer: NDArray[np.int64], leap: int, settings: CleaningSettings
) -> bool:
    """Tell whether the fixes beyond the leap, more than one, go straight on about as fast."""
    speeds = steps.speed_m_s(outer[:-1])
    if len(speeds) == 0 or speeds.min() < settings.ride_keeps_pace * steps.speed_m_s(leap):
        return False
    chord_m = fixes.apart_m(int(outer[0]), int(outer[-1]))
    return bool(chord_m > settings.ride_straight_share * steps.length_m[outer[:-1]].sum())
