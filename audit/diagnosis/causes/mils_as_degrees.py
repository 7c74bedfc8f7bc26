"""A number was read on the other scale of the dial: mils for degrees, or degrees for mils."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import mils_from_degrees, turn_degrees

_DEGREES_A_NUMERAL = 5.625
"""A black numeral stands for 100 mils, which are 5.625 degrees."""


def expects(leg: LegEvidence, _settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect hundreds of mils set as tens of degrees, or degrees found on the black numerals."""
    magnetic = leg.planned_magnetic_deg
    read = (mils_from_degrees(magnetic) / 10.0, _DEGREES_A_NUMERAL * magnetic)
    turns = [turn_degrees(magnetic, value) for value in read]
    return tuple(Expected(weight=0.5, turn_deg=turn) for turn in turns)


CAUSE = Cause(
    name="mils-as-degrees",
    kind="turn",
    expects=expects,
)
