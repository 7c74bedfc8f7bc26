"""The sideways paces of a bypass were counted as if they led on."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect short by the way out and the way back."""
    shape = leg.shape
    if shape is None or not shape.sideways:
        return ()
    out_m = sum(side.right_m for side in shape.sideways if side.right_m > 0.0)
    back_m = -sum(side.right_m for side in shape.sideways if side.right_m < 0.0)
    if min(out_m, back_m) < settings.least_step_m or out_m + back_m > 0.5 * leg.length_m:
        return ()
    turn = math.degrees(math.atan((out_m - back_m) / shape.chord_m))
    return (
        Expected(
            turn_deg=turn,
            turn_sd_deg=1.0,
            log_ratio=math.log1p(-(out_m + back_m) / leg.length_m),
            log_ratio_sd=0.15 * (out_m + back_m) / leg.length_m,
            odds=settings.paced_bypass_odds,
        ),
    )


CAUSE = Cause(
    name="bypass-paced",
    kind="shape",
    expects=expects,
    settles="Whether the walker counted on while walking sideways.",
)
