"""A made walk as a problem to learn from: every step of every way, its cost and its signs."""

from __future__ import annotations

import datetime as dt
from copy import copy
from dataclasses import dataclass, replace

import numpy as np
from walks import Walk

from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.match_walk import Weighed, in_play, weigh
from audit.matching.stays import Stays
from audit.matching.supposed_walkers import fan_of_walkers
from audit.matching.walk_evidence import Evidence
from audit.matching.walk_layout import WalkLaidOut, lay_out
from audit.matching.walker import Walker
from audit.matching.ways import Ways, WeighedEdge
from audit.settings import Settings
from learning.allowed import Truth
from learning.hats import columns
from learning.knots import ENDS, PORTIONS, STAYS

_KEPT = -14.0
"""Log probability below which a portion is no rival of the right one."""

_RIGHT_WITHIN = 8.0
"""Of the right portions only those that cost no more than this over the best of them."""


@dataclass(slots=True, kw_only=True, eq=False)
class Step:
    """The portions of one edge: places among the cuts in play of its two nodes."""

    source: int
    target: int
    leg: int | None
    kind: str
    first: np.ndarray
    second: np.ndarray
    at_source: np.ndarray
    at_target: np.ndarray
    cost: np.ndarray
    signs: np.ndarray
    allowed: np.ndarray
    right: np.ndarray


@dataclass(slots=True, kw_only=True, eq=False)
class Node:
    """One node: what it costs to begin the course there, to stay, and to end it there."""

    arrivals: int
    departures: int
    begin: np.ndarray
    begin_signs: np.ndarray
    may_begin: bool
    stay: np.ndarray
    stay_signs: np.ndarray
    stay_from: np.ndarray
    stay_to: np.ndarray
    end: np.ndarray
    end_signs: np.ndarray
    may_end: bool


@dataclass(slots=True, kw_only=True, eq=False)
class Problem:
    """A walk to learn from. ``time_s`` and ``path_m`` are those of its cuts."""

    family: str
    order: tuple[int, ...]
    walked: tuple[bool, ...]
    steps: list[Step]
    nodes: list[Node]
    time_s: np.ndarray
    path_m: np.ndarray


def problem_of(walk: Walk) -> Problem:
    """Lay a made walk out as the matching would, with what its truth allows."""
    laid_out, stays, weighed = ways_in_play(walk)
    plain = copy(stays.evidence)
    plain.learnt = None
    return _problem(walk, laid_out, stays.narrowed(plain), weighed.best)


def ways_in_play(walk: Walk) -> tuple[WalkLaidOut, Stays, Weighed]:
    """Give a walk laid out, what is left in play of it, and that weighed for a few walkers."""
    used = Settings()
    day = dt.datetime.fromtimestamp(float(walk.track.time_s[0]), dt.UTC).date()
    card = work_out_card(walk.plan, track_date=day)
    laid_out = lay_out(clean_track(walk.track, card.grid, used.cleaning), card, used.matching)
    stays = in_play(Stays(laid_out.evidence), card, used.matching)
    fan = fan_of_walkers(card, used.matching)
    return laid_out, stays, weigh(stays, card, used.matching, fan)


def _problem(walk: Walk, laid_out: WalkLaidOut, stays: Stays, walker: Walker) -> Problem:
    evidence, cuts = stays.evidence, laid_out.cuts
    ways, truth = Ways(stays, walker), Truth.of(walk, cuts, laid_out.evidence.route)
    likely = {id(odds.edge): odds.index for odds in ways.edge_odds(_KEPT)}
    found = [
        (weighed, kept)
        for weighed in ways.edges
        if isinstance(weighed, WeighedEdge)
        and len(kept := _kept(weighed, likely.get(id(weighed.edge)), truth))
    ]
    has = {
        weighed.edge.leg
        for weighed, kept in found
        if weighed.edge.leg is not None
        and truth.right(weighed.edge.leg, weighed.first[kept], weighed.second[kept]).any()
    }
    lost = {leg for leg, was in enumerate(truth.walked) if was and leg not in has}
    truth = replace(truth, lost=frozenset(lost))
    ends = [_cuts_at(found, node, "target") for node in range(len(evidence.route.position))]
    begins = [_cuts_at(found, node, "source") for node in range(len(evidence.route.position))]
    return Problem(
        family=walk.difficulty,
        order=evidence.route.order,
        walked=truth.walked,
        steps=[_step(weighed, kept, ways, truth, begins, ends) for weighed, kept in found],
        nodes=[
            _node(node, stays, truth, ends[node], begins[node])
            for node in range(len(evidence.route.position))
        ],
        time_s=cuts.time_s,
        path_m=cuts.path_m,
    )


