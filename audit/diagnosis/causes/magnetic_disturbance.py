"""Iron or a current turned the needle near one place."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.swerves import expect_swerve
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect one short stretch on another bearing; before and behind it all is well."""
    return expect_swerve(leg, settings, settings.disturbed_m)


CAUSE = Cause(
    name="magnetic-disturbance",
    kind="shape",
    expects=expects,
)
