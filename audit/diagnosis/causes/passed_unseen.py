"""The point was passed within sight and not seen."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, _settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect too far by the way from the point to where the count ended."""
    if leg.passed_m is None:
        return ()
    return (
        Expected(
            log_ratio=math.log1p(leg.passed_m / leg.length_m),
            log_ratio_sd=20.0 / leg.length_m,
            pace_follows=True,
        ),
    )


CAUSE = Cause(
    name="passed-unseen",
    kind="shape",
    expects=expects,
    settles="Whether the point can be seen from where the walker passed it.",
)
