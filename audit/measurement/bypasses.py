"""Obstacles walked round: out to one side, on past, and back in."""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import metres_along
from audit.measurement.leg_details import Bypass
from audit.settings import MeasuringSettings
from audit.statistics.runs import runs_of_one
from audit.statistics.spread import TWO_SIDED_95
from audit.units import FloatArray, direction_degrees, turn_degrees, unit_vector


def find_bypasses(
    walk: FloatArray, heading_deg: float, noise_m: float, settings: MeasuringSettings
) -> list[tuple[int, int]]:
    """Give the first and last sample of each bypass on a leg's smoothed walk, shape (n, 2).

    A bypass is a way out at about a right angle to the leg, a way on, and a way back
    in on the other hand, each longer than the receiver's wander could feign.
    """
    sides = _sideways(walk, heading_deg, max(settings.bypass_side_m, 2.0 * noise_m), settings)
    path = metres_along(walk)
    bypasses: list[tuple[int, int]] = []
    waiting: tuple[int, int, int] | None = None
    for first, last, hand in sides:
        back_in = waiting is not None and hand == -waiting[2]
        if waiting and back_in and path[first] - path[waiting[1]] <= settings.bypass_ahead_m:
            bypasses.append((waiting[0], last))
            waiting = None
        else:
            waiting = (first, last, hand)
    return bypasses


def describe_bypass(
    time_s: FloatArray,
    walk: FloatArray,
    heading_deg: float,
    ends: tuple[int, int],
    noise_m: float,
    correlation_s: float,
    settings: MeasuringSettings,
) -> Bypass:
    """Measure the sides of a bypass that `find_bypasses` found.

    Out and back are from the line walked before to the furthest, and from there to the
    line walked after; the receiver keeps part of its error from one to the other.
    """
    first, last = ends
    ahead = unit_vector(heading_deg)
    along = (walk - walk[0]) @ ahead
    across = (walk - walk[0]) @ np.array([ahead[1], -ahead[0]])
    path = metres_along(walk)
    reach = settings.bypass_level_m
    before = (path >= path[first] - reach) & (path <= path[first])
    after = (path >= path[last]) & (path <= path[last] + reach)
    level_before, level_after = float(across[before].mean()), float(across[after].mean())
    inside = across[first : last + 1]
    furthest = int(np.argmax(np.abs(inside - (level_before + level_after) / 2.0)))
    out, back = (abs(float(inside[furthest]) - level) for level in (level_before, level_after))
    lasted_s = float(time_s[last] - time_s[first])
    kept = float(np.exp(-lasted_s / correlation_s))
    sd_m = noise_m * float(np.sqrt(2.0 * (1.0 - kept)))
    usual = settings.bypass_equal_share * max(out, back)
    return Bypass(
        start_s=float(time_s[first]),
        end_s=float(time_s[last]),
        side="right" if inside[furthest] > level_before else "left",
        out_m=out,
        ahead_m=float(along[last] - along[first]),
        back_m=back,
        side_sd_m=sd_m,
        equal=abs(out - back) <= TWO_SIDED_95 * float(np.hypot(sd_m, usual)),
    )


def _sideways(
    walk: FloatArray, heading_deg: float, least_m: float, settings: MeasuringSettings
) -> list[tuple[int, int, int]]:
    """Give runs of walking across the leg: first, last, and +1 to the right or -1."""
    step = np.diff(walk, axis=0)
    length = np.hypot(*step.T)
    turn = turn_degrees(heading_deg, direction_degrees(step[:, 0], step[:, 1]))
    hand = np.where(np.abs(np.abs(turn) - 90.0) <= settings.bypass_turn_deg, np.sign(turn), 0.0)
    hand[length < 1e-6] = 0.0
    return [
        (first, last, int(hand[first]))
        for first, last in runs_of_one(hand).tolist()
        if hand[first] != 0.0 and length[first:last].sum() >= least_m
    ]
