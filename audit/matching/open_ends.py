"""The moments that the odds of all ways leave open for the ends of legs, and how they look."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from audit.matching.end_looks import AROUND_LOOKS, Ends, Spread, looks_around
from audit.matching.other_legs import BESIDE_LOOKS, End, OpenLeg, OtherLegs
from audit.matching.portions import IndexArray
from audit.matching.reading import LegOdds, LegReading, WalkedKind
from audit.matching.route import Edge
from audit.matching.walk_layout import WalkLaidOut
from audit.settings import MatchingSettings
from audit.units import FloatArray

LOOKS = (*AROUND_LOOKS, *BESIDE_LOOKS)
"""The names of all readings of an open moment, in the order of their columns."""

Odds = dict[WalkedKind, LegOdds]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OpenEnds:
    """The moments that the odds leave open for one end of the legs; arrays of shape (n,).

    ``leg`` and ``cut`` name each; ``odds`` is its share of the leg's; ``looks`` has shape
    (n, len(LOOKS)).
    """

    leg: IndexArray
    cut: IndexArray
    odds: FloatArray
    looks: FloatArray


class LookedAt:
    """A walk whose legs have been read, to look at the moments that are still open."""

    def __init__(
        self,
        odds: Sequence[Odds],
        readings: Sequence[LegReading],
        laid_out: WalkLaidOut,
        settings: MatchingSettings,
    ) -> None:
        """Take the odds of all legs, and the legs as they were read by these alone.

        Whoever walked by a slip walked another leg than the planned one, against which all
        would be held: such legs are not looked at, and tell nothing of the others.
        """
        self._odds, self._readings, self._laid_out = odds, readings, laid_out
        self._settings = settings
        slipped = {
            leg
            for leg, of in enumerate(odds)
            if "leg" in of and of["leg"].by_slip >= settings.second_look_slip * of["leg"].share
        }
        planned = _planned(laid_out.evidence.route.edges)
        self._planned = {leg: edge for leg, edge in planned.items() if leg not in slipped}
        self._others = OtherLegs(readings, self._planned, laid_out)
        self._spread = Spread(laid_out.samples.smooth)

    def open_ends(self, end: End) -> OpenEnds:
        """Gather the moments open for one end of each leg read as walked, and look at them."""
        every = [
            _open(end, leg, of["leg"], self._settings)
            for leg, of in enumerate(self._odds)
            if leg in self._planned and self._readings[leg].kind == "leg"
        ]
        # Odds spread evenly over hundreds of moments leave none.
        open_legs = [of for of in every if len(of.cut)]
        if not open_legs:
            none = np.zeros(0, dtype=np.int64)
            return OpenEnds(leg=none, cut=none, odds=np.zeros(0), looks=np.zeros((0, len(LOOKS))))
        ends = _joined([self._ends(of) for of in open_legs])
        samples, movement = self._laid_out.samples, self._laid_out.movement
        around = looks_around(ends, samples, movement, self._laid_out.cuts, self._spread)
        beside = np.concatenate([self._others.looks(of) for of in open_legs])
        return OpenEnds(
            leg=np.concatenate([np.full(len(of.cut), of.leg) for of in open_legs]),
            cut=ends.cut,
            odds=np.concatenate([of.share for of in open_legs]),
            looks=np.hstack([around, beside]),
        )

    def _ends(self, of: OpenLeg) -> Ends:
        edge, (ratio, turned_deg) = self._planned[of.leg], self._others.usual(of.leg)
        points = self._laid_out.evidence.route.position
        before, after = self._others.beside(of.leg)
        time_s, count = self._laid_out.cuts.time_s, len(of.cut)
        return Ends(
            cut=of.cut,
            start=of.start,
            claim=of.claim,
            point=np.tile(points[of.leg if of.end == "start" else of.leg + 1], (count, 1)),
            log_planned=np.full(count, np.log(edge.distance_m) + ratio),
            planned_deg=np.full(count, edge.azimuth_deg + turned_deg),
            leg_before_s=np.full(count, -np.inf if before is None else time_s[before]),
            next_leg_s=np.full(count, np.inf if after is None else time_s[after]),
        )


def shares_at(odds: LegOdds, end: End) -> tuple[IndexArray, IndexArray, FloatArray]:
    """Give the cuts of one end, which of them each portion has, and the share of each."""
    at = odds.first if end == "start" else odds.second
    cuts, row = np.unique(at, return_inverse=True)
    return cuts, row, np.bincount(row, odds.probability) / odds.share


def _open(end: End, leg: int, odds: LegOdds, settings: MatchingSettings) -> OpenLeg:
    """Give the cuts open for an end, their shares, and the likeliest portion of each."""
    cuts, row, share = shares_at(odds, end)
    # The last one written for a cut is the likeliest of its portions.
    by_odds = np.argsort(odds.probability, kind="stable")
    best = np.zeros(len(cuts), dtype=np.int64)
    best[row[by_odds]] = by_odds
    kept = share >= settings.second_look_share
    best = best[kept]
    return OpenLeg(
        end=end,
        leg=leg,
        cut=cuts[kept],
        start=odds.first[best],
        claim=odds.second[best],
        share=share[kept],
    )


def _planned(edges: Sequence[Edge]) -> Mapping[int, Edge]:
    """Give the edge by which each leg is walked as planned, of legs that are straight."""
    return {
        edge.leg: edge
        for edge in edges
        if edge.kind == "leg" and edge.leg is not None and edge.target == edge.leg + 1
        if edge.source == edge.leg and edge.line is None
    }


def _joined(parts: Sequence[Ends]) -> Ends:
    return Ends(
        **{
            name: np.concatenate([getattr(part, name) for part in parts])
            for name in Ends.__dataclass_fields__
        }
    )
