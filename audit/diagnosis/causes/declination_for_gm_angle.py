"""The declination was taken for the grid-magnetic angle."""

from __future__ import annotations

from audit.diagnosis.cause import DirectionCause
from audit.diagnosis.evidence import LegEvidence


def predicts_deg(leg: LegEvidence) -> float:
    """Give -C: the two angles differ by the grid convergence."""
    return -leg.convergence_deg


CAUSE = DirectionCause(
    name="declination-for-gm-angle",
    predicts_deg=predicts_deg,
)
