"""Two neighbouring digits of the grid reference were swapped."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.grid_digits import expect_moved_digits
from audit.diagnosis.leg_evidence import LegEvidence
from audit.geodesy.reference_digits import swapped_digits_m
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m along one grid axis, 9, 90 or 900 m for each unit they differ."""
    return expect_moved_digits(leg, settings, swapped_digits_m)


CAUSE = Cause(
    name="digits-transposed",
    kind="place",
    expects=expects,
)
