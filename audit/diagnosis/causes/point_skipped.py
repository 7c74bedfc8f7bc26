"""A point of the course was never gone to."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, _settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect shows in which legs were walked, not in how."""
    return ()


CAUSE = Cause(
    name="point-skipped",
    kind="behaviour",
    expects=expects,
)
