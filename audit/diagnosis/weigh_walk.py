"""All legs of a walk weighed together: what they have in common, and what each shows besides."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from audit.diagnosis.accounts import Account
from audit.diagnosis.leg_densities import (
    STEADY_PACES,
    STEADY_TURNS,
    LegDensities,
    Made,
    leg_densities,
    steady_paces,
    steady_turns,
)
from audit.diagnosis.leg_evidence import LegEvidence
from audit.diagnosis.length_hypotheses import LengthGrid, length_grid
from audit.diagnosis.makes_it_again import Prone, prone_to
from audit.diagnosis.on_and_off import OnAndOff, sum_over_changes
from audit.diagnosis.ordinary import Ordinary, ordinary_paces, ordinary_turns
from audit.diagnosis.turn_hypotheses import TurnHypothesis, turn_hypotheses
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.settings import DiagnosisSettings
from audit.units import FloatArray

State = tuple[int, Made, Made]
"""Number of the account, what turned the leg, what changed its distance."""
States = dict[State, float]
_NOTHING = 1e-6
"""Shares below this are dropped: they cost time and change no figure that is shown."""


@dataclass(slots=True, kw_only=True, eq=False)
class Weighed:
    """What a walk comes to.

    Attributes
    ----------
    states : one dict a leg
        Probability of every state of it, adding up to 1.
    accounts : one tuple a leg
        Those that the states number.
    on : dict
        By mistake that legs share, the probability that each leg shows it.
    walk_causes : dict
        The probability of each such mistake.
    sure : list of float
        By leg, the probability that its portion is its own, heading and distance weighed.
    bias_deg, pace : float
        The turn and the logarithm of the pace ratio that this walker is reckoned to
        have on all legs, mistakes left out.
    scatter : WalkersScatter
        By what his ordinary legs scatter.
    """

    states: list[States]
    accounts: list[tuple[Account, ...]]
    sure: list[float] = field(default_factory=list)
    on: dict[str, FloatArray] = field(default_factory=dict)
    walk_causes: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    bias_deg: float = 0.0
    pace: float = 0.0
    scatter: WalkersScatter = field(default_factory=WalkersScatter)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Candidate:
    """A hypothesis on the whole grid: log weight (turn grid, length grid), and which legs."""

    hypothesis: TurnHypothesis | None
    log_weight: FloatArray
    summed: OnAndOff | None = None
    density: FloatArray | None = None
    prone: Prone | None = None


def weigh_walk(evidence: Sequence[LegEvidence], settings: DiagnosisSettings) -> Weighed:
    """Weigh all legs of a walk against all that it may have in common."""
    turns, paces = ordinary_turns(settings), ordinary_paces(settings)
    legs = [leg_densities(leg, turns, paces, settings) for leg in evidence]
    grid = length_grid(legs, evidence, paces, settings)
    prior = np.log(turns.prior[:, None] * grid.prior[None, :])
    off = _pooled(legs, [leg.turns for leg in legs], grid)
    alone, hypotheses = turn_hypotheses(legs, evidence, turns, settings)
    nothing = np.log(off).sum(axis=0) + prior + np.log(alone)
    candidates = [_Candidate(hypothesis=None, log_weight=nothing)]
    for again in prone_to(legs, ("turn", "place", "shape"), settings):
        made = _pooled(again.legs, [leg.turns for leg in again.legs], grid)
        log_weight = np.log(made).sum(axis=0) + prior + np.log(again.prior)
        if log_weight.max() > nothing.max() - settings.again_hopeless_nats:
            candidates.append(
                _Candidate(hypothesis=None, log_weight=log_weight, density=made, prone=again)
            )
    for one in hypotheses:
        on = _pooled(legs, one.density, grid)
        summed = sum_over_changes(on, off, settings)
        log_weight = summed.log_evidence + prior + one.log_prior
        candidates.append(
            _Candidate(hypothesis=one, log_weight=log_weight, summed=summed, density=on)
        )
    most = max(float(one.log_weight.max()) for one in candidates)
    weights = [np.exp(one.log_weight - most) for one in candidates]
    total = sum(float(weight.sum()) for weight in weights)
    found = Weighed(
        states=[defaultdict(float) for _ in legs], accounts=[leg.accounts for leg in legs]
    )
    without = np.zeros_like(off)
    for candidate, raw in zip(candidates, weights, strict=True):
        without += _take(found, legs, candidate, raw / total, grid)
    for number, leg in enumerate(legs):
        ratio = without[number] / off[number]
        _add_states(found.states[number], leg, leg.turns, leg.turn_names, ratio, grid, number)
    shared = np.asarray(sum(weights) / total)
    _take_common(found, shared, turns, grid)
    plain = [one.hypothesis is None for one in candidates]
    ordinary = sum(weight for weight, of in zip(weights, plain, strict=True) if of) / total
    _take_steady_turns(found, np.asarray(ordinary), turns, settings)
    _take_steady_paces(found, shared, grid, settings)
    _take_sureness(found, evidence, settings)
    return found


def _take_sureness(
    found: Weighed, evidence: Sequence[LegEvidence], settings: DiagnosisSettings
) -> None:
    """Take how sure each portion is, and bring the states of each leg to a sum of one."""
    for shown, states in zip(evidence, found.states, strict=True):
        whole = sum(states.values())
        # The match has counted against it already that a leg fits no ordinary walker; what
        # it cannot know is that the leg fits the others, or a mistake.
        sure, most = shown.confidence, settings.match_odds_gained
        best = most * sure / (most * sure + 1.0 - sure)
        found.sure.append(min(sure * max(whole, 1.0), best))
        for state in states:
            states[state] /= whole


def _pooled(
    legs: Sequence[LegDensities], turns: Sequence[FloatArray], grid: LengthGrid
) -> FloatArray:
    """Give how likely each leg is on the whole grid, shape (legs, turn grid, length grid).

    A portion that may not be the leg's says the less about the walker.
    """
    pooled = np.empty((len(legs), turns[0].shape[2], len(grid.prior)))
    for number, leg in enumerate(legs):
        weighted = turns[number].sum(axis=1) * leg.weight[:, None]
        sure = leg.leg.confidence
        pooled[number] = sure * (weighted.T @ grid.total[number])
        pooled[number] += (1.0 - sure) * leg.stray_turn * leg.stray_length + 1e-300
    return pooled


def _take(
    found: Weighed,
    legs: Sequence[LegDensities],
    candidate: _Candidate,
    weight: FloatArray,
    grid: LengthGrid,
) -> FloatArray:
    """Add a candidate's share; give what of it falls on legs without its mistake."""
    if candidate.prone is not None and candidate.density is not None:
        return _take_prone(found, candidate.prone, candidate.density, weight, grid)
    one, summed, density = candidate.hypothesis, candidate.summed, candidate.density
    if one is None or summed is None or density is None:
        return np.broadcast_to(weight, (len(legs), *weight.shape))
    shown = np.where(one.shown, (weight[None] * summed.on).sum(axis=(1, 2)), 0.0)
    found.on[one.cause] = found.on.get(one.cause, np.zeros(len(legs))) + shown
    found.walk_causes[one.cause] += float(weight.sum())
    if weight.sum() < _NOTHING:
        return np.broadcast_to(weight, (len(legs), *weight.shape))
    for number, leg in enumerate(legs):
        ratio = weight * summed.on[number] / density[number]
        states, names = found.states[number], one.names[number]
        _add_states(states, leg, one.density[number], names, ratio, grid, number)
    return np.asarray(weight[None] * (1.0 - summed.on))


