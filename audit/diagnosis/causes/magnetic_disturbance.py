"""Iron or a current turned the needle near one place."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings

_MOST_NATS, _RARE_NATS = 8.0, 4.5
"""Ground makes people swerve: no swerve is better evidence than so much, nor less than so
much is any. Chosen on made walks and on real ones."""


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect one short stretch on another bearing; before and behind it all is well."""
    shape = leg.shape
    other = None if shape is None else shape.other
    low_m, high_m = settings.disturbed_m
    least_deg, most_deg = settings.off_line_deg
    if shape is None or other is None or not low_m <= other.length_m <= high_m:
        return ()
    if not least_deg <= abs(other.turn_deg) <= most_deg:
        return ()
    odds = math.exp(min(other.nats, _MOST_NATS) - _RARE_NATS)
    turn = math.degrees(math.atan(other.right_m / shape.chord_m))
    return (Expected(turn_deg=turn, turn_sd_deg=1.0, odds=odds),)


CAUSE = Cause(
    name="magnetic-disturbance",
    kind="shape",
    expects=expects,
    settles="Whether a fence, wire or vehicle stood there; others would bend at the same place.",
)
