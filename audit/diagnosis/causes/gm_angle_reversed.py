"""The grid-magnetic angle was added where it is subtracted, or the other way."""

from __future__ import annotations

from audit.diagnosis.cause import DirectionCause
from audit.diagnosis.evidence import LegEvidence


def predicts_deg(leg: LegEvidence) -> float:
    """Give +2G: once for leaving it out, once more for putting it in the wrong way."""
    return 2.0 * leg.grid_magnetic_angle_deg


CAUSE = DirectionCause(
    name="gm-angle-reversed",
    predicts_deg=predicts_deg,
)
