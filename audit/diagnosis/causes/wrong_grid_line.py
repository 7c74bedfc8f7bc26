"""The point was plotted from the next grid line."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.geodesy.reference_digits import LINES_APART_M as _LINE_M
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m = 1000 m along one grid axis."""
    return tuple(
        Expected(
            weight=0.25,
            shift_m=shift,
            shift_sd_m=settings.point_sd_m,
            pace_follows=True,
            plotted=True,
        )
        for shift in ((_LINE_M, 0.0), (-_LINE_M, 0.0), (0.0, _LINE_M), (0.0, -_LINE_M))
        if settings.digit_shift_lengths * leg.length_m >= _LINE_M
    )


CAUSE = Cause(
    name="wrong-grid-line",
    kind="place",
    expects=expects,
)
