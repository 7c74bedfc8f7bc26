"""The walker went on past the distance."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect some tens of metres to 150 too far; the count, if kept, is as long."""
    weight = (settings.knows_that_he_is_off if leg.went_on else 1.0) / len(settings.overshoot_m)
    return tuple(
        Expected(
            weight=weight,
            log_ratio=math.log1p(beyond_m / leg.length_m),
            in_metres=True,
            log_ratio_sd=settings.overshoot_sd_m / (leg.length_m + beyond_m),
            pace_follows=True,
        )
        for beyond_m in settings.overshoot_m
    )


CAUSE = Cause(
    name="overshoot",
    kind="length",
    expects=expects,
)
