"""The point was passed within sight and not seen."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect too far by the way that is walked on past a point, where one was passed.

    How far that was is no prediction: any walk on past a point has such a way.
    """
    if leg.passed_m is None:
        return ()
    share = 1.0 / len(settings.went_past_m)
    return tuple(
        Expected(
            weight=share,
            log_ratio=math.log1p(size / leg.length_m),
            log_ratio_sd=settings.went_past_sd_m / (leg.length_m + size),
            pace_follows=True,
        )
        for size in settings.went_past_m
    )


CAUSE = Cause(
    name="passed-unseen",
    kind="shape",
    expects=expects,
)
