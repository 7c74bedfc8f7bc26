"""The walker stopped before the distance was out."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect short of nine tenths of the leg; the count, if kept, is as short."""
    ratio, spread = settings.early_stop
    return (
        Expected(
            weight=settings.knows_that_he_is_off if leg.went_on else 1.0,
            log_ratio=math.log(ratio),
            log_ratio_sd=spread / ratio,
            pace_follows=True,
        ),
    )


CAUSE = Cause(
    name="early-stop",
    kind="length",
    expects=expects,
)
