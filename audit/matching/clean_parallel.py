"""One walk out of recordings that ran at the same time."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.clean_clock import Blocks, block_edges
from audit.matching.clean_fixes import Fixes, usual_interval_s
from audit.matching.leg_match import Cleaning
from audit.settings import CleaningSettings
from audit.words import sentence
from audit.words.figures import Length


def one_at_a_time(
    fixes: Fixes, block: Blocks, settings: CleaningSettings
) -> tuple[Fixes, list[Cleaning]]:
    """Give fixes whose times rise strictly, from blocks that may overlap in time.

    Two receivers differ by metres, two walkers by more: mixed fix by fix they would
    make a zigzag. Of blocks that overlap the one with most fixes is kept, and of the
    others what falls into its silences.
    """
    cleaning = _parts_out_of_order(fixes, block)
    bunches = _bunches(fixes, block)
    crowds = [len(bunch) for bunch in bunches if len(bunch) > settings.most_side_by_side]
    if crowds:
        detail = sentence("recording-detail-mixed")
        cleaning.append(Cleaning(what="mixed-by-time", count=sum(crowds), detail=detail))
    covered = [
        _covered(fixes, bunch, settings)
        for bunch in bunches
        if len(bunch) <= settings.most_side_by_side
    ]
    left_out = np.concatenate([np.zeros(0, dtype=np.int64), *covered])
    if len(left_out):
        kept = fixes.without(left_out)
        cleaning.append(_parallel(kept, fixes.take(left_out)))
        fixes = kept
    fixes = fixes.sorted_by(fixes.time_s)
    repeats = np.diff(fixes.time_s, prepend=-np.inf) <= 0.0
    if repeats.any():
        cleaning.append(_same_time(fixes, repeats, settings))
        fixes = fixes.take(~repeats)
    return fixes, cleaning


def _parts_out_of_order(fixes: Fixes, block: Blocks) -> list[Cleaning]:
    first, _ = block_edges(block)
    early = int((np.diff(fixes.time_s[first]) < 0.0).sum())
    if early == 0:
        return []
    detail = sentence("recording-detail-parts")
    return [Cleaning(what="parts-out-of-order", count=early, detail=detail)]


def _bunches(fixes: Fixes, block: Blocks) -> list[list[NDArray[np.int64]]]:
    """Give the blocks that overlap in time, bunch by bunch, as the places of their fixes."""
    first, last = block_edges(block)
    order = np.argsort(fixes.time_s[first], kind="stable")
    latest_s = np.maximum.accumulate(fixes.time_s[last][order])
    alone = fixes.time_s[first][order][1:] >= latest_s[:-1]
    if alone.all():
        return []
    bunches = np.split(order, np.flatnonzero(alone) + 1)
    return [
        [np.arange(first[one], last[one] + 1) for one in bunch]
        for bunch in bunches
        if len(bunch) > 1
    ]


def _covered(
    fixes: Fixes, bunch: list[NDArray[np.int64]], settings: CleaningSettings
) -> NDArray[np.int64]:
    """Give the fixes that a block with more fixes covers, not being silent then."""
    blocks = sorted(bunch, key=len, reverse=True)
    kept_s = fixes.time_s[blocks[0]]
    silence_s = max(settings.gap_s, settings.gap_intervals * usual_interval_s(kept_s))
    left_out = []
    for block in blocks[1:]:
        times = fixes.time_s[block]
        place = np.searchsorted(kept_s, times)
        fenced = np.concatenate([[-np.inf], kept_s, [np.inf]])
        covered = fenced[place + 1] - fenced[place] <= silence_s
        covered |= fenced[place + 1] == times
        left_out.append(block[covered])
        kept_s = np.insert(kept_s, place[~covered], times[~covered])
    return np.concatenate(left_out)


def _parallel(kept: Fixes, left_out: Fixes) -> Cleaning:
    kept = kept.sorted_by(kept.time_s)
    east = np.interp(left_out.time_s, kept.time_s, kept.east_m)
    north = np.interp(left_out.time_s, kept.time_s, kept.north_m)
    apart_m = float(np.median(np.hypot(left_out.east_m - east, left_out.north_m - north)))
    detail = sentence("recording-detail-side-by-side", apart=Length(metres=apart_m))
    return Cleaning(what="side-by-side", count=len(left_out), detail=detail)


def _same_time(fixes: Fixes, repeats: NDArray[np.bool_], settings: CleaningSettings) -> Cleaning:
    place = np.flatnonzero(repeats)
    apart_m = fixes.apart_m(place - 1, place)
    elsewhere = int((apart_m > 0.0).sum())
    detail = sentence("recording-detail-same-time", elsewhere=elsewhere)
    far = bool((apart_m > settings.spike_slack_m).any())
    return Cleaning(what="same-time", count=len(place), detail=detail, weighs=far)
