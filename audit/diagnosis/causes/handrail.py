"""Part of the leg follows a feature of the ground that runs on another bearing."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.swerves import expect_swerve
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect one long stretch on another bearing, the rest on the planned one."""
    return expect_swerve(leg, settings, settings.led_m)


CAUSE = Cause(
    name="handrail",
    kind="shape",
    expects=expects,
)
