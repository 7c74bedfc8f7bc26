"""Obstacles were passed always on the same side, and the line never regained."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.left_aside import left_aside_m, passed_on_one_side
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect steps in cross-track to one side, the heading as planned between them."""
    passed = passed_on_one_side(leg.bypasses)
    if len(passed) < 2:
        return ()
    return (Expected(aside_m=left_aside_m(passed), odds=settings.one_side_odds),)


CAUSE = Cause(
    name="obstacle-one-side",
    kind="shape",
    expects=expects,
)
