"""Spikes: a few fixes that nobody could have gone to and come back from in the time."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_fixes import Fixes
from audit.matching.clean_steps import Steps
from audit.settings import CleaningSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Runs:
    """Runs of fixes that are spikes, each the ``length`` fixes after the fix ``anchor``.

    ``worth_m`` is the walking beyond this walker's pace that goes if the run goes.
    """

    anchor: NDArray[np.int64]
    length: NDArray[np.int64]
    worth_m: FloatArray


def spikes(fixes: Fixes, steps: Steps, settings: CleaningSettings) -> NDArray[np.int64]:
    """Give the places of fixes that are spikes, the surest of those that touch each other.

    A run of up to ``spike_longest_fixes`` is a spike when the way out to it and back is
    longer than this walker covers in that time, at the brisk pace of the whole walk and
    the fastest just before and after, while the fixes on either side agree. A ride
    keeps its pace and is left alone; so is a place where anyone stayed for longer.
    """
    longest = min(settings.spike_longest_fixes, len(fixes) - 2)
    found = [_runs(fixes, steps, length, settings) for length in range(1, longest + 1)]
    if not found:
        return np.zeros(0, dtype=np.int64)
    runs = _Runs(
        anchor=np.concatenate([run.anchor for run in found]),
        length=np.concatenate([run.length for run in found]),
        worth_m=np.concatenate([run.worth_m for run in found]),
    )
    best = _best_apart(runs, len(fixes))
    offset = np.arange(settings.spike_longest_fixes)
    members = runs.anchor[best][:, None] + 1 + offset
    return np.sort(members[offset < runs.length[best][:, None]])


def _runs(fixes: Fixes, steps: Steps, length: int, settings: CleaningSettings) -> _Runs:
    """Find the spikes of one length."""
    anchor = _anchors(steps, length)
    back = anchor + length
    own_m_s = np.maximum(steps.before(anchor), steps.after(back)).clip(min=steps.pace_m_s)
    reach_m = settings.spike_slack_m + own_m_s[:, None] * steps.time_s[_span(anchor, length)]
    beyond_m = steps.length_m[_span(anchor, length)] - reach_m
    bridge_s = steps.time_s[_span(anchor, length)].sum(axis=1)
    agree = fixes.apart_m(anchor, back + 1) <= settings.spike_slack_m + own_m_s * bridge_s
    both_m = beyond_m[:, 0] + beyond_m[:, -1]
    far = (beyond_m[:, 0] > 0.0) & (beyond_m[:, -1] > 0.0)
    far |= (both_m > 0.0) & _turned_back(steps, anchor, back, own_m_s, settings)
    silent = steps.silent[_span(anchor, length)][:, 1:-1].any(axis=1)
    spike = agree & far & ~silent & ~_dash(steps, anchor, back, settings)
    worth_m = np.maximum(beyond_m.clip(min=0.0).sum(axis=1), both_m)
    worth_m = worth_m - settings.spike_fix_m * (length - 1)
    return _Runs(
        anchor=anchor[spike],
        length=np.full(int(spike.sum()), length, dtype=np.int64),
        worth_m=worth_m[spike],
    )


def _anchors(steps: Steps, length: int) -> NDArray[np.int64]:
    """Give the fixes before runs that are entered or left by a fast step."""
    fast = np.flatnonzero(steps.fast)
    anchor = np.union1d(fast, fast - length)
    return anchor[(anchor >= 0) & (anchor + length < len(steps.length_m))]


def _span(anchor: NDArray[np.int64], length: int) -> NDArray[np.int64]:
    """Give the steps of each run, from the way out to the way back."""
    return anchor[:, None] + np.arange(length + 1)


def _turned_back(
    steps: Steps,
    out: NDArray[np.int64],
    back: NDArray[np.int64],
    own_m_s: FloatArray,
    settings: CleaningSettings,
) -> NDArray[np.bool_]:
    """Tell where the way back reverses the way out, and is more than an ordinary step.

    A spike along the line of march goes out fast and comes back slowly, or the other
    way about. A lasting shift of the position goes out fast and on in some direction.
    """
    longer = np.minimum(steps.length_m[out], steps.length_m[back]) > settings.spike_slack_m
    slower_m_s = np.minimum(steps.speed_m_s(out), steps.speed_m_s(back))
    result: NDArray[np.bool_] = (
        (steps.cosine(out, back) < settings.turned_back_cosine)
        & longer
        & (slower_m_s > settings.lesser_way * own_m_s)
    )
    return result


def _dash(
    steps: Steps, out: NDArray[np.int64], back: NDArray[np.int64], settings: CleaningSettings
) -> NDArray[np.bool_]:
    """Tell where somebody ran or rode out and back: two steps on, and two steps home.

    A spike jumps out at once and then keeps the pace of the walk, or jumps about.
    """
    on = _goes_on(steps, out, -1, settings)
    home = _goes_on(steps, back, 1, settings)
    if len(out) and back[0] - out[0] >= 3:
        on |= _goes_on(steps, out, 1, settings)
        home |= _goes_on(steps, back, -1, settings)
    fastest_m_s = np.maximum(steps.speed_m_s(out), steps.speed_m_s(back))
    return on & home & (fastest_m_s < settings.fastest_ride_m_s)


def _goes_on(
    steps: Steps, step: NDArray[np.int64], offset: int, settings: CleaningSettings
) -> NDArray[np.bool_]:
    """Tell where the step beside each has about its direction and speed."""
    beside = step + offset
    there = (beside >= 0) & (beside < len(steps.length_m))
    beside = np.where(there, beside, step)
    alike = steps.speed_m_s(beside) > settings.ride_keeps_pace * steps.speed_m_s(step)
    alike &= steps.cosine(step, beside) > settings.straight_on_cosine
    result: NDArray[np.bool_] = there & alike
    return result


def _best_apart(runs: _Runs, fixes: int) -> NDArray[np.int64]:
    """Give the runs that are worth more than every other run that they touch."""
    rank = np.empty(len(runs.anchor), dtype=np.int64)
    rank[np.argsort(-runs.worth_m, kind="stable")] = np.arange(len(rank))
    best_rank = np.full(fixes, len(rank))
    reach = runs.length.max(initial=0) + 2
    for offset in range(reach):
        touching = offset <= runs.length + 1
        np.minimum.at(best_rank, runs.anchor[touching] + offset, rank[touching])
    beaten = np.zeros(len(rank), dtype=np.bool_)
    for offset in range(reach):
        touching = offset <= runs.length + 1
        beaten[touching] |= best_rank[runs.anchor[touching] + offset] < rank[touching]
    return np.flatnonzero(~beaten)
