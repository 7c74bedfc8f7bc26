"""All ways of walking the course weighed against each other, forward and backward in time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from copy import copy
from dataclasses import dataclass

import numpy as np

from audit.matching.portions import IndexArray, SmallIndex
from audit.matching.route import Edge
from audit.matching.soft_minimum import IMPOSSIBLE, Runs, combined, total_costs
from audit.matching.stays import Stays
from audit.matching.walk_evidence import EdgeKey, Evidence
from audit.matching.walker import Abreast, Walker, Walkers, abreast
from audit.units import FloatArray

_NEVER = -25.0
"""Log probability of what never happens: all of it together is less than a rounding error."""

_ABREAST_MOST = 400_000
"""Figures of all walkers who are weighed at once, which take eight bytes each; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeOdds:
    """For one edge: the log probability that it was walked over each portion, shape (p,).

    Only portions are kept that have any probability to speak of. ``index`` tells their
    places among the portions of the edge.
    """

    edge: Edge
    index: IndexArray
    first: SmallIndex
    second: SmallIndex
    log_odds: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Forward:
    """All edges weighed, and all ways forward in time; of several walkers with a row for each.

    ``left`` is what leaving each node costs at each cut, ``total`` all ways together.
    """

    edges: list[WeighedEdge | _Jump]
    left: list[FloatArray]
    total: FloatArray

    def of(self, row: int) -> _Forward:
        """Give those of one walker, held by themselves."""
        return _Forward(
            edges=[weighed.of(row) for weighed in self.edges],
            left=[of[row].copy() for of in self.left],
            total=self.total[row],
        )


class Ways:
    """Forward and backward costs over all ways, for one supposed walker.

    ``forward`` is what is known of the way forward in time, where it is worked out already.
    """

    def __init__(self, stays: Stays, walker: Walker, forward: _Forward | None = None) -> None:
        self.evidence, self.walker = stays.evidence, walker
        self._stays, self._route = stays, stays.evidence.route
        self._size = len(stays.evidence.cuts)
        forward = _forward(stays, walker) if forward is None else forward
        self.edges, self._left, self.total = forward.edges, forward.left, float(forward.total)
        self._from = _by_source(self.edges)

    def edge_odds(self, least: float = _NEVER) -> list[EdgeOdds]:
        """Give the log probability of every portion as every edge (the backward pass).

        Portions below the log probability ``least`` are left out.
        """
        nodes = len(self._route.position)
        to_come_arrived = [np.full(self._size, IMPOSSIBLE) for _ in range(nodes)]
        odds = []
        for node in reversed(self._route.order):
            to_come_left = np.full(self._size, IMPOSSIBLE)
            for weighed in self._from.get(node, []):
                target = weighed.edge.target
                costs = weighed.cost
                if target >= 0:
                    costs = costs + to_come_arrived[target][weighed.second]
                to_come_left = combined(to_come_left, weighed.combined_at_first(costs))
                odds.append(self._odds(weighed, self._left[node][weighed.first] + costs, least))
            to_come = self._stays.to_come(node, to_come_left)
            to_come_arrived[node] = combined(to_come, self._stays.ending(node))
        for weighed in self._from.get(-1, []):
            costs = weighed.cost + to_come_arrived[weighed.edge.target][weighed.second]
            odds.append(self._odds(weighed, costs, least))
        return odds

    def _odds(self, weighed: WeighedEdge | _Jump, costs: FloatArray, least: float) -> EdgeOdds:
        log_odds = self.total - costs
        likely = np.flatnonzero(log_odds > least)
        return EdgeOdds(
            edge=weighed.edge,
            index=likely,
            first=weighed.first[likely],
            second=weighed.second[likely],
            log_odds=log_odds[likely],
        )


