"""The grid azimuth was set on the compass as it was read off the map."""

from __future__ import annotations

from audit.diagnosis.cause import DirectionCause
from audit.diagnosis.evidence import LegEvidence


def predicts_deg(leg: LegEvidence) -> float:
    """Give +G: the needle's north lies G clockwise of the grid's."""
    return leg.grid_magnetic_angle_deg


CAUSE = DirectionCause(
    name="gm-angle-omitted",
    predicts_deg=predicts_deg,
)
