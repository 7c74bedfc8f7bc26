"""The compass divides the circle into another number of mils than the card."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r grows with M: 6000 or 6300 mils read on 6400, and the other way round."""
    return tuple(
        Expected(
            weight=weight,
            turn_deg=turn_degrees(0.0, share * leg.planned_magnetic_deg),
            logged=0.0,
        )
        for share, weight in settings.mil_circles
    )


CAUSE = Cause(
    name="wrong-mil-circle",
    kind="turn",
    expects=expects,
)
