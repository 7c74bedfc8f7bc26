"""Legs as the diagnosis sees them: by hand, and of invented walkers with known mistakes."""

from __future__ import annotations

import numpy as np

from audit.diagnosis.explain import explain_walk
from audit.diagnosis.finding import Finding
from audit.diagnosis.leg_evidence import LegEvidence
from audit.settings import DiagnosisSettings


def legs(
    *turns_deg, angle_deg=-7.0, convergence_deg=1.6, sd_deg=1.0, ratios=None, confidence=1.0
) -> tuple[LegEvidence, ...]:
    """One leg a turn; ``ratios`` are distance walked over planned."""
    return tuple(
        LegEvidence(
            leg=n,
            turn_deg=float(turn),
            turn_sd_deg=sd_deg,
            log_ratio=0.0 if ratios is None else float(np.log(ratios[n])),
            log_ratio_sd=0.01,
            planned_magnetic_deg=50.0,
            grid_magnetic_angle_deg=angle_deg,
            convergence_deg=convergence_deg,
            confidence=confidence,
        )
        for n, turn in enumerate(turns_deg)
    )


def explain(
    evidence: tuple[LegEvidence, ...], settings: DiagnosisSettings
) -> dict[int, tuple[Finding, ...]]:
    """The findings of every walked leg alone, without what legs share."""
    return explain_walk(evidence, settings).findings


def predicted_deg(cause: str, angle_deg: float, convergence_deg: float) -> float:
    """The turn r of the table of mistakes; 0 where no mistake was made."""
    return {
        "gm-angle-omitted": angle_deg,
        "gm-angle-reversed": 2.0 * angle_deg,
        "gm-angle-doubled": -angle_deg,
        "declination-for-gm-angle": -convergence_deg,
    }.get(cause, 0.0)


def invented_walk(
    rng, cause: str = "", *, angle_deg=None, keeps=0.95, slips=0.0, steady=(0.0, 0.0)
) -> list[tuple[LegEvidence, str]]:
    """A walker with ordinary scatter of 2 to 5 degrees, and what really turned each leg.

    ``slips`` is how often something else turns a leg; ``steady`` the sizes of a turn
    common to all legs, either way.
    """
    angle = float(rng.uniform(-20.0, 20.0)) if angle_deg is None else angle_deg
    convergence = float(rng.uniform(-2.5, 2.5))
    scatter, bias = rng.uniform(2.0, 5.0), rng.normal(0.0, 2.0)
    bias += rng.choice([-1.0, 1.0]) * rng.uniform(*steady)
    pace, pace_scatter = rng.normal(0.0, 0.05), rng.uniform(0.02, 0.06)
    walk = []
    for leg in range(int(rng.integers(3, 10))):
        error = float(rng.choice([0.4, 0.8, 1.5, 3.0]))
        turn, made = bias + rng.normal(0.0, scatter), ""
        if cause and rng.random() < keeps:
            turn, made = turn + predicted_deg(cause, angle, convergence), cause
        if rng.random() < slips:
            turn += rng.choice([-1, 1]) * rng.choice([5, 10, 12, 20, 30, 45, 90, 180])
            made = "slip"
        evidence = LegEvidence(
            leg=leg,
            turn_deg=float((turn + rng.normal(0.0, error) + 180.0) % 360.0 - 180.0),
            turn_sd_deg=error,
            log_ratio=float(pace + rng.normal(0.0, pace_scatter)),
            log_ratio_sd=0.01,
            planned_magnetic_deg=float(rng.uniform(0.0, 360.0)),
            grid_magnetic_angle_deg=angle,
            convergence_deg=convergence,
            confidence=1.0,
        )
        walk.append((evidence, made))
    return walk
