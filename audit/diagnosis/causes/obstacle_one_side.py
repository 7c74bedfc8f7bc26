"""Obstacles were passed always on the same side, and the line never regained."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect steps in cross-track to one side, the heading as planned between them."""
    shape = leg.shape
    if shape is None or not shape.sideways:
        return ()
    right_m = [side.right_m for side in shape.sideways]
    same = len(right_m) >= 2 and (min(right_m) > 0.0 or max(right_m) < 0.0)
    if not same:
        return ()
    turn = math.degrees(math.atan(sum(right_m) / shape.chord_m))
    return (Expected(turn_deg=turn, turn_sd_deg=1.0, odds=settings.one_side_odds),)


CAUSE = Cause(
    name="obstacle-one-side",
    kind="shape",
    expects=expects,
    settles="On which side the obstacles of this leg were passed.",
)
