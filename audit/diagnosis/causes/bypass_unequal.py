"""An obstacle was walked round, and not walked back as far as it was walked out."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect A step in cross-track that stays, the heading as planned before and after."""
    shape = leg.shape
    if shape is None or not shape.sideways:
        return ()
    right_m = sum(side.right_m for side in shape.sideways)
    out_m = max(abs(side.right_m) for side in shape.sideways)
    if abs(right_m) < max(settings.least_step_m, 0.3 * out_m):
        return ()
    turn = math.degrees(math.atan(right_m / shape.chord_m))
    return (Expected(turn_deg=turn, turn_sd_deg=1.0, odds=settings.unequal_odds),)


CAUSE = Cause(
    name="bypass-unequal",
    kind="shape",
    expects=expects,
    settles="The paces that were counted out and back.",
)
