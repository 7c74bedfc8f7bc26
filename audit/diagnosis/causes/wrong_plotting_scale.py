"""The plotting tool was made for another map scale."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.diagnosis.grid_digits import within_square
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect offsets inside the square doubled or halved."""
    inside = within_square(leg, 1000.0)
    if inside is None:
        return ()
    shifts = (inside, (-inside[0] / 2.0, -inside[1] / 2.0))
    return tuple(
        Expected(
            weight=0.5,
            shift_m=shift,
            shift_sd_m=settings.point_sd_m,
            pace_follows=True,
            plotted=True,
        )
        for shift in shifts
        if math.hypot(*shift) >= 40.0
    )


CAUSE = Cause(
    name="wrong-plotting-scale",
    kind="place",
    expects=expects,
)
