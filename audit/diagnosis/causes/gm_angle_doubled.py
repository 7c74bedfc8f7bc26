"""The grid-magnetic angle was applied by a sum and again by the compass."""

from __future__ import annotations

from audit.diagnosis.cause import DirectionCause
from audit.diagnosis.evidence import LegEvidence


def predicts_deg(leg: LegEvidence) -> float:
    """Give -G: one angle too many, on the other side from leaving it out."""
    return -leg.grid_magnetic_angle_deg


CAUSE = DirectionCause(
    name="gm-angle-doubled",
    predicts_deg=predicts_deg,
)
