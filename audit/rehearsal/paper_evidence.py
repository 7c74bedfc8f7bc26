"""The evidence of a leg that nobody has walked: what a cause may know of it beforehand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from audit.diagnosis.gather_evidence import other_azimuths, other_points, stale_turn_deg
from audit.diagnosis.leg_evidence import LegEvidence
from audit.leg_card import CardLeg, LegCard
from audit.leg_card.leg_pieces import walked_m
from audit.leg_card.profiles import stations
from audit.settings import DiagnosisSettings, Settings
from audit.units import FloatArray, unit_vector

Heights = Callable[[FloatArray], FloatArray]
"""Gives the heights at places on the grid, shape (n, 2); NaN where none is known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperSlope:
    """Rise over distance, map over slope distance, and the fall line's part to the right."""

    grade: float
    ratio: float
    downhill_right: float


def paper_evidence(
    card: LegCard, number: int, slope: PaperSlope | None, settings: DiagnosisSettings
) -> LegEvidence:
    """Give the evidence of a leg as planned, walked without error."""
    leg = card.legs[number]
    return LegEvidence(
        leg=number,
        turn_deg=0.0,
        turn_sd_deg=0.0,
        log_ratio=0.0,
        log_ratio_sd=0.0,
        planned_magnetic_deg=leg.magnetic.degrees,
        grid_magnetic_angle_deg=card.angles.grid_magnetic_angle_deg,
        convergence_deg=card.angles.convergence_deg,
        confidence=1.0,
        stale_turn_deg=stale_turn_deg(card),
        planned_deg=leg.azimuth.degrees,
        length_m=walked_m(leg),
        bent=len(leg.line) > 2,
        end_m=(leg.end.east_m, leg.end.north_m),
        half_square_m=leg.end.half_square_m,
        other_magnetic_deg=other_azimuths(card, number, settings),
        other_points_m=other_points(card, leg),
        grade=None if slope is None else slope.grade,
        slope_ratio=None if slope is None else slope.ratio,
        downhill_right=None if slope is None else slope.downhill_right,
    )


def paper_slope(leg: CardLeg, heights: Heights | None, settings: Settings) -> PaperSlope | None:
    """Give the slope of a leg from heights along it and to both sides; None where unknown."""
    if heights is None:
        return None
    along, places = stations(leg.line, settings.carried_card.station_m)
    right = settings.rehearsal.probe_m * unit_vector(leg.azimuth.degrees + 90.0)
    level, to_right, to_left = (heights(places + side) for side in (0.0 * right, right, -right))
    if not all(np.isfinite(found).all() for found in (level, to_right, to_left)):
        return None
    flat = np.diff(along)
    grade = float((level[-1] - level[0]) / along[-1])
    across = float(np.mean(to_right - to_left)) / (2.0 * settings.rehearsal.probe_m)
    steep = float(np.hypot(grade, across))
    return PaperSlope(
        grade=grade,
        ratio=float(flat.sum() / np.hypot(flat, np.diff(level)).sum()),
        downhill_right=-across / steep if steep > 0.0 else 0.0,
    )