def _take_prone(
    found: Weighed, one: Prone, density: FloatArray, weight: FloatArray, grid: LengthGrid
) -> FloatArray:
    """Add the share of a walker who makes a slip again; nothing of it is left over."""
    _share_on_all(found, one.cause, float(weight.sum()), len(one.legs))
    for number, leg in enumerate(one.legs):
        ratio = weight / density[number]
        _add_states(found.states[number], leg, leg.turns, leg.turn_names, ratio, grid, number)
    return np.zeros((len(one.legs), *weight.shape))


def _add_states(
    states: States,
    leg: LegDensities,
    turns: FloatArray,
    names: tuple[Made, ...],
    ratio: FloatArray,
    grid: LengthGrid,
    number: int,
) -> None:
    """Share out the probability of a leg, ``ratio`` over its density, among its states."""
    for account, weight in enumerate(leg.weight):
        left = weight * (turns[account] @ ratio)
        if float(left.sum(axis=0) @ grid.total[number][account]) < _NOTHING:
            continue
        joint = left @ grid.by_name[number][account].T
        for row, column in zip(*np.nonzero(joint > _NOTHING), strict=True):
            states[account, names[row], grid.names[number][column]] += float(joint[row, column])


def _take_common(found: Weighed, weight: FloatArray, turns: Ordinary, grid: LengthGrid) -> None:
    """Add up the walker's own turn, pace and scatter, and what his distances have in common."""
    by_turn, by_length = weight.sum(axis=1), weight.sum(axis=0)
    found.bias_deg = float(by_turn @ turns.common)
    found.pace = float(by_length @ grid.paces.common[grid.place])
    found.scatter = WalkersScatter(
        turn_deg=float(by_turn @ turns.scatter),
        log_ratio=float(by_length @ grid.paces.scatter[grid.place]),
    )
    for place, one in enumerate(grid.hypotheses):
        if one.cause is None:
            continue
        share = float(by_length[grid.part(place)].sum())
        shown = share * np.array(one.shown, dtype=np.float64)
        found.on[one.cause] = found.on.get(one.cause, np.zeros(len(shown))) + shown
        found.walk_causes[one.cause] += share


def _take_steady_turns(
    found: Weighed, weight: FloatArray, turns: Ordinary, settings: DiagnosisSettings
) -> None:
    """Add a turn that all legs share; ``weight`` is that of no other mistake of direction."""
    legs = len(found.states)
    by_turn = weight.sum(axis=1)
    for name, named in zip(STEADY_TURNS, steady_turns(turns, settings), strict=True):
        _share_on_all(found, name, float(by_turn @ named), legs)


def _take_steady_paces(
    found: Weighed, weight: FloatArray, grid: LengthGrid, settings: DiagnosisSettings
) -> None:
    """Add a pace that is off on all legs by no other mistake of distance, whatever turned them."""
    legs = len(found.states)
    ordinary = grid.part(0)
    by_pace = weight.sum(axis=0)[ordinary]
    for name, named in zip(STEADY_PACES, steady_paces(grid.paces, settings), strict=True):
        _share_on_all(found, name, float(by_pace @ named[grid.place[ordinary]]), legs)


def _share_on_all(found: Weighed, name: str, share: float, legs: int) -> None:
    found.on[name] = found.on.get(name, np.zeros(legs)) + share
    found.walk_causes[name] += share
