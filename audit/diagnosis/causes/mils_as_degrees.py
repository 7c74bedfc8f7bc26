"""A number was read on the other scale of the dial: mils for degrees, or degrees for mils."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import on_other_scale_deg, turn_degrees


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect hundreds of mils set as tens of degrees, or degrees found on the black numerals."""
    magnetic = leg.planned_magnetic_deg
    turns = [turn_degrees(magnetic, read) for read in on_other_scale_deg(magnetic)]
    logged = settings.slip_logged
    on_paper = settings.made_on_paper
    return tuple(
        Expected(weight=0.5, turn_deg=turn, logged=logged, converted=on_paper) for turn in turns
    )


CAUSE = Cause(
    name="mils-as-degrees",
    kind="turn",
    expects=expects,
)
