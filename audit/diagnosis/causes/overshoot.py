"""The walker went on past the distance."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect some tens of metres to 150 too far, or a third of the leg; the count is as long."""
    weight = settings.knows_that_he_is_off if leg.went_on else 1.0
    ratio, spread = settings.overshoot_far
    far = Expected(
        weight=weight * settings.overshoot_far_share,
        log_ratio=math.log(ratio),
        log_ratio_sd=spread / ratio,
        pace_follows=True,
    )
    near = tuple(
        Expected(
            weight=weight * (1.0 - settings.overshoot_far_share) / len(settings.overshoot_m),
            log_ratio=math.log1p(beyond_m / leg.length_m),
            in_metres=True,
            log_ratio_sd=settings.overshoot_sd_m / (leg.length_m + beyond_m),
            pace_follows=True,
        )
        for beyond_m in settings.overshoot_m
    )
    return (*near, far)


CAUSE = Cause(
    name="overshoot",
    kind="length",
    expects=expects,
)
