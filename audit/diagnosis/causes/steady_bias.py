"""Compass or walker turn every leg by the same angle, which is none of the known ones."""

from __future__ import annotations

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect the same r on all legs, from 4 degrees on; which one, the legs together must say."""
    return tuple(
        Expected(
            weight=0.5 * share * _beside_known(side * size, leg, settings),
            turn_deg=side * size,
            logged=0.0,
        )
        for size, share in settings.steady_turns_deg
        for side in (-1.0, 1.0)
    )


def _beside_known(turn_deg: float, leg: LegEvidence, settings: DiagnosisSettings) -> float:
    """Say how much rarer a steady turn is that a slip with the angle explains as well."""
    angle = leg.grid_magnetic_angle_deg
    near = any(
        abs(turn_degrees(known, turn_deg)) <= settings.steady_known_deg
        for known in (angle, 2.0 * angle, -angle)
        if abs(known) >= settings.steady_from_deg
    )
    return settings.steady_known_odds if near else 1.0


CAUSE = Cause(
    name="steady-bias",
    kind="turn",
    expects=expects,
)
