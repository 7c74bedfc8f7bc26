"""Two neighbouring digits of the grid reference were swapped."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.diagnosis.grid_digits import along_one_axis, swapped_digits_m, within_square
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m along one grid axis, 9, 90 or 900 m for each unit they differ."""
    inside = within_square(leg)
    if inside is None:
        return ()
    moves = (list(swapped_digits_m(inside[0])), list(swapped_digits_m(inside[1])))
    shifts = along_one_axis(leg, moves, settings.digit_shift_most_m)
    spread_m = math.hypot(settings.point_sd_m, leg.half_square_m)
    return tuple(
        Expected(weight=1.0 / len(shifts), shift_m=shift, shift_sd_m=spread_m, pace_follows=True)
        for shift in shifts
    )


CAUSE = Cause(
    name="digits-transposed",
    kind="place",
    expects=expects,
    settles="The grid reference on the walker's own sheet, digit by digit.",
)
