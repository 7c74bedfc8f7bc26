"""Slope distance was paced as if it were map distance."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect q = cos(slope), on sloping legs only; nothing where the ground is not known."""
    if leg.slope_ratio is None or leg.slope_ratio > settings.least_slope_ratio:
        return ()
    ratio = math.log(leg.slope_ratio)
    return (Expected(log_ratio=ratio, log_ratio_sd=settings.slope_ratio_sd),)


CAUSE = Cause(
    name="slope-paced",
    kind="length",
    expects=expects,
)
