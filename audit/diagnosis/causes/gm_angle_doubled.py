"""The grid-magnetic angle was applied by a sum and again by the compass."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = -G: one angle too many, on the other side from leaving it out."""
    turn = -leg.grid_magnetic_angle_deg
    if abs(turn) < settings.least_turn_deg:
        return ()
    on_paper = settings.made_on_paper
    return (Expected(turn_deg=turn, logged=settings.twice_by_sums, converted=on_paper),)


CAUSE = Cause(
    name="gm-angle-doubled",
    kind="turn",
    expects=expects,
)
