"""A few fixes whose clock stood, or ran at another rate, while the others keep one clock."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_clock_returns import returned_account, usually_off_m
from audit.matching.clean_clock_steps import leaps, part_begins
from audit.matching.clean_fixes import Fixes
from audit.matching.clean_steps import longest_step_s
from audit.matching.leg_match import Cleaning
from audit.settings import CleaningSettings
from audit.units import FloatArray


def mend_stretches(fixes: Fixes, settings: CleaningSettings) -> tuple[Fixes, list[Cleaning]]:
    """Give the fixes, in the order of the file, with stretches of a wrong clock put right.

    Where the times before and after a stretch go on by one clock, and leave as much time as its
    fixes usually take, only the stretch is wrong, whatever it shows. Its fixes are put evenly
    between the two.
    """
    step_s = np.diff(fixes.time_s, prepend=fixes.time_s[:1])
    found = _apart(_stretches(fixes, leaps(fixes, step_s, settings), step_s, settings))
    found = _of_the_clock(fixes, found, step_s, settings)
    # Of the clocks of two halves nobody knows which is right.
    if not found or 2 * sum(after - first for first, after in found) > len(fixes):
        return fixes, []
    time_s = fixes.time_s.copy()
    for first, after in found:
        time_s[first - 1 : after + 1] = np.linspace(
            time_s[first - 1], time_s[after], after - first + 2
        )
    return fixes.at_times(time_s), [returned_account(time_s - fixes.time_s)]


def _stretches(
    fixes: Fixes, leapt: NDArray[np.int64], step_s: FloatArray, settings: CleaningSettings
) -> list[tuple[int, int]]:
    """Give the stretches between two leaps that leave the time of their fixes between them.

    Each is its first fix and the first one after it. None has a beginning of a part of the
    file in it or on either side: parts are listed in any order.
    """
    if len(leapt) < 2:
        return []
    usual_s = float(np.median(step_s))
    ordinary = (step_s > 0.0) & (step_s <= longest_step_s(usual_s, settings))
    mean_s = float(step_s[ordinary].mean()) if ordinary.any() else usual_s
    spread_s = float(step_s[ordinary].std()) if ordinary.any() else 0.0
    part = np.cumsum(part_begins(fixes))
    found = []
    for further in range(1, min(settings.leaps_looked_at, len(leapt) - 1) + 1):
        first, after = leapt[:-further], leapt[further:]
        took_s = fixes.time_s[after] - fixes.time_s[first - 1]
        steps = after - first + 1
        differ_s = settings.stretch_spreads * spread_s * np.sqrt(steps)
        few_s = settings.stretch_least * steps * min(usual_s, mean_s)
        many_s = settings.stretch_most * steps * max(usual_s, mean_s)
        least_s = np.minimum(few_s, steps * mean_s - differ_s)
        most_s = np.maximum(many_s, steps * mean_s + differ_s)
        fits = (took_s >= least_s) & (took_s <= most_s) & (took_s > 0.0)
        fits &= part[first - 1] == part[after]
        reach_m = settings.spike_slack_m + settings.fast_pace_m_s * took_s
        fits &= fixes.apart_m(first - 1, after) <= reach_m
        found += list(zip(first[fits].tolist(), after[fits].tolist(), strict=True))
    return found


def _apart(stretches: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Give those stretches that touch no shorter one."""
    kept: list[tuple[int, int]] = []
    taken: set[int] = set()
    for first, after in sorted(stretches, key=lambda one: (one[1] - one[0], one[0])):
        places = range(first - 1, after + 1)
        if taken.isdisjoint(places):
            taken.update(places)
            kept.append((first, after))
    return kept


def _of_the_clock(
    fixes: Fixes,
    stretches: list[tuple[int, int]],
    step_s: FloatArray,
    settings: CleaningSettings,
) -> list[tuple[int, int]]:
    """Give the stretches whose fixes do not lie where the others have the walker at their times.

    That is asked only of those that come late by so little that fixes may.
    """
    outside = np.ones(len(fixes), dtype=np.bool_)
    for first, after in stretches:
        outside[first:after] = False
    others = fixes.take(outside)
    others = others.sorted_by(others.time_s)
    found = []
    for first, after in stretches:
        late = np.abs(step_s[[first, after]]).min() <= settings.clock_jump_s
        between = fixes.take(np.arange(first, after))
        if not late or usually_off_m(between, others) > settings.same_place_m:
            found.append((first, after))
    return found
