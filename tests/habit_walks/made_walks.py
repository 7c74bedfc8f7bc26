"""What a made walk consists of."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray

LEVELS = ("trained", "ordinary", "novice")


@dataclass(frozen=True, slots=True, kw_only=True)
class LegTruth:
    """What really happened to one planned leg; times are seconds of the outing.

    ``status`` is walked, unfinished, skipped or not-started. ``causes`` holds the mistakes of
    every attempt at the leg, so with two attempts a mistake may belong to the first one only.
    """

    status: str
    start_s: int | None = None
    claim_s: int | None = None
    attempts: tuple[tuple[int, int], ...] = ()
    causes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MadeWalk:
    """A planned course, what a recorder made of the walk, and what was true."""

    points_m: FloatArray
    gm_angle_deg: float
    fix_time_s: FloatArray
    fix_m: FloatArray
    true_time_s: FloatArray
    true_m: FloatArray
    legs: tuple[LegTruth, ...]


def azimuth_and_length(
    from_east_m: float, from_north_m: float, to_east_m: float, to_north_m: float
) -> tuple[float, float]:
    """Give the grid azimuth in degrees and the distance in metres from one place to another."""
    east, north = to_east_m - from_east_m, to_north_m - from_north_m
    return float(np.degrees(np.arctan2(east, north))) % 360.0, float(np.hypot(east, north))
