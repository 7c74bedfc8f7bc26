"""Distances were measured with the ruler of another map scale."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, _settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect q = 0.5 or 2 on all legs, and the paces that were counted fit what was walked."""
    return (
        Expected(weight=0.5, log_ratio=math.log(0.5), pace_follows=True, measured=1.0),
        Expected(weight=0.5, log_ratio=math.log(2.0), pace_follows=True, measured=1.0),
    )


CAUSE = Cause(
    name="wrong-ruler",
    kind="length",
    expects=expects,
)
