"""A stretch of a leg on another bearing, as ground or iron makes one."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def expect_swerve(
    leg: LegEvidence, settings: DiagnosisSettings, length_m: tuple[float, float]
) -> tuple[Expected, ...]:
    """Expect one stretch of such a length on another bearing, the rest on the planned one."""
    shape = leg.shape
    other = None if shape is None else shape.other
    low_m, high_m = length_m
    least_deg, most_deg = settings.off_line_deg
    if shape is None or other is None or not low_m <= other.length_m <= high_m:
        return ()
    if not least_deg <= abs(other.turn_deg) <= most_deg:
        return ()
    better = other.nats - max(other.even_nats, 0.0)
    rare, most = settings.swerve_nats
    odds = (
        math.exp(min(other.nats, better, most) - rare) * settings.swerve_span_m / (high_m - low_m)
    )
    turn = math.degrees(math.atan(other.right_m / shape.chord_m))
    return (Expected(turn_deg=turn, turn_sd_deg=1.0, odds=odds),)
