"""One digit of the grid reference is wrong."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.grid_digits import expect_moved_digits
from audit.diagnosis.leg_evidence import LegEvidence
from audit.geodesy.reference_digits import wrong_digits_m
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m along one grid axis: that digit's place times the difference."""
    return expect_moved_digits(leg, settings, wrong_digits_m)


CAUSE = Cause(
    name="digit-wrong",
    kind="place",
    expects=expects,
)
