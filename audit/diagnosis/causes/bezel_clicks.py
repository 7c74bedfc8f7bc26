"""The bezel was set some clicks off."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = n clicks of 3 degrees, n from 1 to 4 either way."""
    return tuple(
        Expected(weight=0.125, turn_deg=side * clicks * settings.click_deg, logged=False)
        for clicks in (1, 2, 3, 4)
        for side in (-1.0, 1.0)
    )


CAUSE = Cause(
    name="bezel-clicks",
    kind="turn",
    expects=expects,
)
