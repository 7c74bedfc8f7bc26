"""The bezel was turned the wrong way, so that the azimuth is a mirror image."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = -2M: nothing on a leg to the magnetic north or south."""
    turn = turn_degrees(0.0, -2.0 * leg.planned_magnetic_deg)
    if abs(turn) < settings.least_turn_deg:
        return ()
    return (Expected(turn_deg=turn, logged=0.0),)


CAUSE = Cause(
    name="bezel-wrong-way",
    kind="turn",
    expects=expects,
)
