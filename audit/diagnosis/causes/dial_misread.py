"""The dial was read one graduation off."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = one graduation, of 5 or of 10 degrees, either way: of compass or protractor."""
    return tuple(
        Expected(
            weight=0.5 / len(settings.graduations_deg),
            turn_deg=side * size,
            logged=settings.misread_logged,
            measured=settings.made_on_paper,
        )
        for size in settings.graduations_deg
        for side in (-1.0, 1.0)
    )


CAUSE = Cause(
    name="dial-misread",
    kind="turn",
    expects=expects,
)
