"""The declination was taken for the grid-magnetic angle."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = -C: the two angles differ by the grid convergence."""
    turn = -leg.convergence_deg
    if abs(turn) < settings.least_turn_deg:
        return ()
    return (Expected(turn_deg=turn, converted=settings.made_on_paper),)


CAUSE = Cause(
    name="declination-for-gm-angle",
    kind="turn",
    expects=expects,
)
