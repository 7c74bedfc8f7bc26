"""List, map or receiver stand on another datum."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect one m for every point and every walker, which no single walk shows: rehearsed only."""
    if leg.course_shift_m is None:
        return ()
    return (Expected(shift_m=leg.course_shift_m, shift_sd_m=settings.point_sd_m),)


CAUSE = Cause(
    name="datum",
    kind="place",
    expects=expects,
)
