"""One digit of the grid reference is wrong, or was read one square too far and carried."""

from __future__ import annotations

from collections.abc import Iterator

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.grid_digits import expect_moved_digits
from audit.diagnosis.leg_evidence import LegEvidence
from audit.geodesy.reference_digits import carried_digits_m, wrong_digits_m
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m along one grid axis: that digit's place times the difference."""
    return expect_moved_digits(leg, settings, _moves_m)


def _moves_m(metres: float) -> Iterator[float]:
    yield from wrong_digits_m(metres)
    yield from carried_digits_m(metres)


CAUSE = Cause(
    name="digit-wrong",
    kind="place",
    expects=expects,
)
