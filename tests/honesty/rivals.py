"""Two usual ways to a heading and its error, to be compared with the project's."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegMeasures
from audit.units import direction_degrees, unit_vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval:
    """An azimuth with half its 95 % interval."""

    azimuth_deg: float
    half_deg: float


def end_points(clean: CleanTrack, measures: LegMeasures) -> Interval:
    """From the fix at the start to the fix at the claim, each with the receiver's noise."""
    first, last = measures.start.fix, measures.claim.fix
    east = float(clean.east_m[last] - clean.east_m[first])
    north = float(clean.north_m[last] - clean.north_m[first])
    length = max(float(np.hypot(east, north)), 1.0)
    half = 1.96 * np.sqrt(2.0) * (measures.noise_m or 0.0) / length
    return Interval(
        azimuth_deg=direction_degrees(east, north), half_deg=float(min(np.degrees(half), 180.0))
    )


def independent_noise(clean: CleanTrack, measures: LegMeasures) -> Interval:
    """A straight line through all fixes of the leg, their offsets taken as independent."""
    index = np.arange(measures.start.fix, measures.claim.fix + 1)
    chord = end_points(clean, measures).azimuth_deg
    ahead = unit_vector(chord)
    east = clean.east_m[index] - clean.east_m[index].mean()
    north = clean.north_m[index] - clean.north_m[index].mean()
    along, across = east * ahead[0] + north * ahead[1], east * ahead[1] - north * ahead[0]
    square = float(along @ along)
    if len(index) < 3 or square <= 0.0:
        return Interval(azimuth_deg=chord, half_deg=180.0)
    slope = float(along @ across) / square
    left = across - slope * along
    sd = np.sqrt(float(left @ left) / (len(index) - 2) / square)
    return Interval(
        azimuth_deg=chord + float(np.degrees(np.arctan(slope))),
        half_deg=float(np.degrees(1.96 * sd)),
    )
