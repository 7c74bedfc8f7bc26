"""A second look at where each leg began and ended, once all legs have been found.

The odds of all ways leave a few moments open for each end. What the walk looks like for minutes
before and after each of them tells more than the signs that are weighed for every portion: a
search from a detour, a rest on the way from one at the point. How much, is learnt (`trees`).
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib import resources
from typing import Literal

import numpy as np

from audit.matching.end_looks import LOOKS, Ends, looks_of
from audit.matching.portions import IndexArray
from audit.matching.reading import LegOdds, LegReading, WalkedKind
from audit.matching.route import Edge
from audit.matching.trees import Trees
from audit.matching.walk_layout import WalkLaidOut
from audit.settings import MatchingSettings
from audit.units import FloatArray, direction_degrees, turn_degrees

End = Literal["start", "claim"]
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


@cache
def learnt_trees() -> Mapping[End, Trees]:
    """Give the trees that are shipped; made anew by ``python -m learning.ends``."""
    text = resources.files("audit.matching").joinpath("learnt_ends.json").read_text("utf-8")
    shipped = json.loads(text)
    if tuple(shipped["looks"]) != LOOKS:
        message = "learnt_ends.json was learnt of other looks: learn it anew"
        raise ValueError(message)
    return {"start": Trees.of(shipped["start"]), "claim": Trees.of(shipped["claim"])}


def looked_at_again(
    odds: Sequence[Odds],
    readings: Sequence[LegReading],
    laid_out: WalkLaidOut,
    settings: MatchingSettings,
) -> list[Odds]:
    """Give the odds of each leg with what the second look says of both its ends.

    ``readings`` are those by the odds alone. Only legs read as walked are looked at, and how
    likely that is stays as it was; so does what was reckoned into silences.
    """
    weighed = [dict(of) for of in odds]
    path_m = laid_out.cuts.path_m
    says = {
        end: _by_leg(open_ends(end, odds, readings, laid_out, settings), end, path_m, settings)
        for end in ("start", "claim")
    }
    for leg in range(len(odds)):
        at_start, at_claim = says["start"].get(leg), says["claim"].get(leg)
        if at_start is None or at_claim is None:
            continue
        of = weighed[leg]["leg"]
        nats = _looked_up(at_start, of.first) + _looked_up(at_claim, of.second)
        anew = of.probability * np.exp(nats)
        anew *= of.share / anew.sum()
        weighed[leg]["leg"] = replace(of, probability=anew)
    return weighed


def open_ends(
    end: End,
    odds: Sequence[Odds],
    readings: Sequence[LegReading],
    laid_out: WalkLaidOut,
    settings: MatchingSettings,
) -> OpenEnds:
    """Gather the moments that the odds leave open for one end of each leg, and look at them."""
    planned = _planned(laid_out.evidence.route.edges)
    walker = _Walker(readings, planned, laid_out)
    rows: list[tuple[IndexArray, FloatArray, Ends]] = []
    for leg, of in enumerate(odds):
        if leg not in planned or readings[leg].kind != "leg":
            continue
        cut, share, start, claim = _open(end, of["leg"], settings)
        rows.append((np.full(len(cut), leg), share, walker.ends(end, leg, cut, start, claim)))
    if not rows:
        none = np.zeros(0, dtype=np.int64)
        return OpenEnds(leg=none, cut=none, odds=np.zeros(0), looks=np.zeros((0, len(LOOKS))))
    ends = _joined([of for _, _, of in rows])
    return OpenEnds(
        leg=np.concatenate([leg for leg, _, _ in rows]),
        cut=ends.cut,
        odds=np.concatenate([share for _, share, _ in rows]),
        looks=looks_of(ends, laid_out.samples, laid_out.movement, laid_out.cuts),
    )


def _open(
    end: End, odds: LegOdds, settings: MatchingSettings
) -> tuple[IndexArray, FloatArray, IndexArray, IndexArray]:
    """Give the cuts open for an end, their shares, and the likeliest portion of each."""
    at = odds.first if end == "start" else odds.second
    cuts, row = np.unique(at, return_inverse=True)
    share = np.bincount(row, odds.probability) / odds.share
    # The last one written for a cut is the likeliest of its portions.
    by_odds = np.argsort(odds.probability, kind="stable")
    best = np.zeros(len(cuts), dtype=np.int64)
    best[row[by_odds]] = by_odds
    kept = share >= settings.second_look_share
    best = best[kept]
    return cuts[kept], share[kept], odds.first[best], odds.second[best]


def _planned(edges: Sequence[Edge]) -> dict[int, Edge]:
    """Give the edge by which each leg is walked as planned, of legs that are straight."""
    return {
        edge.leg: edge
        for edge in edges
        if edge.kind == "leg" and edge.leg is not None and edge.target == edge.leg + 1
        if edge.source == edge.leg and edge.line is None
    }


class _Walker:
    """What the other legs of a walk say of one: how this walker walks, and when he was there."""

    def __init__(
        self, readings: Sequence[LegReading], planned: Mapping[int, Edge], laid_out: WalkLaidOut
    ) -> None:
        self._planned, self._cuts = planned, laid_out.cuts
        self._points = laid_out.evidence.route.position
        self._read = {
            leg: (of.first, of.second)
            for leg, of in enumerate(readings)
            if of.kind == "leg" and of.first is not None and of.second is not None
        }
        legs = [leg for leg in self._read if leg in planned]
        self._legs = np.array(legs, dtype=np.int64)
        ways = [self._way(leg) for leg in legs]
        self._ratio = np.array([ratio for ratio, _ in ways])
        self._turned_deg = np.array([turned for _, turned in ways])

    def _way(self, leg: int) -> tuple[float, float]:
        """Give log distance ratio and turn in degrees of a leg as it was read."""
        first, second = self._read[leg]
        east, north = (self._cuts.position[second] - self._cuts.position[first]).tolist()
        edge = self._planned[leg]
        ratio = np.log(max(float(np.hypot(east, north)), 1.0) / edge.distance_m)
        return float(ratio), float(turn_degrees(edge.azimuth_deg, direction_degrees(east, north)))

    def ends(
        self, end: End, leg: int, cut: IndexArray, start: IndexArray, claim: IndexArray
    ) -> Ends:
        edge, others = self._planned[leg], self._legs != leg
        ratio = float(np.median(self._ratio[others])) if others.any() else 0.0
        turned = float(np.median(self._turned_deg[others])) if others.any() else 0.0
        before = [second for of, (_, second) in self._read.items() if of < leg]
        after = [first for of, (first, _) in self._read.items() if of > leg]
        time_s, count = self._cuts.time_s, len(cut)
        return Ends(
            cut=cut,
            start=start,
            claim=claim,
            point=np.tile(self._points[leg if end == "start" else leg + 1], (count, 1)),
            log_planned=np.full(count, np.log(edge.distance_m) + ratio),
            planned_deg=np.full(count, edge.azimuth_deg + turned),
            leg_before_s=np.full(count, time_s[before[-1]] if before else -np.inf),
            next_leg_s=np.full(count, time_s[after[0]] if after else np.inf),
        )


def _joined(parts: Sequence[Ends]) -> Ends:
    return Ends(
        **{
            name: np.concatenate([getattr(part, name) for part in parts])
            for name in Ends.__dataclass_fields__
        }
    )


def _by_leg(
    ends: OpenEnds, end: End, path_m: FloatArray, settings: MatchingSettings
) -> dict[int, tuple[IndexArray, FloatArray]]:
    """Give what the trees say of each open end, by leg: its cuts and their nats.

    It moves odds from one of them to another, and none to those that were not looked at. Of
    moments at one place, as before and after a halt, it says the same: the trees learnt which
    halt ended a leg, and not which side of it, for either is right within the tolerance.
    """
    if not len(ends.leg):
        return {}
    nats = learnt_trees()[end](ends.looks) * settings.second_look_weight
    apart = np.abs(np.diff(path_m[ends.cut])) > settings.second_look_place_m
    place = np.concatenate([[0], np.cumsum(apart | (np.diff(ends.leg) != 0))])
    nats = (np.bincount(place, ends.odds * nats) / np.bincount(place, ends.odds))[place]
    legs, row = np.unique(ends.leg, return_inverse=True)
    before = np.bincount(row, ends.odds)
    after = np.bincount(row, ends.odds * np.exp(nats))
    nats -= np.log(after / before)[row]
    return {int(leg): (ends.cut[row == n], nats[row == n]) for n, leg in enumerate(legs)}


def _looked_up(said: tuple[IndexArray, FloatArray], cuts: IndexArray) -> FloatArray:
    """Give the nats of some cuts; 0 of those that were not looked at."""
    known, nats = said
    place = np.clip(np.searchsorted(known, cuts), 0, len(known) - 1)
    return np.where(known[place] == cuts, nats[place], 0.0)
