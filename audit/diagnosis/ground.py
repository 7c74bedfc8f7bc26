"""How the ground of a walk slopes, from the elevations of the recording itself."""

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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ground:
    """Elevations along the walk, and the one slope that the course lies on, if it does.

    ``fall`` is metres of fall for a metre (east, north), or None.
    """

    path_m: FloatArray
    elevation_m: FloatArray
    fall: FloatArray | None

    def of_leg(
        self, measures: LegMeasures, leg: CardLeg, settings: DiagnosisSettings
    ) -> LegSlope | None:
        """Give the slope of one leg, or None where its elevations are not known."""
        part = slice(measures.start.fix, measures.claim.fix + 1)
        path, height = self.path_m[part], self.elevation_m[part]
        known = np.isfinite(height)
        over_m = settings.slope_over_m
        enough = known.sum() >= 4 and known.mean() >= settings.heights_known
        if not enough or path[-1] - path[0] < over_m:
            return None
        count = max(int((path[-1] - path[0]) / over_m), 1)
        at = np.linspace(path[0], path[-1], count + 1)
        level = np.interp(at, path[known], height[known])
        flat = np.diff(at)
        slope = np.hypot(flat, np.diff(level))
        right = None
        if self.fall is not None:
            right = float(self.fall @ unit_vector(leg.azimuth.degrees + 90.0))
        return LegSlope(
            grade=float((level[-1] - level[0]) / max(measures.straight_m, 1.0)),
            ratio=float(flat.sum() / slope.sum()),
            downhill_right=right,
        )


def survey_ground(clean: CleanTrack, settings: DiagnosisSettings) -> Ground | None:
    """Read the ground off a recording; None where it has too few elevations."""
    known = np.isfinite(clean.elevation_m)
    if known.mean() < settings.heights_known or np.ptp(clean.elevation_m[known]) < 1.0:
        return None
    step = np.hypot(np.diff(clean.east_m), np.diff(clean.north_m))
    path = np.concatenate([[0.0], np.cumsum(step)])
    fall = _fall(clean, known, settings)
    return Ground(path_m=path, elevation_m=clean.elevation_m, fall=fall)


def _fall(clean: CleanTrack, known: np.ndarray, settings: DiagnosisSettings) -> FloatArray | None:
    """Fit one slope to all elevations: its fall as a unit vector times nothing but direction."""
    east = clean.east_m[known] - clean.east_m[known].mean()
    north = clean.north_m[known] - clean.north_m[known].mean()
    height = clean.elevation_m[known] - clean.elevation_m[known].mean()
    spread = np.linalg.eigvalsh(np.cov(np.vstack([east, north])))
    if spread[0] < 100.0**2 or height.var() < 1.0:
        return None
    design = np.column_stack([east, north])
    slope, *_ = np.linalg.lstsq(design, height, rcond=None)
    steep = float(np.hypot(*slope))
    fits = 1.0 - float(((height - design @ slope) ** 2).sum() / (height**2).sum())
    if steep < settings.cross_slope or fits < settings.plane_fits:
        return None
    return np.asarray(-slope / steep)
