"""A leg that was measured from where the one before had been plotted wrongly: no new mistake."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from audit.diagnosis.accounts import Account
from audit.diagnosis.leg_evidence import LegEvidence, Metres2, StartPlot
from audit.diagnosis.steady_sizes import STEADY
from audit.diagnosis.weigh_walk import States, Weighed, weigh_walk
from audit.guide.cause_names import WITHIN_SKILL
from audit.settings import DiagnosisSettings

_SAME = 0.02
"""Plots whose probabilities changed by less are the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CarriedOver:
    """What a leg inherits from the plot of the one before.

    ``probability`` is that it was measured from there and nothing but what is steady turned it
    or changed its distance; ``turn_deg`` and ``log_ratio`` are what that alone makes of r and
    of the logarithm of q.
    """

    probability: float
    turn_deg: float
    log_ratio: float


def weigh_with_plots(
    evidence: tuple[LegEvidence, ...], settings: DiagnosisSettings
) -> tuple[tuple[LegEvidence, ...], Weighed]:
    """Weigh a walk, and again as long as legs show where the next one was measured from.

    Who plots a point wrongly walks to the wrong place, and then measures his next leg from it:
    by itself that leg shows another mistake, which nobody made.
    """
    weighed = weigh_walk(evidence, settings)
    for _ in range(settings.next_leg_rounds):
        plotted = _with_start_plots(evidence, weighed, settings)
        if all(_alike(one, other) for one, other in zip(evidence, plotted, strict=True)):
            break
        evidence, weighed = plotted, weigh_walk(plotted, settings)
    return evidence, weighed


def carried_over(states: States, accounts: Sequence[Account]) -> CarriedOver | None:
    """Give what a leg inherits; None where it is not likelier than not that it does."""
    shares: dict[int, float] = defaultdict(float)
    for (place, turn, length), share in states.items():
        if accounts[place].carried and {*turn, *length} <= {WITHIN_SKILL, *STEADY}:
            shares[place] += share
    probability = sum(shares.values())
    if probability <= 0.5:
        return None
    likeliest = accounts[max(shares, key=lambda place: shares[place])]
    return CarriedOver(
        probability=probability,
        turn_deg=likeliest.aimed_turn_deg,
        log_ratio=likeliest.aimed_log_ratio,
    )


def _with_start_plots(
    evidence: Sequence[LegEvidence], weighed: Weighed, settings: DiagnosisSettings
) -> tuple[LegEvidence, ...]:
    plots = {
        leg.leg + 1: _plots(weighed.states[number], weighed.accounts[number], settings)
        for number, leg in enumerate(evidence)
    }
    return tuple(replace(leg, start_plots=plots.get(leg.leg, ())) for leg in evidence)


def _plots(
    states: States, accounts: Sequence[Account], settings: DiagnosisSettings
) -> tuple[StartPlot, ...]:
    """Give the places that a leg was made for on the map; slips that lead to one place are one."""
    shares: dict[Metres2, float] = defaultdict(float)
    sd_m: dict[Metres2, float] = {}
    for (place, _, _), share in states.items():
        account = accounts[place]
        if account.plotted_m is not None:
            shares[account.plotted_m] += share
            sd_m[account.plotted_m] = account.plotted_sd_m
    return tuple(
        StartPlot(shift_m=shift, sd_m=sd_m[shift], probability=min(share, 1.0))
        for shift, share in sorted(shares.items())
        if share >= settings.next_leg_least
    )


def _alike(one: LegEvidence, other: LegEvidence) -> bool:
    before, now = _shares(one.start_plots), _shares(other.start_plots)
    return all(abs(before.get(at, 0.0) - now.get(at, 0.0)) < _SAME for at in {**before, **now})


def _shares(plots: Sequence[StartPlot]) -> Mapping[Metres2, float]:
    return {plot.shift_m: plot.probability for plot in plots}
