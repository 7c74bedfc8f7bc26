"""The likeliest other reading of a leg: somewhere else in the walk, or not walked at all."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.leg_match import LegStatus
from audit.matching.portions import IndexArray
from audit.matching.reading import LegOdds, LegReading, WalkedKind, is_near
from audit.settings import MatchingSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherReading:
    """Another portion, as cuts (None where it is that the leg was not walked), and its odds."""

    kind: WalkedKind | None
    first: int | None
    second: int | None
    probability: float


def status_of(kind: WalkedKind) -> LegStatus:
    """Give what became of a leg that was walked in some way."""
    return "unfinished" if kind == "given-up" else "walked"


def runner_up(
    odds: Mapping[WalkedKind, LegOdds], chosen: LegReading, cuts: Cuts, settings: MatchingSettings
) -> OtherReading | None:
    """Give the likeliest reading that is materially another; None where there is none.

    Materially another is one whose start or claim lies beyond the tolerance of a right
    answer, or that makes something else of the leg. Its probability is that of all
    portions which would be the same answer.
    """
    others = [_likeliest(kind, part, chosen, cuts, settings) for kind, part in odds.items()]
    if chosen.kind != "none":
        not_walked = max(1.0 - sum(part.share for part in odds.values()), 0.0)
        others.append(OtherReading(kind=None, first=None, second=None, probability=not_walked))
    best = max((one for one in others if one), key=lambda one: one.probability, default=None)
    return best if best and best.probability >= settings.runner_up_least else None


def _likeliest(
    kind: WalkedKind,
    odds: LegOdds,
    chosen: LegReading,
    cuts: Cuts,
    settings: MatchingSettings,
) -> OtherReading | None:
    """Give the likeliest of the portions of one kind that are another answer."""
    other = np.ones(len(odds.first), dtype=bool)
    if chosen.kind != "none" and status_of(chosen.kind) == status_of(kind):
        other = ~_same(odds.first, odds.second, (chosen.first, chosen.second), cuts, settings)
    if not other.any():
        return None
    first, second, probability = odds.first[other], odds.second[other], odds.probability[other]
    # The sum about a portion is largest near one that is itself among the likelier ones.
    leading = np.argsort(-probability, kind="stable")[: settings.runner_up_candidates]
    sums = [
        float(probability[_same(first, second, (first[n], second[n]), cuts, settings)].sum())
        for n in leading
    ]
    best = int(np.argmax(sums))
    return OtherReading(
        kind=kind,
        first=int(first[leading[best]]),
        second=int(second[leading[best]]),
        probability=sums[best],
    )


def _same(
    first: IndexArray,
    second: IndexArray,
    portion: tuple[int | None, int | None],
    cuts: Cuts,
    settings: MatchingSettings,
) -> np.ndarray:
    """Tell which portions are the same answer as one, within the tolerance at both ends."""
    begun, ended = (
        is_near(cuts, index, np.array([end]), settings)[:, 0]
        for index, end in zip((first, second), portion, strict=True)
    )
    return np.asarray(begun & ended)
