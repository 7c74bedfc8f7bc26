"""The angle on the map was right when the map was printed."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect r = years times annual change: the angle of the day less the angle on the plan.

    Nothing where they differ by more than a map ages: then one of them is wrong.
    """
    turn = leg.stale_turn_deg
    if turn is None or not settings.least_stale_deg <= abs(turn) <= settings.most_stale_deg:
        return ()
    return (Expected(turn_deg=turn, turn_sd_deg=settings.stale_sd_deg),)


CAUSE = Cause(
    name="gm-angle-stale",
    kind="turn",
    expects=expects,
)
