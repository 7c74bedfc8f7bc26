"""Compass or walker turn every leg by the same angle, which is none of the known ones."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(_leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect the same r on all legs, from 4 degrees on; which one, the legs together must say."""
    return tuple(
        Expected(weight=0.5 * share, turn_deg=side * size, logged=False)
        for size, share in settings.steady_turns_deg
        for side in (-1.0, 1.0)
    )


CAUSE = Cause(
    name="steady-bias",
    kind="turn",
    expects=expects,
)
