"""Paces to 100 m by the cadence of a recording, in all and by kind of ground."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.leg_card.pace_kind import PaceKind
from audit.measurement.leg_details import Ground
from audit.measurement.paces_of_walk import GROUNDS, PaceRate, read_cadence
from audit.pacing.ground_of_steps import ground_of_steps
from audit.pacing.recorded_walk import RecordedWalk
from audit.settings import Settings
from audit.track import Track
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class CadenceRates:
    """Pace counts by cadence.

    Attributes
    ----------
    whole : PaceRate
    on : dict
        By kind of ground, where elevations can be trusted.
    left_out_m : float
        Walked without a cadence to go by.
    why_no_ground : str
        Why the kinds of ground are not told; "" where they are.
    """

    whole: PaceRate
    on: dict[Ground, PaceRate]
    left_out_m: float
    why_no_ground: str


def cadence_rates(
    track: Track, walk: RecordedWalk, pace: PaceKind, settings: Settings
) -> CadenceRates | None:
    """Give the rates; None where the recording has no cadence, or no times.

    Only steps on foot with a known cadence count, so a device that falls silent at a
    halt, or forgets to count, makes no rate too small.
    """
    if not walk.clean.timed:
        return None
    pacing = settings.pacing
    kept = track.cadence_per_min[walk.clean.fix]
    cadence = read_cadence(kept, pace, settings.paces)
    if cadence is None:
        return None
    per_min = _at_steps(cadence.per_min, walk)
    usual = float(np.nanmedian(np.where(per_min > 0.0, per_min, np.nan)))
    known = np.isfinite(per_min) & (per_min > pacing.least_cadence_share * usual)
    counted = known & walk.on_foot
    step_s = np.diff(walk.samples.time_s)
    paces = np.where(counted, per_min * step_s / 60.0, 0.0)
    metres = np.where(counted, walk.step_m, 0.0)
    if metres.sum() < pacing.least_cadence_m:
        return None
    block = (np.cumsum(metres) // pacing.block_m).astype(np.int64)
    kind, why = ground_of_steps(walk, settings)
    by_kind = {name: _rate(paces, metres, block, kind == name, settings) for name in GROUNDS}
    return CadenceRates(
        whole=_rate(paces, metres, block, counted, settings),
        on={
            name: rate
            for name, rate in by_kind.items()
            if rate.metres >= settings.paces.least_ground_m
        },
        left_out_m=float(walk.step_m[walk.on_foot & ~known].sum()),
        why_no_ground=why,
    )


def _at_steps(per_min: FloatArray, walk: RecordedWalk) -> FloatArray:
    """Give the cadence in the middle of each step, from the nearest fix that has one."""
    known = np.isfinite(per_min)
    time_s = walk.clean.time_s[known]
    middle = (walk.samples.time_s[1:] + walk.samples.time_s[:-1]) / 2.0
    after = np.clip(np.searchsorted(time_s, middle), 1, len(time_s) - 1)
    nearest = np.where(middle - time_s[after - 1] < time_s[after] - middle, after - 1, after)
    return per_min[known][nearest]


def _rate(
    paces: FloatArray,
    metres: FloatArray,
    block: NDArray[np.int64],
    which: NDArray[np.bool_],
    settings: Settings,
) -> PaceRate:
    """Give all paces over all metres, and how far the ratio may be off.

    The scatter between blocks of the way stands for the walker's changing step (a ratio
    estimate with its blocks as sample); the smoothed path may be off as a whole.
    """
    total_m = float(metres[which].sum())
    if total_m <= 0.0:
        return PaceRate(per_100m=float("nan"), sd=float("inf"), metres=0.0)
    rate = float(paces[which].sum()) / total_m
    counts = np.bincount(block[which], paces[which])
    lengths = np.bincount(block[which], metres[which])
    blocks = int((lengths > 0.0).sum())
    left = counts - rate * lengths
    scatter = float((left**2).sum()) * blocks / max(blocks - 1, 1)
    usual = (settings.paces.count_sd * rate) ** 2 * float((lengths**2).mean())
    # A single block cannot show how much blocks differ: a careful count's error stands in.
    sd = np.sqrt(scatter + (usual if blocks < 3 else 0.0)) / total_m
    return PaceRate(
        per_100m=100.0 * rate,
        sd=100.0 * float(np.hypot(sd, settings.measuring.path_sd * rate)),
        metres=total_m,
    )
