"""Easting and northing inside the square were taken for each other."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.geodesy.reference_digits import exchanged_m
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect m on the NW-SE diagonal: what is right was gone up, and the other way."""
    if leg.end_m is None:
        return ()
    shift_m = exchanged_m(*leg.end_m)
    if abs(shift_m[0]) < settings.least_exchange_m:
        return ()
    return (
        Expected(shift_m=shift_m, shift_sd_m=settings.point_sd_m, pace_follows=True, plotted=True),
    )


CAUSE = Cause(
    name="easting-northing-swapped",
    kind="place",
    expects=expects,
)
