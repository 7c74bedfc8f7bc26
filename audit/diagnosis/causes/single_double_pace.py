"""Single paces were counted against a number of double paces, or the other way."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect q = 0.5 or 2."""
    on_paper = settings.made_on_paper
    return (
        Expected(weight=0.5, log_ratio=math.log(0.5), measured=on_paper),
        Expected(weight=0.5, log_ratio=math.log(2.0), measured=on_paper),
    )


CAUSE = Cause(
    name="single-double-pace",
    kind="length",
    expects=expects,
)
