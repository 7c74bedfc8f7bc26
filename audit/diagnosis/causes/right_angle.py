"""The azimuth was taken off the wrong edge, a quarter of the circle out."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = +90 or -90."""
    spread, logged = settings.turned_about_sd_deg, settings.slip_logged
    on_paper = settings.made_on_paper
    return tuple(
        Expected(weight=0.5, turn_deg=turn, turn_sd_deg=spread, logged=logged, measured=on_paper)
        for turn in (90.0, -90.0)
    )


CAUSE = Cause(
    name="right-angle",
    kind="turn",
    expects=expects,
)
