"""The bezel was set some clicks off."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = n clicks, n from one to the most, either way, all as often."""
    most = settings.most_clicks_off
    return tuple(
        Expected(weight=0.5 / most, turn_deg=side * clicks * settings.click_deg, logged=0.0)
        for clicks in range(1, most + 1)
        for side in (-1.0, 1.0)
    )


CAUSE = Cause(
    name="bezel-clicks",
    kind="turn",
    expects=expects,
)
