"""Easting and northing inside the square were taken for each other."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.diagnosis.grid_digits import within_square
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m on the NW-SE diagonal: what is right was gone up, and the other way."""
    inside = within_square(leg, 1000.0)
    if inside is None:
        return ()
    shift = inside[1] - inside[0]
    if abs(shift) < 30.0:
        return ()
    return (
        Expected(
            shift_m=(shift, -shift), shift_sd_m=settings.point_sd_m, pace_follows=True, plotted=True
        ),
    )


CAUSE = Cause(
    name="easting-northing-swapped",
    kind="place",
    expects=expects,
)
