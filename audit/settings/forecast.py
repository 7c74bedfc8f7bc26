"""Ordinary error of a walker before the walk, as a forecast takes it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ForecastSettings:
    """How an ordinary walker scatters, and how much earlier walks say against that."""

    heading_sd_deg: float = 3.0
    """From leg to leg: what the US Army standard wants of a sighted azimuth (STP 21-1-SMCT),
    taken as one standard deviation; chosen."""
    bias_sd_deg: float = 2.0
    """Compass and walker together, the same on all legs; a lensatic compass is specified to
    2.25 degrees (MIL-PRF-10436, from memory)."""
    pace_sd: float = 0.04
    pace_bias_sd: float = 0.05
    """Of the logarithm of distance, from leg to leg and on all legs alike; together 6 in 100
    (3 to 10 in 100: common practice, no source)."""
    weave: float = -0.01
    """Mean of it: a line walked with 8 degrees of wander is 1 per cent longer than straight."""
    near_share: float = 0.5
    far_share: float = 0.95
    """Of walks that end inside the inner and the outer ellipse; chosen: an even chance, and the
    usual interval."""
    sure_side: float = 0.95
    """An offset is large enough where so many walks end on the side that was meant; chosen."""
    near_area_sds: float = 1.0
    """A point is near an area from the arrival radius and so many standard deviations of where
    walks to it end; chosen: of walks to that side one in three goes further."""
    told_reach: float = 0.05
    """From so many ordinary walks of a leg on that reach an area it is told; chosen: one in
    twenty, as elsewhere."""
    prior_legs: float = 4.0
    """Earlier legs weigh as much as what is known of walkers at large from this many on; chosen:
    a handful of legs gives a scatter to a third."""
    largest_turn_deg: float = 20.0
    largest_log_ratio: float = 0.35
    """Earlier legs further off than this are mistakes, not scatter; chosen: beyond three times
    the widest ordinary scatter that the diagnosis knows."""
