"""The back azimuth was walked, or the wrong end of the needle was followed."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = 180."""
    spread, logged = settings.turned_about_sd_deg, settings.slip_logged
    on_paper = settings.made_on_paper
    return (Expected(turn_deg=180.0, turn_sd_deg=spread, logged=logged, measured=on_paper),)


CAUSE = Cause(
    name="reciprocal",
    kind="turn",
    expects=expects,
)
