"""The pace count carries too far: steps are longer here than where it was taken."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect q is off by one steady ratio on all legs."""
    sizes = settings.pace_ratios
    return tuple(Expected(weight=1.0 / len(sizes), log_ratio=math.log(size)) for size in sizes)


CAUSE = Cause(
    name="pace-long",
    kind="length",
    expects=expects,
)
