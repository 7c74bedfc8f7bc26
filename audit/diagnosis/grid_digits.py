"""The digits of a grid reference, and where slips among them put the point."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from audit.diagnosis.cause import Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings

_HUNDRED_KM_M = 100_000.0


def within_square(leg: LegEvidence) -> tuple[float, float] | None:
    """Give the metres right and up of the end inside its square of 100 km."""
    if leg.end_m is None:
        return None
    return leg.end_m[0] % _HUNDRED_KM_M, leg.end_m[1] % _HUNDRED_KM_M


def along_one_axis(
    moves: tuple[list[float], list[float]], least_m: float, most_m: float
) -> tuple[tuple[float, float], ...]:
    """Give moves right and moves up as (east, north), those that a leg could show only."""
    east = [(move, 0.0) for move in moves[0] if least_m <= abs(move) <= most_m]
    north = [(0.0, move) for move in moves[1] if least_m <= abs(move) <= most_m]
    return (*east, *north)


def expect_moved_digits(
    leg: LegEvidence, settings: DiagnosisSettings, moves_m: Callable[[float], Iterator[float]]
) -> tuple[Expected, ...]:
    """Expect m along one grid axis: each move that a slip makes of the easting or northing."""
    inside = within_square(leg)
    if inside is None:
        return ()
    moves = (list(moves_m(inside[0])), list(moves_m(inside[1])))
    most_m = min(settings.digit_shift_most_m, settings.digit_shift_lengths * leg.length_m)
    shifts = along_one_axis(moves, settings.least_shift_m, most_m)
    spread_m = math.hypot(settings.point_sd_m, leg.half_square_m)
    return tuple(
        Expected(
            weight=1.0 / len(shifts),
            shift_m=shift,
            shift_sd_m=spread_m,
            pace_follows=True,
            plotted=True,
        )
        for shift in shifts
    )
