"""The grid azimuth really walked on a leg, with its 95 % interval."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.azimuths import GridAzimuth
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import Heading
from audit.measurement.places import Fixed
from audit.settings import HeadingSettings
from audit.statistics.chord_regression import chord_slope
from audit.units import direction_degrees, unit_vector, wrap_degrees


def measure_heading(
    clean: CleanTrack, start: Fixed, claim: Fixed, noise_m: float, settings: HeadingSettings
) -> Heading:
    """Measure the direction from where the walker left to where he claimed to be.

    Every fix of the leg and of the halts at its ends is used. The interval counts the
    receiver's error as correlated in time; a leg too short for its noise has an
    interval of the whole circle.
    """
    chord_e, chord_n = claim.east_m - start.east_m, claim.north_m - start.north_m
    length = float(np.hypot(chord_e, chord_n))
    duration = claim.time_s - start.time_s
    chord_deg = direction_degrees(chord_e, chord_n)
    if length < settings.shortest_m or duration <= 0.0:
        return Heading(
            azimuth=GridAzimuth(chord_deg),
            low_deg=0.0,
            high_deg=wrap_degrees(-1e-9),
            sd_deg=settings.unknown_sd_deg,
        )
    index = _fixes(clean, start, claim, settings)
    clock = np.clip(clean.time_s[index] - start.time_s, 0.0, duration)
    if len(index) < settings.least_fixes or np.ptp(clock) < duration / 2.0:
        return _from_ends(chord_deg, length, start, claim)
    along = unit_vector(chord_deg)
    across = (clean.east_m[index] - start.east_m) * along[1] - (
        clean.north_m[index] - start.north_m
    ) * along[0]
    slope = chord_slope(
        clean.time_s[index] - start.time_s,
        across,
        duration_s=duration,
        length_m=length,
        noise_m=noise_m,
        settings=settings,
    )
    # Right of the chord is clockwise of it: a positive slope turns the heading on.
    centre, low, high = (
        direction_degrees(ratio, 1.0) for ratio in (slope.centre, slope.low, slope.high)
    )
    return Heading(
        azimuth=GridAzimuth(chord_deg + centre),
        low_deg=wrap_degrees(chord_deg + low),
        high_deg=wrap_degrees(chord_deg + high),
        sd_deg=float(np.degrees(slope.sd)),
    )


def _from_ends(chord_deg: float, length_m: float, start: Fixed, claim: Fixed) -> Heading:
    """Give the chord with the error of its two ends, where too few fixes lie between them."""
    sd = float(np.degrees(np.hypot(start.sd_m, claim.sd_m) / length_m))
    return Heading(
        azimuth=GridAzimuth(chord_deg),
        low_deg=wrap_degrees(chord_deg - 1.96 * sd),
        high_deg=wrap_degrees(chord_deg + 1.96 * sd),
        sd_deg=sd,
    )


def _fixes(
    clean: CleanTrack, start: Fixed, claim: Fixed, settings: HeadingSettings
) -> NDArray[np.int64]:
    """Choose fixes evenly: some of the halt before, more of the leg, some of the halt after."""
    stretches = (
        (min(start.halt_s[0], start.time_s), start.time_s, settings.halt_fixes),
        (start.time_s, claim.time_s, settings.leg_fixes),
        (claim.time_s, max(claim.halt_s[1], claim.time_s), settings.halt_fixes),
    )
    chosen = [
        _evenly(clean, from_s, to_s, min(most, 1 + int((to_s - from_s) / settings.spacing_s)))
        for from_s, to_s, most in stretches
    ]
    return np.unique(np.concatenate(chosen))


def _evenly(clean: CleanTrack, from_s: float, to_s: float, most: int) -> NDArray[np.int64]:
    first = int(np.searchsorted(clean.time_s, from_s, side="left"))
    last = int(np.searchsorted(clean.time_s, to_s, side="right"))
    count = last - first
    if count <= 0:
        return np.empty(0, dtype=np.int64)
    pick = np.linspace(first, last - 1, min(count, most))
    return np.unique(np.round(pick).astype(np.int64))
