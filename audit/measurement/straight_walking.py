"""Stretches of straight walking that show the receiver's noise where nobody stood still."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.settings import HeadingSettings, NoiseSettings
from audit.statistics.walking_noise import Wander
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class StraightStretch:
    """Moments, how far right of the chord the walker was then, and how fast he went."""

    time_s: FloatArray
    across_m: FloatArray
    speed_m_s: float


def straight_stretches(
    clean: CleanTrack,
    walks: Sequence[tuple[float, float]],
    halts: FloatArray,
    settings: NoiseSettings,
) -> list[StraightStretch]:
    """Cut the walks between two moments each into straight stretches, the longest first.

    A stretch holds no halt and no gap, and nowhere goes far off its own direction, as
    a bypass or a bend does.
    """
    breaks = [(gap.start_s, gap.end_s) for gap in clean.gaps]
    breaks += [(float(start_s), float(end_s)) for start_s, end_s in halts]
    found = []
    for begin_s, end_s in walks:
        inside = [one for one in breaks if one[1] > begin_s and one[0] < end_s]
        ends = [begin_s, *(moment for one in sorted(inside) for moment in one), end_s]
        for from_s, to_s in zip(ends[::2], ends[1::2], strict=True):
            found += _pieces(clean, from_s, to_s, settings)
    found.sort(key=lambda one: -float(one.time_s[-1] - one.time_s[0]))
    return found[: settings.most_stretches]


def wander_of(stretch: StraightStretch, settings: HeadingSettings) -> Wander:
    """Give what is known beforehand of the walker's wandering at this speed."""
    deviates = np.array(settings.strength_deviates)
    usual_m_s = stretch.speed_m_s * np.radians(settings.wander_sd_deg)
    return Wander(
        speeds_m_s=usual_m_s * np.exp(settings.wander_log_sd * deviates),
        log_prior=-0.5 * deviates**2,
        memories_s=settings.wander_correlations_s,
    )


def _pieces(
    clean: CleanTrack, from_s: float, to_s: float, settings: NoiseSettings
) -> list[StraightStretch]:
    """Divide a walk into pieces of equal length, and keep those that are straight."""
    length_s = to_s - from_s
    if length_s < settings.shortest_stretch_s:
        return []
    marks = np.linspace(from_s, to_s, int(np.ceil(length_s / settings.longest_stretch_s)) + 1)
    pieces = []
    for begin_s, end_s in pairwise(marks):
        piece = _piece(clean, float(begin_s), float(end_s), settings)
        if piece is not None:
            pieces.append(piece)
    return pieces


def _piece(
    clean: CleanTrack, from_s: float, to_s: float, settings: NoiseSettings
) -> StraightStretch | None:
    inside = np.flatnonzero((clean.time_s >= from_s) & (clean.time_s <= to_s))
    if len(inside) < settings.least_walking_fixes:
        return None
    every = int(np.ceil(settings.spacing_s / ((to_s - from_s) / len(inside))))
    index = inside[::every]
    if len(index) < settings.least_walking_fixes:
        return None
    time_s = clean.time_s[index]
    place = clean.places(index)
    chord = place[-1] - place[0]
    length_m = float(np.hypot(*chord))
    if length_m < settings.shortest_stretch_m:
        return None
    ahead = chord / length_m
    along = (place - place[0]) @ ahead
    across = (place - place[0]) @ np.array([ahead[1], -ahead[0]])
    steep = np.tan(np.radians(settings.straight_deg))
    if np.any(np.abs(across[2:] - across[:-2]) > steep * np.maximum(along[2:] - along[:-2], 0.0)):
        return None
    lasted_s = float(time_s[-1] - time_s[0])
    return StraightStretch(time_s=time_s, across_m=across, speed_m_s=length_m / lasted_s)
