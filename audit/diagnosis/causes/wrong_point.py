"""Another known point was taken for this one."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect the walker ended at another point of the course."""
    least_m, most_m = settings.least_shift_m, settings.other_point_lengths * leg.length_m
    near = [point for point in leg.other_points_m if least_m <= math.hypot(*point) <= most_m]
    return tuple(
        Expected(
            weight=1.0 / len(near),
            shift_m=point,
            shift_sd_m=settings.other_point_sd_m,
            pace_follows=True,
        )
        for point in near
    )


CAUSE = Cause(
    name="wrong-point",
    kind="place",
    expects=expects,
)
