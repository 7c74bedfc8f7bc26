"""The point itself stands in another place than the plan says."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect all able walkers share one m at this point: it takes a class to show it."""
    if leg.class_shift_m is None:
        return ()
    return (Expected(shift_m=leg.class_shift_m, shift_sd_m=settings.point_sd_m),)


CAUSE = Cause(
    name="point-misplaced",
    kind="place",
    expects=expects,
)
