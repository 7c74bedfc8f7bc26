"""The line bends as it is walked, evenly from start to end."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.odds import normal
from audit.settings import DiagnosisSettings


def expects(leg: LegEvidence, settings: DiagnosisSettings) -> tuple[Expected, ...]:
    """Expect first and last third differ; the leg as a whole is turned by half the bend."""
    shape = leg.shape
    if shape is None or abs(shape.bend_deg) < settings.bend_least_deg:
        return ()
    error = math.hypot(settings.bend_noise_deg, shape.bend_sd_deg)
    spread = math.hypot(settings.bend_sd_deg, shape.bend_sd_deg)
    ragged = math.hypot(settings.shape_ragged_bend * settings.bend_sd_deg, shape.bend_sd_deg)
    ordinary = (1.0 - settings.shape_ragged) * normal(shape.bend_deg, error)
    ordinary += settings.shape_ragged * normal(shape.bend_deg, ragged)
    odds = normal(shape.bend_deg, spread) / ordinary
    if shape.other is not None:
        # What one stretch on another bearing explains better is no even bend.
        odds *= math.exp(min(0.0, shape.other.even_nats - max(shape.other.nats, 0.0)))
    return (
        Expected(
            turn_deg=shape.bend_deg / 2.0,
            turn_sd_deg=shape.bend_sd_deg / 3.0,
            odds=odds,
        ),
    )


CAUSE = Cause(
    name="veer",
    kind="shape",
    expects=expects,
)
