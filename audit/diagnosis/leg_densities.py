"""How likely a leg's heading and distance are under each of its accounts and each cause."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from audit.diagnosis.accounts import Account, accounts_of
from audit.diagnosis.cause import CauseKind, Expected
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.noted import (
    length_noted,
    length_noted_by_something,
    turn_noted,
    turn_noted_by_something,
)
from audit.diagnosis.ordinary import Ordinary
from audit.guide.cause_names import CANNOT_TELL, WITHIN_SKILL
from audit.settings import DiagnosisSettings
from audit.units import FloatArray, turn_degrees

Made = tuple[str, ...]
"""What was made at once, the larger first; mostly one."""
Ways = Mapping[str, tuple[float, tuple[Expected, ...]]]
"""By cause: how often one leg shows it, and every way of it."""
STEADY_TURNS = ("steady-bias",)
STEADY_PACES = ("pace-long", "pace-short")
_ROOT = math.sqrt(2.0 * math.pi)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LegDensities:
    """Densities of one leg; the first axis counts its accounts.

    ``turns`` has shape (accounts, kinds, grid) with ``turn_names`` the kinds: within
    skill, something else, the causes of one leg, then a turn that the walker has on all
    legs and that is worth a name; ``lengths`` the same for the distance.
    ``turn_shares`` and ``length_shares`` say how often one leg shows each kind.
    ``turn_ways`` and ``length_ways`` are the ways that were weighed.
    ``weight`` is that of the accounts; ``stray_turn`` and ``stray_length`` are the
    densities where nothing is known of the leg.
    """

    leg: LegEvidence
    accounts: tuple[Account, ...]
    weight: FloatArray
    turns: FloatArray
    turn_names: tuple[Made, ...]
    turn_shares: FloatArray
    lengths: FloatArray
    length_names: tuple[Made, ...]
    length_shares: FloatArray
    stray_turn: float
    stray_length: float
    turn_ways: Ways
    length_ways: Ways


def leg_densities(
    leg: LegEvidence, turns: Ordinary, paces: Ordinary, settings: DiagnosisSettings
) -> LegDensities:
    """Weigh one leg on the grids of ordinary error."""
    accounts = accounts_of(leg, settings)
    turn_ways = _leg_ways(leg, "turn", settings)
    length_ways = _leg_ways(leg, "length", settings)
    turned = _mixture(
        turn_ways,
        settings.stray_direction,
        stray_turn(leg, accounts, settings),
        lambda way: turn_density(leg, accounts, way, turns, settings),
    )
    stretched = _mixture(
        length_ways,
        settings.stray_distance,
        stray_length(leg, accounts, settings),
        lambda way: length_density(leg, accounts, way, paces, settings),
    )
    return LegDensities(
        leg=leg,
        accounts=accounts,
        weight=np.array([account.weight for account in accounts]),
        turns=_with_named(turned, steady_turns(turns, settings)),
        turn_names=_singly(WITHIN_SKILL, CANNOT_TELL, *turn_ways, *STEADY_TURNS),
        turn_shares=_shares(turn_ways, settings.stray_direction, len(STEADY_TURNS)),
        lengths=_with_named(stretched, steady_paces(paces, settings)),
        length_names=_singly(WITHIN_SKILL, CANNOT_TELL, *length_ways, *STEADY_PACES),
        length_shares=_shares(length_ways, settings.stray_distance, len(STEADY_PACES)),
        stray_turn=float(stray_turn(leg, accounts[:1], settings)[0]),
        stray_length=float(stray_length(leg, accounts[:1], settings)[0]),
        turn_ways=turn_ways,
        length_ways=length_ways,
    )


def _leg_ways(leg: LegEvidence, kind: CauseKind, settings: DiagnosisSettings) -> Ways:
    """Give prior and ways of every cause of this kind that one leg may show by itself.

    What a leg is off that the card measures from a wrong start is too little known to charge it.
    """
    if leg.on_paper is not None and leg.on_paper.from_elsewhere:
        return {}
    priors = dict(settings.leg_priors)
    found = {
        cause.name: (priors[cause.name], cause.expects(leg, settings))
        for cause in CAUSES
        if cause.kind == kind and cause.name in priors
    }
    return {name: way for name, way in found.items() if way[1]}


def _mixture(
    ways: Ways,
    share: float,
    aside: FloatArray,
    density: Callable[[Expected], FloatArray],
) -> FloatArray:
    """Give the densities of all kinds, shape (accounts, kinds, grid), shares included.

    ``aside`` is the density, by account, of the ``share`` that something else explains.
    """
    ordinary = density(Expected())
    astray = share * aside[:, None]
    columns, used = [], share
    for prior, expected in ways.values():
        for way in expected:
            used += prior * way.weight
        columns.append(density_of_ways(prior, expected, density))
    first = [(1.0 - used) * ordinary, np.broadcast_to(astray, ordinary.shape)]
    return np.stack([*first, *columns], axis=1)


def density_of_ways(
    prior: float, ways: Sequence[Expected], density: Callable[[Expected], FloatArray]
) -> FloatArray:
    """Give the density of a mistake that shows in one of some ways, its share included."""
    return np.asarray(sum(prior * way.weight * density(way) for way in ways))


def _with_named(densities: FloatArray, named: FloatArray) -> FloatArray:
    """Take out of "within skill" what all legs share and is worth a name: a kind for each.

    ``named`` has shape (names, grid): where on the grid each name holds.
    """
    within = densities[:, :1]
    own = within * named[None]
    return np.concatenate([within - own.sum(axis=1, keepdims=True), densities[:, 1:], own], axis=1)


def _singly(*causes: str) -> tuple[Made, ...]:
    return tuple((cause,) for cause in causes)


def _shares(ways: Ways, stray: float, steady: int) -> FloatArray:
    """Give how often one leg shows each kind; the first and what is steady share the rest."""
    used = [prior * sum(way.weight for way in expected) for prior, expected in ways.values()]
    rest = 1.0 - stray - sum(used)
    return np.array([rest, stray, *used, *(rest,) * steady])


def steady_turns(turns: Ordinary, settings: DiagnosisSettings) -> FloatArray:
    """Say where on the grid a walker is turned steadily by so much that it is worth a name."""
    return np.array([np.abs(turns.common) >= settings.steady_from_deg], dtype=np.float64)


def steady_paces(paces: Ordinary, settings: DiagnosisSettings) -> FloatArray:
    """Say the same of a pace that carries too far, and of one that falls short.

    What winding lines cost every walker is no matter of his pace. A place of the grid stands for
    the paces about it, and counts by as much of them as lies beyond.
    """
    own = paces.common - settings.weave
    step = (own.max() - own.min()) / (len(np.unique(own)) - 1)
    long = own - math.log1p(settings.steady_pace_from)
    short = math.log1p(-settings.steady_pace_from) - own
    return np.asarray(np.clip(np.array([long, short]) / step + 0.5, 0.0, 1.0))


def turn_density(
    leg: LegEvidence,
    accounts: Sequence[Account],
    way: Expected,
    grid: Ordinary,
    settings: DiagnosisSettings,
) -> FloatArray:
    """Give the density of what is left of r, shape (accounts, grid), card and log included."""
    left = np.array([account.turn_deg for account in accounts])[:, None]
    error = np.array([account.turn_sd_deg for account in accounts])[:, None]
    extra = math.hypot(way.turn_sd_deg, settings.set_sd_deg if way.turn_deg else 0.0)
    sd = np.sqrt(grid.scatter[None, :] ** 2 + error**2 + extra**2)
    off = turn_degrees(np.asarray(grid.common[None, :] + way.turn_deg), left)
    said = np.array([turn_noted(leg, account, way, settings) for account in accounts])
    said = np.where([account.wild for account in accounts], 0.0, said)
    return np.asarray(np.exp(-0.5 * (off / sd) ** 2) / (sd * _ROOT) * said[:, None])


def length_density(
    leg: LegEvidence,
    accounts: Sequence[Account],
    way: Expected,
    grid: Ordinary,
    settings: DiagnosisSettings,
) -> FloatArray:
    """Give the density of what is left of the logarithm of q, shape (accounts, grid)."""
    left = np.array([account.log_ratio for account in accounts])[:, None]
    error = np.array([account.log_ratio_sd for account in accounts])[:, None]
    sd = np.sqrt(grid.scatter[None, :] ** 2 + error**2 + way.log_ratio_sd**2)
    off = left - grid.common[None, :] - _stretched(accounts, way)[:, None]
    said = np.array([length_noted(leg, account, way, settings) for account in accounts])
    said = np.where([account.wild for account in accounts], 0.0, said)
    return np.asarray(np.exp(-0.5 * (off / sd) ** 2) / (sd * _ROOT) * said[:, None])


def _stretched(accounts: Sequence[Account], way: Expected) -> FloatArray:
    """Give the logarithm by which a mistake changes the distance that each account aims at."""
    if not way.in_metres:
        return np.full(len(accounts), way.log_ratio)
    aimed = np.exp([account.aimed_log_ratio for account in accounts])
    # No more can be lost than was aimed at.
    return np.asarray(np.log1p(np.maximum(math.expm1(way.log_ratio) / aimed, -0.95)))


def stray_turn(
    leg: LegEvidence, accounts: Sequence[Account], settings: DiagnosisSettings
) -> FloatArray:
    """Give how likely each turn is where something else turned the leg, per degree.

    Most such slips turn a leg by some 5 to 30 degrees, the rest by anything.
    """
    left = np.array([account.turn_deg for account in accounts])
    sd = math.hypot(settings.stray_near_sd_deg, leg.turn_sd_deg)
    near = np.exp(-0.5 * (left / sd) ** 2) / (sd * _ROOT)
    share = settings.stray_near_share
    said = turn_noted_by_something(leg, settings)
    return np.asarray((share * near + (1.0 - share) / 360.0) * said)


def stray_length(
    leg: LegEvidence, accounts: Sequence[Account], settings: DiagnosisSettings
) -> FloatArray:
    """Give how likely any distance is where something else put it out, by logarithm."""
    said = length_noted_by_something(leg, settings)
    return np.full(len(accounts), said / settings.stray_distance_width)
