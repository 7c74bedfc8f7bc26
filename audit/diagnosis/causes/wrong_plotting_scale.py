"""The plotting tool was made for another map scale."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.geodesy.reference_digits import on_other_tool_m
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect offsets inside the square doubled or halved."""
    if leg.end_m is None:
        return ()
    return tuple(
        Expected(
            weight=0.5,
            shift_m=shift,
            shift_sd_m=settings.point_sd_m,
            pace_follows=True,
            plotted=True,
        )
        for shift in on_other_tool_m(*leg.end_m)
        if math.hypot(*shift) >= settings.least_shift_m
    )


CAUSE = Cause(
    name="wrong-plotting-scale",
    kind="place",
    expects=expects,
)
