"""All ways of walking the course weighed against each other, forward and backward in time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from audit.matching.portions import IndexArray, SmallIndex
from audit.matching.route import Edge
from audit.matching.soft_minimum import IMPOSSIBLE, Runs, combined, total_cost
from audit.matching.stays import Stays
from audit.matching.walk_evidence import EdgeKey, Evidence
from audit.matching.walker import Walker, Walkers, abreast
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


class Ways:
    """Forward and backward costs over all ways, for one supposed walker.

    ``costs`` are those of each edge's portions, where they are worked out already.
    """

    def __init__(
        self,
        stays: Stays,
        walker: Walker,
        costs: Iterable[tuple[Edge, FloatArray]] | None = None,
    ) -> None:
        evidence = self.evidence = stays.evidence
        self.walker = walker
        self._stays = stays
        self._route = evidence.route
        self._size = len(evidence.cuts)
        self.edges = [
            _Jump(edge, self._size) if edge.kind == "jump" else WeighedEdge(edge, evidence, of)
            for edge, of in (_costs_of_edges(evidence, walker) if costs is None else costs)
            if edge.kind == "jump" or len(of)
        ]
        self._from: dict[int, list[WeighedEdge | _Jump]] = {}
        for weighed in self.edges:
            self._from.setdefault(weighed.edge.source, []).append(weighed)
        self.total = self._forward()

    def _forward(self) -> float:
        nodes = len(self._route.position)
        self._arrived = [np.full(self._size, IMPOSSIBLE) for _ in range(nodes)]
        self._left = [self._stays.setting_out(node) for node in range(nodes)]
        for weighed in self._from.get(-1, []):
            self._arrive(weighed, np.zeros(self._size))
        ends = []
        for node in self._route.order:
            arrived = self._arrived[node]
            if arrived.min() < IMPOSSIBLE / 2:
                self._left[node] = combined(self._left[node], self._stays.left(node, arrived))
                ends.append(arrived + self._stays.ending(node))
            for weighed in self._from.get(node, []):
                if weighed.edge.target < 0:
                    ends.append(weighed.cost + self._left[node][weighed.first])
                else:
                    self._arrive(weighed, self._left[node])
        return total_cost(np.concatenate(ends)) if ends else IMPOSSIBLE

    def _arrive(self, weighed: WeighedEdge | _Jump, left: FloatArray) -> None:
        target = weighed.edge.target
        costs = weighed.cost + left[weighed.first]
        self._arrived[target] = combined(self._arrived[target], weighed.at_second.combined(costs))

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
    evidence = stays.evidence
    at_once = max(1, _ABREAST_MOST // evidence.size)
    for begin in range(0, len(walkers), at_once):
        group = walkers[begin : begin + at_once]
        costs = list(_costs_of_edges(evidence, abreast(group)))
        for row, walker in enumerate(group):
            of_one = ((edge, of if edge.kind == "jump" else of[row]) for edge, of in costs)
            yield Ways(stays, walker, of_one)


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
    """An edge with the cost of every portion as a walk of it, arriving included."""

    def __init__(self, edge: Edge, evidence: Evidence, costs: FloatArray) -> None:
        at = evidence.of_edge(edge)
        self.edge = edge
        self.first, self.second = at.first, at.second
        self._runs = evidence.runs_of(edge)
        self.at_second = self._runs.at_second
        self.cost = costs + edge.cost

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

    def combined_at_first(self, costs: FloatArray) -> FloatArray:
        """Give the costs: one leap begins at each cut."""
        return costs
