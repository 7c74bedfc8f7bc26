"""The walker slips downhill along a slope."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect every leg is turned to its downhill side, most where it runs along the contour."""
    if leg.downhill_right is None:
        return ()
    right = leg.downhill_right
    sizes = settings.sidehill_deg
    return tuple(
        Expected(weight=1.0 / len(sizes), turn_deg=size * right, logged=0.0) for size in sizes
    )


CAUSE = Cause(
    name="sidehill",
    kind="turn",
    expects=expects,
)
