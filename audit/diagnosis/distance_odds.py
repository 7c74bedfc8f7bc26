"""Whether each leg's distance is within ordinary error: weighed over all legs together."""

from __future__ import annotations

import numpy as np

from audit.diagnosis.evidence import LegEvidence
from audit.settings import DiagnosisSettings
from audit.units import FloatArray

_PACE_STEPS = np.linspace(-2.4, 2.4, 9)


def distance_odds(evidence: tuple[LegEvidence, ...], settings: DiagnosisSettings) -> FloatArray:
    """Give, for each leg, the probability that its distance is within ordinary scatter."""
    ratios = np.array([leg.log_ratio for leg in evidence])
    sd = np.hypot(settings.distance_scatter, np.array([leg.log_ratio_sd for leg in evidence]))
    log_weights, parts = [], []
    for step in _PACE_STEPS:
        good = np.exp(-0.5 * ((ratios - step * settings.own_pace_sd) / sd) ** 2)
        good *= (1.0 - settings.stray_distance) / (sd * np.sqrt(2.0 * np.pi))
        stray = settings.stray_distance / settings.stray_distance_width
        log_weights.append(float(np.log(good + stray).sum()) - 0.5 * step**2)
        parts.append(good / (good + stray))
    weight = np.exp(np.array(log_weights) - max(log_weights))
    return np.asarray(weight @ np.array(parts) / weight.sum())
