"""A walker who made a slip on one leg may make it again: the same legs, the slip more frequent."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from audit.diagnosis.cause import CauseKind
from audit.diagnosis.causes import CAUSES
from audit.diagnosis.leg_densities import STEADY_PACES, STEADY_TURNS, LegDensities, Made
from audit.guide.cause_names import WITHIN_SKILL
from audit.settings import DiagnosisSettings
from audit.units import FloatArray

_OWN = frozenset({WITHIN_SKILL, *STEADY_TURNS, *STEADY_PACES})


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Prone:
    """A walk whose walker makes one slip now and then, by the densities of its legs."""

    cause: str
    prior: float
    legs: tuple[LegDensities, ...]


def prone_to(
    legs: Sequence[LegDensities], kinds: tuple[CauseKind, ...], settings: DiagnosisSettings
) -> tuple[Prone, ...]:
    """Give every such walk, for slips of these kinds that at least two legs could show."""
    priors = dict(settings.leg_priors)
    found = []
    for cause in CAUSES:
        if cause.kind not in kinds or cause.name not in settings.made_again:
            continue
        often = settings.again_rate / priors[cause.name]
        made = tuple(_more_often(leg, cause.name, often, settings) for leg in legs)
        if sum(one is not leg for one, leg in zip(made, legs, strict=True)) < 2:
            continue
        prior = settings.again_walks * priors[cause.name]
        found.append(Prone(cause=cause.name, prior=prior, legs=made))
    return tuple(found)


def _more_often(
    leg: LegDensities, cause: str, often: float, settings: DiagnosisSettings
) -> LegDensities:
    """Give a leg on which a slip is so many times as frequent; itself where it cannot show it."""
    if (cause,) in leg.turn_names:
        scale = _scale(leg.turn_names, leg.turn_shares, cause, often)
        return replace(leg, turns=leg.turns * scale[None, :, None])
    if (cause,) in leg.length_names:
        scale = _scale(leg.length_names, leg.length_shares, cause, often)
        return replace(leg, lengths=leg.lengths * scale[None, :, None])
    made = np.array([account.cause == cause for account in leg.accounts])
    if not made.any():
        return leg
    weight = np.where(made, often, 1.0) * leg.weight
    weight[0] = max(weight[0] - settings.again_rate * (1.0 - 1.0 / often), 0.0)
    return replace(leg, weight=weight)


def _scale(names: tuple[Made, ...], shares: FloatArray, cause: str, often: float) -> FloatArray:
    """Give by how much each kind is scaled: what the slip gains, ordinary legs lose."""
    gained = shares[names.index((cause,))] * (often - 1.0)
    lost = max(1.0 - gained / shares[0], 0.0)
    return np.array(
        [often if one == (cause,) else lost if _OWN.issuperset(one) else 1.0 for one in names]
    )