def _kept(weighed: WeighedEdge, likely: np.ndarray | None, truth: Truth) -> np.ndarray:
    """Give the portions of an edge that matter: the likely ones, and the right ones."""
    keep = np.zeros(len(weighed.first), dtype=bool)
    if likely is not None:
        keep[likely] = True
    if weighed.edge.leg is not None:
        right = truth.right(weighed.edge.leg, weighed.first, weighed.second)
        if right.any():
            keep |= right & (weighed.cost <= weighed.cost[right].min() + _RIGHT_WITHIN)
    return np.flatnonzero(keep)


def _cuts_at(found: list, node: int, side: str) -> np.ndarray:
    cuts = [
        (weighed.second if side == "target" else weighed.first)[kept]
        for weighed, kept in found
        if getattr(weighed.edge, side) == node
    ]
    return np.unique(np.concatenate([*cuts, np.empty(0, dtype=np.int64)])).astype(np.int64)


def _step(
    weighed: WeighedEdge,
    kept: np.ndarray,
    ways: Ways,
    truth: Truth,
    begins: list[np.ndarray],
    ends: list[np.ndarray],
) -> Step:
    edge, evidence = weighed.edge, ways.evidence
    first = weighed.first[kept].astype(np.int64)
    second = weighed.second[kept].astype(np.int64)
    signs = evidence.signs_of(edge, ways.walker)
    nothing = np.full(len(kept), -1)
    return Step(
        source=edge.source,
        target=edge.target,
        leg=edge.leg,
        kind=edge.kind,
        first=first,
        second=second,
        at_source=np.searchsorted(begins[edge.source], first) if edge.source >= 0 else nothing,
        at_target=np.searchsorted(ends[edge.target], second) if edge.target >= 0 else nothing,
        cost=weighed.cost[kept].astype(np.float64),
        signs=columns(
            {name: values[kept] for name, values in signs.items()}, evidence.seen.habits, PORTIONS
        ),
        allowed=truth.allowed(edge, first, second),
        right=np.zeros(len(kept), dtype=bool)
        if edge.leg is None
        else truth.right(edge.leg, first, second),
    )


def _node(node: int, stays: Stays, truth: Truth, ends: np.ndarray, begins: np.ndarray) -> Node:
    evidence = stays.evidence
    at = stays.at(node)
    to_begin, to_end = _places(begins, evidence), _places(ends, evidence)
    here = np.flatnonzero((to_end[at.first] >= 0) & (to_begin[at.second] >= 0))
    habits = evidence.seen.habits
    stay_signs = evidence.seen.of_stays(node, at.first[here], at.second[here])
    starts = {name: of[begins] for name, of in evidence.seen.of_starts(node).items()}
    endings = {name: of[ends] for name, of in stays.ending_signs(node).items()}
    return Node(
        arrivals=len(ends),
        departures=len(begins),
        begin=Stays.first_departure(evidence, node)[begins],
        begin_signs=columns(starts, habits, ENDS),
        may_begin=truth.may_start(node),
        stay=at.cost[here],
        stay_signs=columns(stay_signs, habits, STAYS),
        stay_from=to_end[at.first[here]],
        stay_to=to_begin[at.second[here]],
        end=stays.ending(node)[ends],
        end_signs=columns(endings, habits, ENDS),
        may_end=truth.may_end(node),
    )


def _places(cuts: np.ndarray, evidence: Evidence) -> np.ndarray:
    """Give of each cut its place among some cuts; -1 where it is not one of them."""
    place = np.full(len(evidence.cuts), -1)
    place[cuts] = np.arange(len(cuts))
    return place
