"""A slip on one leg of a walk whose legs share another mistake: both at once, the slip larger."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from audit.diagnosis.accounts import Account
from audit.diagnosis.cause import Expected
from audit.diagnosis.leg_densities import Made, Ways
from audit.settings import DiagnosisSettings
from audit.units import turn_degrees

Both = Mapping[Made, tuple[float, tuple[Expected, ...]]]
"""By what was made, the slip first: how often, and every way of it."""

_REACH = 4.0
"""A way that a leg lies further from, in its ordinary errors, explains nothing of it."""


def both_turns(
    shared: str,
    way: Expected,
    slips: Ways,
    accounts: Sequence[Account],
    settings: DiagnosisSettings,
) -> Both:
    """Give the slips that turned a leg further than what all legs share, added to it.

    A smaller one cannot be told from the walker's scatter.
    """
    left = np.array([account.turn_deg for account in accounts]) - way.turn_deg
    error = np.array([account.turn_sd_deg for account in accounts])
    scatter = max(sd for sd, _ in settings.scatter_deg)
    found: dict[Made, tuple[float, tuple[Expected, ...]]] = {}
    for cause, (prior, ways) in slips.items():
        if cause == shared or cause not in settings.slips_beside:
            continue
        turn = np.array([[one.turn_deg] for one in ways])
        spread = np.array([[one.turn_sd_deg] for one in ways])
        reach = _REACH * np.sqrt(scatter**2 + spread**2 + error**2)
        near = (np.abs(turn_degrees(turn, left)) <= reach).any(axis=1)
        told = near & (np.abs(turn[:, 0]) > abs(way.turn_deg))
        if told.any():
            found[cause, shared] = (
                prior,
                tuple(_turned(ways[n], way) for n in np.flatnonzero(told)),
            )
    return found


def _turned(slip: Expected, way: Expected) -> Expected:
    return replace(
        slip,
        turn_deg=slip.turn_deg + way.turn_deg,
        turn_sd_deg=math.hypot(slip.turn_sd_deg, way.turn_sd_deg),
        logged=slip.logged and way.logged,
    )


def both_lengths(shared: str, way: Expected, slips: Ways, settings: DiagnosisSettings) -> Both:
    """Give the slips that changed a distance by more than what all legs share, added to it."""
    found: dict[Made, tuple[float, tuple[Expected, ...]]] = {}
    for cause, (prior, ways) in slips.items():
        if cause == shared or cause not in settings.slips_beside:
            continue
        both = tuple(
            replace(
                one,
                log_ratio=one.log_ratio + way.log_ratio,
                log_ratio_sd=math.hypot(one.log_ratio_sd, way.log_ratio_sd),
            )
            for one in ways
            if abs(one.log_ratio) > abs(way.log_ratio)
        )
        if both:
            found[cause, shared] = (prior, both)
    return found


def often(both: Both) -> float:
    """Give how often a leg shows any of them."""
    return sum(prior * sum(way.weight for way in ways) for prior, ways in both.values())
