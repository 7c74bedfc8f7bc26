"""The grid azimuth was set on the compass as it was read off the map."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = +G: the needle's north lies G clockwise of the grid's."""
    turn = leg.grid_magnetic_angle_deg
    if abs(turn) < settings.least_turn_deg:
        return ()
    on_paper, logged = settings.made_on_paper, settings.angle_logged
    return (Expected(turn_deg=turn, logged=logged, converted=on_paper),)


CAUSE = Cause(
    name="gm-angle-omitted",
    kind="turn",
    expects=expects,
)
