"""A hundred was lost from the count, or one was added."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect one or two hundreds of metres too far or too short, whatever the length of the leg."""
    return tuple(
        Expected(
            weight=weight,
            log_ratio=math.log1p(100.0 * number / leg.length_m),
            in_metres=True,
            measured=settings.made_on_paper,
        )
        for number, weight in settings.hundreds
        if leg.length_m + 100.0 * number >= settings.least_left_m
    )


CAUSE = Cause(
    name="hundred-miscounted",
    kind="length",
    expects=expects,
)
