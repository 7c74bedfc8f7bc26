"""What a whole walk's distances may have in common, side by side on one grid of ordinary paces."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np
from numpy.typing import NDArray

from audit.diagnosis.beside_another import both_lengths, shown_and_beside
from audit.diagnosis.leg_densities import LegDensities, Made, length_density, stray_length
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.makes_it_again import Prone, prone_to
from audit.diagnosis.ordinary import Ordinary
from audit.diagnosis.walk_hypotheses import WalkHypothesis, walk_hypotheses
from audit.guide.cause_names import CANNOT_TELL
from audit.settings import DiagnosisSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LengthHypothesis:
    """One hypothesis of the distances of a walk.

    Attributes
    ----------
    cause : str or None
        None where the legs have nothing in common but the walker's ordinary pace.
    names : one tuple a leg
        What may have changed its distance.
    density : one float array a leg, shape (accounts, names, grid)
    shown : tuple of bool
        Whether each leg would show the cause.
    """

    cause: str | None
    log_prior: float
    names: tuple[tuple[Made, ...], ...]
    density: tuple[FloatArray, ...]
    shown: tuple[bool, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LengthGrid:
    """All hypotheses that are not hopeless, each where it is not, one after the other on one grid.

    ``number`` and ``place`` have shape (grid,): which hypothesis, and which ordinary pace.
    ``prior`` has shape (grid,); ``total`` one array a leg, shape (accounts, grid);
    ``by_name`` the same split by what changed the distance, shape (accounts, names, grid),
    with ``names`` one tuple a leg.
    """

    hypotheses: tuple[LengthHypothesis, ...]
    paces: Ordinary
    number: NDArray[np.intp]
    place: NDArray[np.intp]
    prior: FloatArray
    total: tuple[FloatArray, ...]
    by_name: tuple[FloatArray, ...]
    names: tuple[tuple[Made, ...], ...]

    def part(self, number: int) -> NDArray[np.bool_]:
        """Say which places of the grid a hypothesis has."""
        return np.asarray(self.number == number)


def length_grid(
    legs: Sequence[LegDensities],
    evidence: Sequence[LegEvidence],
    paces: Ordinary,
    settings: DiagnosisSettings,
) -> LengthGrid:
    """Lay out the hypotheses of the distances that the distances alone leave some hope."""
    shared = walk_hypotheses(evidence, "length", settings)
    plain = LengthHypothesis(
        cause=None,
        log_prior=float(np.log(1.0 - sum(one.prior for one in shared))),
        names=tuple(leg.length_names for leg in legs),
        density=tuple(leg.lengths for leg in legs),
        shown=(False,) * len(legs),
    )
    again = tuple(_made_again(legs, one) for one in prone_to(legs, ("length",), settings))
    found = [plain, *(_lengthened(legs, one, paces, settings) for one in shared), *again]
    scores = [_score(legs, one, paces) for one in found]
    best = max(float(score.max()) for score in scores)
    least = best - settings.hopeless_nats
    least_again = best - settings.again_hopeless_nats
    hopeful = [
        (one, score > least)
        for one, score in zip(found, scores, strict=True)
        if one is plain or score.max() > (least_again if one in again else least)
    ]
    split = [_by_name(hopeful, leg) for leg in range(len(legs))]
    return LengthGrid(
        by_name=tuple(density for density, _ in split),
        names=tuple(names for _, names in split),
        hypotheses=tuple(one for one, _ in hopeful),
        paces=paces,
        number=np.repeat(np.arange(len(hopeful)), [some.sum() for _, some in hopeful]),
        place=np.concatenate([np.flatnonzero(some) for _, some in hopeful]),
        prior=np.concatenate([np.exp(one.log_prior) * paces.prior[some] for one, some in hopeful]),
        total=tuple(density.sum(axis=1) for density, _ in split),
    )


def _by_name(
    hypotheses: Sequence[tuple[LengthHypothesis, NDArray[np.bool_]]], leg: int
) -> tuple[FloatArray, tuple[Made, ...]]:
    """Put the densities of a leg side by side, each name once over all hypotheses."""
    names = tuple(dict.fromkeys(name for one, _ in hypotheses for name in one.names[leg]))
    accounts = len(hypotheses[0][0].density[leg])
    split = np.zeros((accounts, len(names), sum(int(some.sum()) for _, some in hypotheses)))
    first = 0
    for one, some in hypotheses:
        last = first + int(some.sum())
        for column, name in enumerate(one.names[leg]):
            split[:, names.index(name), first:last] += one.density[leg][:, column, some]
        first = last
    return split, names


def _score(legs: Sequence[LegDensities], one: LengthHypothesis, paces: Ordinary) -> FloatArray:
    """Say how well a hypothesis explains the distances at each pace, headings left aside."""
    total = np.log(paces.prior) + one.log_prior
    for leg, density in zip(legs, one.density, strict=True):
        sure = leg.leg.confidence
        mixed = sure * (leg.weight @ density.sum(axis=1)) + (1.0 - sure) * leg.stray_length
        total = total + np.log(mixed + 1e-300)
    return np.asarray(total)


def _made_again(legs: Sequence[LegDensities], one: Prone) -> LengthHypothesis:
    return LengthHypothesis(
        cause=one.cause,
        log_prior=float(np.log(one.prior)),
        names=tuple(leg.length_names for leg in legs),
        density=tuple(leg.lengths for leg in one.legs),
        shown=(True,) * len(legs),
    )


def _lengthened(
    legs: Sequence[LegDensities],
    shared: WalkHypothesis,
    paces: Ordinary,
    settings: DiagnosisSettings,
) -> LengthHypothesis:
    """Give the densities of distances where the legs show a mistake, now and then one not."""
    stray = settings.stray_distance
    keeps = settings.keeps_to_it * (1.0 - stray)
    densities, names = [], []
    for leg, way in zip(legs, shared.expected, strict=True):
        if way is None:
            densities.append(leg.lengths)
            names.append(leg.length_names)
            continue
        both = both_lengths(shared.cause, way, leg.length_ways, settings)
        density = partial(length_density, leg.leg, leg.accounts, grid=paces, settings=settings)
        shown = keeps * shown_and_beside(way, both, density)
        aside = stray * stray_length(leg.leg, leg.accounts, settings)[:, None]
        aside = np.broadcast_to(aside[:, None], shown[:, :1].shape)
        rest = (1.0 - keeps - stray) * leg.lengths
        densities.append(np.concatenate([aside, shown, rest], axis=1))
        names.append(((CANNOT_TELL,), (shared.cause,), *both, *leg.length_names))
    return LengthHypothesis(
        cause=shared.cause,
        log_prior=float(np.log(shared.prior)),
        names=tuple(names),
        density=tuple(densities),
        shown=tuple(way is not None for way in shared.expected),
    )
