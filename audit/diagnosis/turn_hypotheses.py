"""What a whole walk's headings may have in common, with the densities of every leg under it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from audit.diagnosis.beside_another import both_turns, shown_and_beside
from audit.diagnosis.leg_densities import LegDensities, Made, stray_turn, turn_density
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.on_and_off import sum_over_changes
from audit.diagnosis.ordinary import Ordinary
from audit.diagnosis.walk_hypotheses import WalkHypothesis, walk_hypotheses
from audit.guide.cause_names import CANNOT_TELL
from audit.settings import DiagnosisSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TurnHypothesis:
    """One hypothesis of the headings of a walk: a mistake on some legs, which ones is open.

    Attributes
    ----------
    names : one tuple a leg
        What may have turned it.
    density : one float array a leg, shape (accounts, names, grid)
    shown : bool array, shape (legs,)
        Whether each leg would show the mistake.
    """

    cause: str
    log_prior: float
    names: tuple[tuple[Made, ...], ...]
    density: tuple[FloatArray, ...]
    shown: np.ndarray


def turn_hypotheses(
    legs: Sequence[LegDensities],
    evidence: Sequence[LegEvidence],
    turns: Ordinary,
    settings: DiagnosisSettings,
) -> tuple[float, tuple[TurnHypothesis, ...]]:
    """Give the share of walks without any, and the hypotheses that are not hopeless."""
    shared = walk_hypotheses(evidence, "turn", settings)
    off = np.stack([_alone(leg, leg.turns) for leg in legs])
    prior = np.log(turns.prior)
    best = float((np.log(off).sum(axis=0) + prior).max())
    kept = []
    for one in shared:
        turned = _turned(legs, one, turns, settings)
        on = np.stack([_alone(leg, of) for leg, of in zip(legs, turned.density, strict=True)])
        score = float((sum_over_changes(on, off, settings).log_evidence + prior).max())
        if score + turned.log_prior > best - settings.hopeless_nats:
            kept.append(turned)
    return 1.0 - sum(one.prior for one in shared), tuple(kept)


def _turned(
    legs: Sequence[LegDensities],
    shared: WalkHypothesis,
    turns: Ordinary,
    settings: DiagnosisSettings,
) -> TurnHypothesis:
    """Give the densities where every leg shows a mistake: it, a slip beside it, or what else."""
    keeps = (1.0 - settings.stray_direction) * settings.keeps_to_it
    densities, names = [], []
    for leg, way in zip(legs, shared.expected, strict=True):
        if way is None:
            densities.append(leg.turns)
            names.append(leg.turn_names)
            continue
        aside = (1.0 - keeps) * stray_turn(leg.leg, leg.accounts, settings)[:, None]
        both = both_turns(shared.cause, way, leg.turn_ways, leg.accounts, settings)
        density = partial(turn_density, leg.leg, leg.accounts, grid=turns, settings=settings)
        shown = keeps * shown_and_beside(way, both, density)
        aside = np.broadcast_to(aside[:, None], shown[:, :1].shape)
        densities.append(np.concatenate([aside, shown], axis=1))
        names.append(((CANNOT_TELL,), (shared.cause,), *both))
    return TurnHypothesis(
        cause=shared.cause,
        log_prior=float(np.log(shared.prior)),
        names=tuple(names),
        density=tuple(densities),
        shown=np.array([way is not None for way in shared.expected]),
    )


def _alone(leg: LegDensities, density: FloatArray) -> FloatArray:
    """Give how likely a heading is over all accounts of a leg, distances left aside."""
    sure = leg.leg.confidence
    mixed = leg.weight @ density.sum(axis=1)
    return np.asarray(sure * mixed + (1.0 - sure) * leg.stray_turn + 1e-300)
