"""From a recording to the walk: fixes in order of time, on the grid, without spikes.

Nothing is done silently: whatever was left out, moved or supposed is in ``cleaning``.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.errors import refuse
from audit.geodesy.grids import CourseGrid
from audit.matching.clean_clock import in_blocks
from audit.matching.clean_fixes import Fixes
from audit.matching.clean_intervals import usual_intervals_s
from audit.matching.clean_loose_ends import loose_ends
from audit.matching.clean_parallel import one_at_a_time
from audit.matching.clean_spikes import spikes
from audit.matching.clean_steps import measure_steps, silence_s
from audit.matching.clean_times import keep_timed
from audit.matching.leg_match import Cleaning, CleanTrack, Gap, usual_of
from audit.read_only import read_only
from audit.settings import CleaningSettings
from audit.track import Track
from audit.units import FloatArray
from audit.words import sentence


def clean_track(track: Track, grid: CourseGrid, settings: CleaningSettings) -> CleanTrack:
    """Give the fixes worth going by, in order of time, and an account of the others.

    Notes
    -----
    ``Cleaning.what`` is one of: off-grid, no-time, few-times, side-by-side, same-time,
    same-place, spike, stray-end (``count`` fixes left out); clock-jump (fixes whose time
    was moved); out-of-order, parts-out-of-order, mixed-by-time (fixes or parts put in
    order); no-times, clock-not-set (fixes whose times say nothing).

    Raises
    ------
    InputRefusedError
        When no fix lies where the grid of the course can show it.
    """
    fixes, cleaning = _on_grid(track, grid)
    fixes, timed, left_out = keep_timed(fixes, settings)
    cleaning += left_out
    if timed:
        fixes, block, mended = in_blocks(fixes, settings)
        fixes, merged = one_at_a_time(fixes, block, settings)
        fixes, despiked = _without_spikes(fixes, settings)
        cleaning += mended + merged + despiked
    else:
        fixes, walked = _even_walk(fixes, settings)
        cleaning += walked
    usual_s = usual_intervals_s(fixes, settings) if timed else None
    return CleanTrack(
        time_s=read_only(fixes.time_s),
        east_m=read_only(fixes.east_m),
        north_m=read_only(fixes.north_m),
        elevation_m=read_only(_of_fixes(track.elevation_m, fixes.fix)),
        hdop=read_only(_of_fixes(track.hdop, fixes.fix)),
        fix=read_only(fixes.fix),
        timed=timed,
        gaps=() if usual_s is None else _gaps(fixes.time_s, usual_s, settings),
        cleaning=tuple(cleaning),
        median_interval_s=None if usual_s is None else usual_of(usual_s),
        usual_s=None if usual_s is None else read_only(usual_s),
    )


def _of_fixes(column: FloatArray, fix: NDArray[np.int64]) -> FloatArray:
    """Give a column of the recording for some fixes; itself where all are kept in order."""
    every = len(fix) == len(column) and bool((fix[1:] > fix[:-1]).all())
    return column if every else column[fix]


def _on_grid(track: Track, grid: CourseGrid) -> tuple[Fixes, list[Cleaning]]:
    east_m, north_m = grid.to_grid(track.longitude_deg, track.latitude_deg)
    shown = np.isfinite(east_m) & np.isfinite(north_m)
    if not shown.any():
        raise refuse(
            track.source or "track",
            "",
            None,
            "lies wholly outside of what the grid of the course can show",
            "Check that plan and recording are of the same walk.",
        )
    fixes = Fixes(
        fix=np.arange(len(track), dtype=np.int64),
        time_s=track.time_s,
        east_m=east_m,
        north_m=north_m,
        segment=track.segment,
    )
    if shown.all():
        return fixes, []
    detail = sentence("recording-detail-off-grid")
    off = Cleaning(what="off-grid", count=int((~shown).sum()), detail=detail)
    return fixes.take(shown), [off]


def _without_spikes(fixes: Fixes, settings: CleaningSettings) -> tuple[Fixes, list[Cleaning]]:
    """Leave spikes and stray ends out, in rounds, until a second cleaning would find none."""
    spike_count = stray_count = 0
    for _ in range(settings.most_rounds):
        spiked, strayed = _spikes_or_strays(fixes, settings)
        spike_count += len(spiked)
        stray_count += len(strayed)
        if len(spiked) + len(strayed) == 0:
            break
        fixes = fixes.without(np.concatenate([spiked, strayed]))
    return fixes, _spike_account(spike_count, stray_count)


def _spikes_or_strays(
    fixes: Fixes, settings: CleaningSettings
) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Give the places of spikes; where there are none, those of stray ends."""
    none = np.empty(0, dtype=np.int64)
    steps = measure_steps(fixes, settings)
    if not steps.fast.any():
        return none, none
    found = spikes(fixes, steps, settings)
    return found, none if len(found) else loose_ends(fixes, steps, settings)


def _spike_account(spike_count: int, stray_count: int) -> list[Cleaning]:
    account = []
    if spike_count:
        detail = sentence("recording-detail-spike")
        account.append(Cleaning(what="spike", count=spike_count, detail=detail))
    if stray_count:
        detail = sentence("recording-detail-stray")
        account.append(Cleaning(what="stray-end", count=stray_count, detail=detail))
    return account


def _even_walk(fixes: Fixes, settings: CleaningSettings) -> tuple[Fixes, list[Cleaning]]:
    """Put fixes without times on the time axis of an even walk in the order of the file."""
    moved = np.concatenate([[True], fixes.steps_m() > 0.0])
    account = []
    if not moved.all():
        detail = sentence("recording-detail-same-place")
        account.append(Cleaning(what="same-place", count=int((~moved).sum()), detail=detail))
        fixes = fixes.take(moved)
    # A floor under each step keeps the axis rising where steps drown in rounding.
    step_s = np.maximum(fixes.steps_m() / settings.untimed_speed_m_s, 1e-3)
    return fixes.at_times(np.concatenate([[0.0], np.cumsum(step_s)])), account


def _gaps(time_s: FloatArray, usual_s: FloatArray, settings: CleaningSettings) -> tuple[Gap, ...]:
    silent = np.flatnonzero(np.diff(time_s) > silence_s(usual_s, settings))
    return tuple(
        Gap(before=int(place), start_s=float(time_s[place]), end_s=float(time_s[place + 1]))
        for place in silent
    )
