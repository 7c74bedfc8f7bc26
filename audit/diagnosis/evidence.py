"""The facts about a leg that a cause may look at: frozen, and all that it may look at."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.azimuths import MagneticAzimuth
from audit.leg_card import LegCard
from audit.measurement.leg_measures import Heading, LegAudit
from audit.units import turn_degrees, wrap_degrees

_UNKNOWN = 1.0
"""Standard error of a logarithm of distance of which nothing is known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegEvidence:
    """One walked leg as the diagnosis sees it.

    Attributes
    ----------
    turn_deg, turn_sd_deg : float
        r: walked grid azimuth less planned, and its standard error.
    log_ratio, log_ratio_sd : float
        Logarithm of distance walked over distance planned, and its standard error.
    planned_magnetic_deg : float
        M: what the compass should have been set to.
    grid_magnetic_angle_deg, convergence_deg : float
        G and C, east positive.
    confidence : float
        That this portion of the walk is the leg's.
    set_turn_deg : float or None
        What the walker's log says was set on the compass, less what should have been.
    half_interval_deg : float or None
        Half the 95 % interval of the heading; None: 1.96 standard errors.
    """

    leg: int
    turn_deg: float
    turn_sd_deg: float
    log_ratio: float
    log_ratio_sd: float
    planned_magnetic_deg: float
    grid_magnetic_angle_deg: float
    convergence_deg: float
    confidence: float
    set_turn_deg: float | None = None
    half_interval_deg: float | None = None


def gather_evidence(
    legs: tuple[LegAudit, ...],
    card: LegCard,
    azimuths_set: dict[str, MagneticAzimuth] | None = None,
    under_way: frozenset[int] = frozenset(),
) -> tuple[LegEvidence, ...]:
    """Give the evidence of every leg that was walked, in the order of the plan.

    ``azimuths_set`` holds, by name of leg, the azimuths that the walker's log gives.
    The distance of the legs ``under_way`` when the recording began says nothing.
    """
    noted = azimuths_set or {}
    evidence = []
    for number, leg in enumerate(legs):
        measures = leg.measures
        if measures is None:
            continue
        straight = max(measures.straight_m, 1.0)
        evidence.append(
            LegEvidence(
                leg=number,
                turn_deg=measures.azimuth_error_deg,
                turn_sd_deg=measures.heading.sd_deg,
                log_ratio=float(np.log(max(measures.distance_ratio, 1e-3))),
                log_ratio_sd=_UNKNOWN if number in under_way else measures.straight_sd_m / straight,
                planned_magnetic_deg=leg.card.magnetic.degrees,
                grid_magnetic_angle_deg=card.angles.grid_magnetic_angle_deg,
                convergence_deg=card.angles.convergence_deg,
                confidence=leg.confidence,
                set_turn_deg=leg.card.magnetic.turn_to(noted[leg.card.name])
                if leg.card.name in noted
                else None,
                half_interval_deg=_half_interval_deg(measures.heading),
            )
        )
    return tuple(evidence)


def _half_interval_deg(heading: Heading) -> float:
    return wrap_degrees(turn_degrees(heading.low_deg, heading.high_deg)) / 2.0
