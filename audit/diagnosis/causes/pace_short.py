"""The pace count falls short: steps are shorter here than where it was taken."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect q is off by one steady ratio on all legs, or on the uphill legs only."""
    sizes, climbing = settings.pace_ratios, settings.uphill_only
    share = 1.0 / len(sizes)
    ways = [Expected(weight=(1.0 - climbing) * share, log_ratio=-math.log(size)) for size in sizes]
    if leg.grade is None:
        return tuple(ways)
    uphill = leg.grade > settings.uphill_grade
    ways += [
        Expected(weight=climbing * share, log_ratio=-math.log(size) if uphill else 0.0)
        for size in sizes
    ]
    return tuple(ways)


CAUSE = Cause(
    name="pace-short",
    kind="length",
    expects=expects,
)
