"""The azimuth of another leg was set, or left on the compass."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = the other leg's M less this one's; the legs before and after most often."""
    return tuple(
        Expected(
            weight=weight,
            turn_deg=turn_degrees(leg.planned_magnetic_deg, other),
            logged=settings.slip_logged,
            measured=0.5 * settings.made_on_paper,
            converted=0.5 * settings.made_on_paper,
        )
        for other, weight in leg.other_magnetic_deg
        if abs(turn_degrees(leg.planned_magnetic_deg, other)) >= settings.least_digit_turn_deg
    )


CAUSE = Cause(
    name="neighbour-azimuth",
    kind="turn",
    expects=expects,
)
