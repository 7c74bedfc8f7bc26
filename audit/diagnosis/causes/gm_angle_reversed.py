"""The grid-magnetic angle was added where it is subtracted, or the other way."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = +2G: once for leaving it out, once more for putting it in the wrong way."""
    turn = 2.0 * leg.grid_magnetic_angle_deg
    if abs(turn) < settings.least_turn_deg:
        return ()
    on_paper, logged = settings.made_on_paper, settings.angle_logged
    return (Expected(turn_deg=turn, logged=logged, converted=on_paper),)


CAUSE = Cause(
    name="gm-angle-reversed",
    kind="turn",
    expects=expects,
)
