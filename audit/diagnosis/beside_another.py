"""A slip on one leg of a walk whose legs share another mistake: both at once, the slip larger."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

import numpy as np

from audit.diagnosis.accounts import Account
from audit.diagnosis.cause import Expected
from audit.diagnosis.leg_densities import Made, Ways, density_of_ways
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, turn_degrees

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

    def told(ways: Sequence[Expected]) -> Sequence[Expected]:
        turn = np.array([[one.turn_deg] for one in ways])
        spread = np.array([[one.turn_sd_deg] for one in ways])
        reach = _REACH * np.sqrt(scatter**2 + spread**2 + error**2)
        near = (np.abs(turn_degrees(turn, left)) <= reach).any(axis=1)
        larger = near & (np.abs(turn[:, 0]) > abs(way.turn_deg))
        return [one for one, is_told in zip(ways, larger, strict=True) if is_told]

    return _both(shared, way, slips, told, settings)


def both_lengths(shared: str, way: Expected, slips: Ways, settings: DiagnosisSettings) -> Both:
    """Give the slips that changed a distance by more than what all legs share, added to it."""

    def told(ways: Sequence[Expected]) -> Sequence[Expected]:
        return [one for one in ways if abs(one.log_ratio) > abs(way.log_ratio)]

    return _both(shared, way, slips, told, settings)


def _both(
    shared: str,
    way: Expected,
    slips: Ways,
    told: Callable[[Sequence[Expected]], Sequence[Expected]],
    settings: DiagnosisSettings,
) -> Both:
    found: dict[Made, tuple[float, tuple[Expected, ...]]] = {}
    for cause, (prior, ways) in slips.items():
        if cause == shared or cause not in settings.slips_beside:
            continue
        both = tuple(one.beside(way) for one in told(ways))
        if both:
            found[cause, shared] = (prior, both)
    return found


def shown_and_beside(
    way: Expected, both: Both, density: Callable[[Expected], FloatArray]
) -> FloatArray:
    """Give the densities of what all legs share, alone and with each slip; shares included.

    Shape (accounts, names, grid).
    """
    often = sum(prior * sum(one.weight for one in ways) for prior, ways in both.values())
    beside = [density_of_ways(prior, ways, density) for prior, ways in both.values()]
    return np.stack([(1.0 - often) * density(way), *beside], axis=1)
