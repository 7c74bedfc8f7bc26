"""Reading one answer out of the odds: which portion each leg has, and how sure that is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from audit.matching.cuts import Cuts
from audit.matching.portions import IndexArray
from audit.matching.ways import EdgeOdds
from audit.settings import MatchingSettings
from audit.units import FloatArray

WalkedKind = Literal["leg", "late-start", "given-up"]
ReadingKind = Literal["leg", "late-start", "given-up", "none"]

_KIND_OF_EDGE: dict[str, WalkedKind] = {
    "leg": "leg",
    "slip": "leg",
    "carried": "leg",
    "reversed": "leg",
    "late-start": "late-start",
    "given-up": "given-up",
}
_BY_SLIP = ("slip", "carried")


@dataclass(frozen=True, slots=True, kw_only=True)
class LegReading:
    """The portion read for one leg, as cuts; None where the leg was not walked.

    Attributes
    ----------
    kind : "leg", "late-start", "given-up" or "none"
    share : float
        Probability of this kind.
    right : float
        Probability that both ends are within the tolerance of a right answer, as the
        odds have it (before calibration).
    """

    kind: ReadingKind
    first: int | None
    second: int | None
    share: float
    right: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LegOdds:
    """The odds of one leg over portions, gathered from all edges and supposed walkers.

    ``by_slip`` is how much of ``share`` supposes a slip, of this leg's plot or of the one before.
    """

    first: IndexArray
    second: IndexArray
    probability: FloatArray
    share: float
    by_slip: float = 0.0


def gather_leg_odds(
    odds: Sequence[tuple[float, list[EdgeOdds]]], leg: int, size: int
) -> dict[WalkedKind, LegOdds]:
    """Add up the odds of a leg by kind.

    ``odds`` holds a weight and the edge odds for each supposed walker.
    """
    parts: dict[WalkedKind, list[tuple[IndexArray, FloatArray]]] = {}
    by_slip = 0.0
    for weight, edges in odds:
        for edge in edges:
            if edge.edge.leg != leg:
                continue
            probability = weight * np.exp(edge.log_odds)
            seen = probability > 1e-9
            key = edge.first[seen].astype(np.int64) * size + edge.second[seen]
            kind = _KIND_OF_EDGE[edge.edge.kind]
            if edge.edge.kind in _BY_SLIP:
                by_slip += float(probability[seen].sum())
            parts.setdefault(kind, []).append((key, probability[seen]))
    gathered = {}
    for kind, pieces in parts.items():
        keys, where = np.unique(np.concatenate([key for key, _ in pieces]), return_inverse=True)
        shares = np.concatenate([part for _, part in pieces])
        total = np.bincount(where, shares, len(keys)).astype(np.float64)
        gathered[kind] = LegOdds(
            first=keys // size,
            second=keys % size,
            probability=total,
            share=float(total.sum()),
            by_slip=by_slip if kind == "leg" else 0.0,
        )
    return gathered


def read_leg(
    odds: dict[WalkedKind, LegOdds],
    cuts: Cuts,
    not_before: int,
    settings: MatchingSettings,
) -> LegReading:
    """Choose the portion of a leg that is most probably right within the tolerance.

    ``not_before`` is the cut at which the leg before it was claimed.
    """
    walked = sum(part.share for part in odds.values())
    nothing = LegReading(
        kind="none", first=None, second=None, share=1.0 - walked, right=1.0 - walked
    )
    if walked < settings.walked_least:
        return nothing
    kind = max(odds, key=lambda name: odds[name].share)
    chosen = odds[kind]
    allowed = chosen.first >= not_before
    if not allowed.any():
        return nothing
    first, second, right = _most_probably_right(chosen, allowed, cuts, settings)
    return LegReading(
        kind=kind,
        first=first,
        second=second,
        share=chosen.share,
        right=right,
    )


def _most_probably_right(
    odds: LegOdds, allowed: np.ndarray, cuts: Cuts, settings: MatchingSettings
) -> tuple[int, int, float]:
    """Give the portion with most probability within the tolerance of both its ends.

    Among those that are nearly as probable as the best, the closest fit is taken: the
    one with most probability within a third of the tolerance. One with hardly any there lies
    between two others, within the tolerance of both, and is what nobody says.
    """
    likely = odds.probability >= odds.probability.max() * 1e-4
    firsts, row = np.unique(odds.first[likely], return_inverse=True)
    seconds, column = np.unique(odds.second[likely], return_inverse=True)
    table = np.zeros((len(firsts), len(seconds)))
    table[row, column] = odds.probability[likely]
    wide, close = (
        _near(cuts, firsts, settings, share) @ table @ _near(cuts, seconds, settings, share)
        for share in (1.0, 1.0 / 3.0)
    )
    wide = np.where(close >= settings.close_least * wide, wide, 0.0)
    nearly_best = wide >= settings.nearly_best * wide.max()
    merit = np.where(nearly_best, 1.0 + close + 0.1 * table, wide)
    open_to_choice = np.zeros(table.shape, dtype=bool)
    open_to_choice[row, column] = allowed[likely]
    if not open_to_choice.any():
        best = int(np.argmax(np.where(allowed, odds.probability, -1.0)))
        return int(odds.first[best]), int(odds.second[best]), float(odds.probability[best])
    merit[~open_to_choice] = -1.0
    best_row, best_column = np.unravel_index(int(np.argmax(merit)), merit.shape)
    return (
        int(firsts[best_row]),
        int(seconds[best_column]),
        float(wide[best_row, best_column]),
    )


def _near(cuts: Cuts, index: IndexArray, settings: MatchingSettings, share: float) -> FloatArray:
    """Tell (as 0 and 1) which cuts are the same within a share of the tolerance."""
    return is_near(cuts, index, index, settings, share).astype(np.float64)


def is_near(
    cuts: Cuts,
    index: IndexArray,
    others: IndexArray,
    settings: MatchingSettings,
    share: float = 1.0,
) -> NDArray[np.bool_]:
    """Tell which of some other cuts are the same as each within a share of the tolerance.

    The table has a row for each of ``index``, and a column for each of ``others``.
    """
    apart_s = np.abs(cuts.time_s[index][:, None] - cuts.time_s[others])
    apart_m = np.abs(cuts.path_m[index][:, None] - cuts.path_m[others])
    near = apart_s <= share * settings.right_within_s
    return np.asarray(near | (apart_m <= share * settings.right_within_m))