def ways_of(stays: Stays, walkers: Sequence[Walker]) -> Iterator[Ways]:
    """Weigh all ways for each of some walkers, as many abreast as need little memory.

    What short arrays cost is the calls: of a few walkers at once they cost hardly more than of
    one.
    """
    at_once = max(1, _ABREAST_MOST // stays.evidence.size)
    for begin in range(0, len(walkers), at_once):
        group = walkers[begin : begin + at_once]
        if len(group) == 1:
            yield Ways(stays, group[0])
            continue
        forward = _forward(stays, abreast(group))
        for row, walker in enumerate(group):
            yield Ways(stays, walker, forward.of(row))


def _forward(stays: Stays, walker: Walkers) -> _Forward:
    """Weigh all edges, and all ways forward in time."""
    evidence = stays.evidence
    shape = (*(walker.rows if isinstance(walker, Abreast) else ()), len(evidence.cuts))
    edges = [
        _Jump(edge, shape[-1]) if edge.kind == "jump" else WeighedEdge(edge, evidence, costs)
        for edge, costs in _costs_of_edges(evidence, walker)
        if edge.kind == "jump" or costs.size
    ]
    leaving = _by_source(edges)
    nodes = range(len(evidence.route.position))
    arrived = [np.full(shape, IMPOSSIBLE) for _ in nodes]
    left = [np.broadcast_to(stays.setting_out(node), shape) for node in nodes]

    def arrive(weighed: WeighedEdge | _Jump, before: FloatArray) -> None:
        costs = weighed.cost + before.take(weighed.first, axis=-1)
        there = weighed.at_second.combined(costs)
        arrived[weighed.edge.target] = combined(arrived[weighed.edge.target], there)

    for weighed in leaving.get(-1, []):
        arrive(weighed, np.zeros(shape))
    ends = []
    for node in evidence.route.order:
        if arrived[node].min() < IMPOSSIBLE / 2:
            left[node] = combined(left[node], stays.left(node, arrived[node]))
            ends.append(arrived[node] + stays.ending(node))
        for weighed in leaving.get(node, []):
            if weighed.edge.target < 0:
                ends.append(weighed.cost + left[node].take(weighed.first, axis=-1))
            else:
                arrive(weighed, left[node])
    total = total_costs(np.concatenate(ends, axis=-1)) if ends else np.full(shape[:-1], IMPOSSIBLE)
    return _Forward(edges=edges, left=left, total=total)


def _by_source(edges: Iterable[WeighedEdge | _Jump]) -> dict[int, list[WeighedEdge | _Jump]]:
    """Give the edges that leave each node."""
    found: dict[int, list[WeighedEdge | _Jump]] = {}
    for weighed in edges:
        found.setdefault(weighed.edge.source, []).append(weighed)
    return found


def weighed_edges(evidence: Evidence, walker: Walker) -> list[WeighedEdge]:
    """Weigh every portion as every edge that is walked, for one supposed walker."""
    return [
        WeighedEdge(edge, evidence, costs)
        for edge, costs in _costs_of_edges(evidence, walker)
        if edge.kind != "jump"
    ]


def _costs_of_edges(evidence: Evidence, walker: Walkers) -> Iterator[tuple[Edge, FloatArray]]:
    """Give each edge with what its portions cost, arriving included; nothing for a leap.

    Of several walkers these have shape (walkers, portions).
    """
    known: dict[EdgeKey, FloatArray] = {}
    for edge in evidence.route.edges:
        if edge.kind == "jump":
            yield edge, np.empty(0)
            continue
        key = evidence.key(edge)
        if key not in known:
            second = evidence.of_edge(edge).second
            known[key] = evidence.portion_costs(edge, walker) + evidence.ending(edge, second)
        yield edge, known[key]


class WeighedEdge:
    """An edge with the cost of every portion as a walk of it, arriving included.

    Of several walkers ``cost`` has a row for each.
    """

    def __init__(self, edge: Edge, evidence: Evidence, costs: FloatArray) -> None:
        at = evidence.of_edge(edge)
        self.edge = edge
        self.first, self.second = at.first, at.second
        self._runs = evidence.runs_of(edge)
        self.at_second = self._runs.at_second
        self.cost = costs + edge.cost

    def of(self, row: int) -> WeighedEdge:
        """Give what it costs one walker."""
        one = copy(self)
        one.cost = self.cost[row].copy()
        return one

    def combined_at_first(self, costs: FloatArray) -> FloatArray:
        """Combine the costs of the portions that begin at each cut."""
        return self._runs.at_first.combined(costs[self._runs.by_first])


class _Jump:
    """A leap over legs that no walking shows: from every cut to itself."""

    def __init__(self, edge: Edge, cuts: int) -> None:
        self.edge = edge
        self.first = self.second = np.arange(cuts, dtype=np.int32)
        self.at_second = Runs(self.second, cuts)
        self.cost = np.full(cuts, edge.cost)

    def of(self, row: int) -> _Jump:  # noqa: ARG002 - of an edge that is walked it is asked
        """Give itself: it costs every walker the same."""
        return self

    def combined_at_first(self, costs: FloatArray) -> FloatArray:
        """Give the costs: one leap begins at each cut."""
        return costs
