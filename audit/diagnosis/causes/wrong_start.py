"""The leg was begun from another place than its start."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect the whole leg is shifted from its first metre; r and q are as planned."""
    off_m = math.hypot(*leg.start_off_m)
    if leg.leg > 0 or leg.under_way or off_m < settings.start_off_m:
        return ()
    return (Expected(odds=settings.wrong_start_odds),)


CAUSE = Cause(
    name="wrong-start",
    kind="shape",
    expects=expects,
)
