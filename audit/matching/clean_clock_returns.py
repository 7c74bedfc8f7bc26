"""Clocks that leap away and come back while the walker walks on."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_clock_steps import leaps, part_begins
from audit.matching.clean_fixes import Fixes
from audit.matching.clean_steps import longest_step_s
from audit.matching.leg_match import Cleaning
from audit.settings import CleaningSettings
from audit.units import FloatArray
from audit.words import sentence
from audit.words.figures import Number


def mend_returns(fixes: Fixes, settings: CleaningSettings) -> tuple[Fixes, list[Cleaning]]:
    """Give the fixes, in the order of the file, by the clock that most of them have.

    A leap that an opposite one takes back is no silence of the recorder: by the clock
    outside as much time went by as by the clock between the two, fix by fix.
    """
    step_s = np.diff(fixes.time_s, prepend=fixes.time_s[:1])
    leapt = leaps(fixes, step_s, settings)
    if len(leapt) == 0:
        return fixes, []
    pairs = _opposites(fixes, leapt, step_s, settings)
    ahead_s = np.zeros(len(fixes))
    for one, other in _of_the_clock(fixes, pairs, step_s, settings):
        off_s = (step_s[one] - step_s[other]) / 2.0
        ahead_s[one] -= off_s
        ahead_s[other] += off_s
    if not ahead_s.any():
        return fixes, []
    # To the millisecond: sums of the same leaps differ by rounding.
    offsets_s, clock, counts = np.unique(
        np.round(np.cumsum(ahead_s), 3), return_inverse=True, return_counts=True
    )
    moved_s = (offsets_s - offsets_s[np.argmax(counts)])[clock]
    return fixes.at_times(fixes.time_s + moved_s), [returned_account(moved_s)]


def _opposites(
    fixes: Fixes, leapt: NDArray[np.int64], step_s: FloatArray, settings: CleaningSettings
) -> list[tuple[int, int]]:
    """Pair each leap back with the nearest leap forward that it cancels, as rising places.

    The two cancel but for the two steps of the walk that they hide, a rest only by chance.
    Where they hide more than two steps usually take, it must have been walked: a rest may be
    a little longer than the clock was put back.
    """
    forward = leapt[step_s[leapt] > 0.0]
    back = leapt[step_s[leapt] < 0.0]
    most_s = 2.0 * longest_step_s(float(np.median(step_s)), settings)
    usual_s = 2.0 * float(np.quantile(step_s, settings.usual_step_quantile))
    step_m = np.concatenate([[0.0], fixes.steps_m()])
    found, many = [], settings.leaps_looked_at
    for place in back:
        middle = np.searchsorted(forward, place)
        near = forward[max(0, middle - many) : middle + many]
        left_s = step_s[place] + step_s[near]
        walked = step_m[place] + step_m[near] >= settings.leap_pace_m_s * left_s
        near = near[(left_s > 0.0) & (left_s <= most_s) & (walked | (left_s <= usual_s))]
        if len(near):
            found.append((int(place), int(near[np.argmin(np.abs(near - place))])))
    pairs, taken = [], set()
    for place, other in sorted(found, key=lambda pair: abs(pair[1] - pair[0])):
        if other not in taken:
            taken.add(other)
            pairs.append((min(place, other), max(place, other)))
    return pairs


def _of_the_clock(
    fixes: Fixes, pairs: list[tuple[int, int]], step_s: FloatArray, settings: CleaningSettings
) -> list[tuple[int, int]]:
    """Give the pairs whose fixes between belong elsewhere than where they say.

    They may belong there where they are late by no more than ``clock_jump_s``, or where a part
    of the file begins with them or after them: parts are listed in any order.
    """
    begins = part_begins(fixes)
    small = np.abs(step_s) <= settings.clock_jump_s
    outside = np.ones(len(fixes), dtype=np.bool_)
    for one, other in pairs:
        outside[one:other] = False
    others = fixes.take(outside) if pairs else fixes
    others = others.sorted_by(others.time_s)
    time_s = np.sort(fixes.time_s)
    longest_s = longest_step_s(float(np.median(step_s)), settings)
    found = []
    for one, other in pairs:
        between = fixes.take(np.arange(one, other))
        late = small[one] or small[other]
        if late and usually_off_m(between, others) <= settings.same_place_m:
            continue
        off_s = (step_s[one] - step_s[other]) / 2.0
        if late or begins[one] or begins[other]:
            runs_on = fixes.time_s[one - 1] < fixes.time_s[other]
            if not runs_on or _crowd(between, off_s, time_s, longest_s, settings.late_fixes):
                continue
        found.append((one, other))
    return found


def _crowd(these: Fixes, off_s: float, time_s: FloatArray, longest_s: float, few: int) -> bool:
    """Tell whether some fixes, once put right, meet others that they do not meet as they are.

    Where a clock leapt away and came back, it left a silence that is just theirs. ``time_s``
    holds the times of the whole file, as they rise; ``longest_s`` is the longest step of a walk,
    and so ``few`` that meet show nothing.
    """
    own_s = np.sort(these.time_s)
    step_s = np.diff(these.time_s)
    steps = np.flatnonzero((step_s > 0.0) & (step_s <= longest_s))
    edges_s = np.stack([these.time_s[steps], these.time_s[steps + 1]])

    def met(at_s: FloatArray) -> int:
        count = np.searchsorted(time_s, at_s) - np.searchsorted(own_s, at_s)
        return int((count[1] - count[0]).sum())

    return met(edges_s - off_s) > met(edges_s) + few


def usually_off_m(these: Fixes, others: Fixes) -> float:
    """Give how far some fixes usually are from where others have the walker at their times.

    Infinite where the others, in order of time, say nothing of those moments.
    """
    told = (these.time_s >= others.time_s[0]) & (these.time_s <= others.time_s[-1])
    if not told.any():
        return np.inf
    east_m = np.interp(these.time_s[told], others.time_s, others.east_m)
    north_m = np.interp(these.time_s[told], others.time_s, others.north_m)
    return float(np.median(np.hypot(these.east_m[told] - east_m, these.north_m[told] - north_m)))


def returned_account(moved_s: FloatArray) -> Cleaning:
    """Tell of a clock that leapt and came back: which fixes were moved, and how far at most."""
    count = int(np.count_nonzero(moved_s))
    minutes = Number(value=float(np.abs(moved_s).max()) / 60.0)
    detail = sentence("recording-detail-clock-returned", count=count, minutes=minutes)
    return Cleaning(what="clock-jump", count=count, detail=detail, weighs=True)
