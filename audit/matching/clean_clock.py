"""Clocks that are put back while the walker walks on, and fixes that come late."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_clock_returns import mend_returns, usually_off_m
from audit.matching.clean_clock_steps import in_orderly_parts, leaps, part_begins
from audit.matching.clean_clock_stretches import mend_stretches
from audit.matching.clean_fixes import Fixes, usual_interval_s
from audit.matching.leg_match import Cleaning
from audit.settings import CleaningSettings
from audit.statistics.runs import runs_of_one
from audit.units import FloatArray
from audit.words import sentence
from audit.words.figures import Number

Blocks = NDArray[np.int64]
"""For each fix the number of its block: a part of the file, or what one clock setting has of it."""


def in_blocks(fixes: Fixes, settings: CleaningSettings) -> tuple[Fixes, Blocks, list[Cleaning]]:
    """Give the fixes block by block, each in order of time, with the clock mended.

    Sorting would fold a walk over itself where the clock was put back. There the order
    of the file is kept, and times are moved so that the clock runs on; the clock that
    has most fixes is believed.
    """
    fixes, cleaning = mend_returns(fixes.sorted_by(fixes.segment), settings)
    fixes, stretches = mend_stretches(fixes, settings)
    cleaning += stretches
    step_s = np.diff(fixes.time_s, prepend=fixes.time_s[:1])
    little = _put_back_a_little(fixes, step_s, settings)
    begins = _block_begins(fixes, step_s, settings)
    begins[little] = True
    block = np.cumsum(begins) - 1
    late = _late_fixes(fixes, block)
    little = block[little]
    if late:
        order = np.lexsort((fixes.time_s, block))
        fixes, block = fixes.take(order), block[order]
    cleaning += late
    put_back = np.union1d(_clock_put_back(fixes, block, settings), little)
    if len(put_back):
        fixes, block, moved = _mend(fixes, block, put_back)
        cleaning.append(moved)
    return fixes, block, cleaning


def block_edges(block: Blocks) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Give the place of the first and of the last fix of each block."""
    first, end = runs_of_one(block).T
    return first, end - 1


def _block_begins(
    fixes: Fixes, step_s: FloatArray, settings: CleaningSettings
) -> NDArray[np.bool_]:
    """Tell where parts of the file begin, and where inside one the clock jumps back."""
    begins = part_begins(fixes)
    jumps = step_s < -settings.clock_jump_s
    if not jumps.any():
        return begins
    result: NDArray[np.bool_] = begins | (jumps & in_orderly_parts(step_s, begins, settings))
    return result


def _put_back_a_little(
    fixes: Fixes, step_s: FloatArray, settings: CleaningSettings
) -> NDArray[np.int64]:
    """Give the fixes before which the clock went back by less than late fixes may be late.

    Late fixes lie where the others have the walker at their times. Where those that follow
    lie elsewhere, and go on from where the walker is, the order of the file is right.
    """
    leapt = leaps(fixes, step_s, settings)
    suspects = leapt[(step_s[leapt] < 0.0) & (step_s[leapt] >= -settings.clock_jump_s)]
    if len(suspects) == 0:
        return suspects
    begins = part_begins(fixes) | (step_s < -settings.clock_jump_s)
    begins[suspects] = True
    edges = np.append(np.flatnonzero(begins), len(fixes))
    sure = []
    for place, at in zip(suspects, np.searchsorted(edges, suspects), strict=True):
        before = fixes.take(np.arange(edges[at - 1], place))
        after = fixes.take(np.arange(place, edges[at + 1]))
        off_m = usually_off_m(after, before.sorted_by(before.time_s))
        if settings.same_place_m < off_m < np.inf:
            sure.append(place)
    return np.array(sure, dtype=np.int64)


def _late_fixes(fixes: Fixes, block: Blocks) -> list[Cleaning]:
    time_s = fixes.time_s
    late = int(((time_s[1:] < time_s[:-1]) & (block[1:] == block[:-1])).sum())
    if late == 0:
        return []
    detail = sentence("recording-detail-out-of-order")
    return [Cleaning(what="out-of-order", count=late, detail=detail)]


def _clock_put_back(fixes: Fixes, block: Blocks, settings: CleaningSettings) -> NDArray[np.int64]:
    """Give the blocks at whose beginning the clock went back and the walker did not."""
    first, last = block_edges(block)
    back = fixes.time_s[first[1:]] < fixes.time_s[last[:-1]] - settings.clock_jump_s
    stayed = fixes.apart_m(last[:-1], first[1:]) <= settings.same_place_m
    suspects = np.flatnonzero(back & stayed) + 1
    sure = [
        after
        for after in suspects
        if _elsewhere_by_clock(fixes, slice(first[after - 1], first[after]), first[after], settings)
    ]
    return np.array(sure, dtype=np.int64)


def _elsewhere_by_clock(
    fixes: Fixes, before: slice, begin: np.int64, settings: CleaningSettings
) -> bool:
    """Tell whether the new block's clock names a moment at which the walker was not there.

    If he was, the block is a second recording of the same walk. If the old block knows
    nothing of that moment, only a jump inside one part of the file speaks for the clock.
    """
    time_s = fixes.time_s[before]
    moment = fixes.time_s[begin]
    if moment < time_s[0]:
        return bool(fixes.segment[begin] == fixes.segment[begin - 1])
    east = np.interp(moment, time_s, fixes.east_m[before])
    north = np.interp(moment, time_s, fixes.north_m[before])
    off_m = np.hypot(fixes.east_m[begin] - east, fixes.north_m[begin] - north)
    return bool(off_m > 2.0 * settings.same_place_m)


def _mend(
    fixes: Fixes, block: Blocks, put_back: NDArray[np.int64]
) -> tuple[Fixes, Blocks, Cleaning]:
    """Let the clock run on over each jump, after the usual interval."""
    first, last = block_edges(block)
    usual_s = float(np.median([usual_interval_s(part) for part in _times(fixes, put_back, first)]))
    ahead_s = np.zeros(len(first))
    ahead_s[put_back] = fixes.time_s[last[put_back - 1]] - fixes.time_s[first[put_back]] + usual_s
    setting = np.cumsum(np.isin(np.arange(len(first)), put_back))
    believed = np.argmax(np.bincount(setting, weights=last - first + 1))
    moved_s = np.cumsum(ahead_s)
    moved_s -= moved_s[setting == believed][0]
    by_fix = moved_s[block]
    count = int((by_fix != 0.0).sum())
    most = abs(by_fix).max()
    minutes = Number(value=float(most) / 60.0)
    detail = sentence("recording-detail-clock-jump", count=count, minutes=minutes)
    fixes = fixes.at_times(fixes.time_s + by_fix)
    account = Cleaning(what="clock-jump", count=count, detail=detail, weighs=True)
    return fixes, block - setting[block], account


def _times(fixes: Fixes, put_back: NDArray[np.int64], first: NDArray[np.int64]) -> list[FloatArray]:
    """Give the times of the blocks that a jump ends."""
    return [fixes.time_s[first[after - 1] : first[after]] for after in put_back]
