"""The sideways paces of a bypass were counted as if they led on."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.left_aside import left_aside_m
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect short by the way out and the way back."""
    boxed = [one for one in leg.bypasses if one.returned]
    sideways_m = sum(one.out_m + one.back_m for one in boxed)
    if not boxed or sideways_m > settings.paced_sideways_most * leg.length_m:
        return ()
    return (
        Expected(
            log_ratio=math.log1p(-sideways_m / leg.length_m),
            log_ratio_sd=settings.paced_sideways_sd * sideways_m / leg.length_m,
            aside_m=left_aside_m(boxed),
            odds=settings.paced_bypass_odds,
        ),
    )


CAUSE = Cause(
    name="bypass-paced",
    kind="shape",
    expects=expects,
)
