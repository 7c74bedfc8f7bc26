"""How the ground of a walk slopes: under a leg as measured, and the one fall of a course."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.leg_card import CardLeg
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegMeasures
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, unit_vector


@dataclass(frozen=True, slots=True, kw_only=True)
class LegSlope:
    """Rise over distance, map over slope distance, and the fall line's part to the right."""

    grade: float
    ratio: float
    downhill_right: float | None


def slope_of_leg(measures: LegMeasures, leg: CardLeg, fall: FloatArray | None) -> LegSlope | None:
    """Give the slope of a leg from the ground measured under it; None where there is none.

    ``fall`` is the direction of the course's one fall line, or None.
    """
    ground = None if measures.details is None else measures.details.ground
    if ground is None or not ground.slope_m:
        return None
    right = None if fall is None else float(fall @ unit_vector(leg.azimuth.degrees + 90.0))
    rise = float(ground.elevation_m[-1] - ground.elevation_m[0])
    return LegSlope(
        grade=rise / max(measures.straight_m, 1.0),
        ratio=measures.path_m / ground.slope_m,
        downhill_right=right,
    )


def fall_line(clean: CleanTrack, settings: DiagnosisSettings) -> FloatArray | None:
    """Fit one slope to all elevations: the direction (east, north) in which it falls.

    None where too few are known, or where one slope does not explain them.
    """
    known = np.isfinite(clean.elevation_m)
    if known.mean() < settings.heights_known:
        return None
    east = clean.east_m[known] - clean.east_m[known].mean()
    north = clean.north_m[known] - clean.north_m[known].mean()
    height = clean.elevation_m[known] - clean.elevation_m[known].mean()
    spread = np.linalg.eigvalsh(np.cov(np.vstack([east, north])))
    if spread[0] < settings.plane_spread_m**2 or height.var() < settings.plane_height_m**2:
        return None
    design = np.column_stack([east, north])
    slope, *_ = np.linalg.lstsq(design, height, rcond=None)
    steep = float(np.hypot(*slope))
    fits = 1.0 - float(((height - design @ slope) ** 2).sum() / (height**2).sum())
    if steep < settings.cross_slope or fits < settings.plane_fits:
        return None
    return np.asarray(-slope / steep)
