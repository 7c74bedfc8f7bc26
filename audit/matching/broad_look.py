"""One broad look at all portions as all edges, held small: edge by edge, and piece by piece.

Of a portion as an edge only its place and its costs are kept between the way forward and the
way back in time. Seven digits of a cost are enough: what is told here is whether it lies
within forty nats of the likeliest, and what lies just there counts for nothing either way.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from audit.matching.edge_evidence import CutRuns, SmallIndex, pieces, reach_of
from audit.matching.evidence import EdgeKey, Evidence
from audit.matching.portions import IndexArray, SmallFloat
from audit.matching.route import Edge
from audit.matching.soft_minimum import IMPOSSIBLE, Runs, combined, total_cost
from audit.matching.stays import Marks, Stays, StaysAtPoint
from audit.matching.walker import Walker
from audit.units import FloatArray


class BroadLook:
    """All ways weighed as in `Ways`, for some walkers at once; costs have shape (walkers, n)."""

    def __init__(self, stays: Stays, walkers: Sequence[Walker]) -> None:
        self._evidence, self._walkers = stays.evidence, walkers
        self._route = stays.evidence.route
        self._size = len(stays.evidence.cuts)
        self._places = _Places(stays.evidence)
        self._costs: dict[EdgeKey, SmallFloat] = {}
        self._from: dict[int, list[Edge]] = defaultdict(list)
        for edge in self._route.edges:
            if edge.kind == "jump" or self._places.marks(edge)[0].any():
                self._from[edge.source].append(edge)
        self._stays = _PassingStays(stays, self._places)

    def in_play(self, within_nats: float) -> list[tuple[Edge, SmallIndex]]:
        """Give of each edge the portions that one of the walkers may have walked.

        They are told by their places among all portions. Their odds are within so much of
        certain.
        """
        left, total = self._forward()
        return self._backward(left, total + within_nats)

    def _forward(self) -> tuple[list[FloatArray], FloatArray]:
        """Give what leaving each node at each cut costs, and all ways together."""
        shape = len(self._walkers), self._size
        arrived = [np.full(shape, IMPOSSIBLE) for _ in self._route.position]
        left = [
            np.tile(self._stays.setting_out(node), (shape[0], 1)) for node in range(len(arrived))
        ]
        ends = [np.full(shape[0], IMPOSSIBLE)]
        for node in (-1, *self._route.order):
            if node >= 0 and arrived[node].min() < IMPOSSIBLE / 2:
                stayed = np.array([self._stays.left(node, at) for at in arrived[node]])
                left[node] = combined(left[node], stayed)
                ends.append(_total(arrived[node] + self._stays.ending(node)))
            for edge in self._from[node]:
                first, second = self._places.cuts(edge)
                cost = self._cost(edge) + (left[node].take(first, axis=1) if node >= 0 else 0.0)
                if edge.target < 0:
                    ends.append(_total(cost))
                else:
                    runs = Runs(second, self._size)
                    there = np.array([runs.combined(of) for of in cost])
                    arrived[edge.target] = combined(arrived[edge.target], there)
        return left, _total(np.array(ends).T)

    def _backward(self, left: list[FloatArray], most: FloatArray) -> list[tuple[Edge, SmallIndex]]:
        """Give of each edge the portions over which all ways together cost less than this."""
        to_come = [np.full_like(of, IMPOSSIBLE) for of in left]
        found = []
        for node in (*reversed(self._route.order), -1):
            to_come_left = np.full_like(to_come[0], IMPOSSIBLE)
            for edge in self._from[node]:
                first, second = self._places.cuts(edge)
                cost = self._cost(edge)
                if edge.target >= 0:
                    cost += to_come[edge.target].take(second, axis=1)
                if node >= 0:
                    runs = CutRuns(first, second, self._size)
                    there = [runs.at_first.combined(of[runs.by_first]) for of in cost]
                    to_come_left = combined(to_come_left, np.array(there))
                    cost += left[node].take(first, axis=1)
                if edge.kind != "jump":
                    likely = (cost < most[:, None]).any(axis=0)
                    found.append((edge, self._places.of(edge)[likely]))
            if node >= 0:
                stayed = np.array([self._stays.to_come(node, of) for of in to_come_left])
                to_come[node] = combined(
                    stayed, np.broadcast_to(self._stays.ending(node), stayed.shape)
                )
        return found

    def _cost(self, edge: Edge) -> FloatArray:
        """Give the costs of an edge's portions, arriving included, or of a leap from each cut."""
        if edge.kind == "jump":
            return np.full((len(self._walkers), self._size), edge.cost)
        key = self._evidence.key(edge)
        if key not in self._costs:
            self._costs[key] = self._worked_out(edge)
        return self._costs[key].astype(np.float64) + edge.cost

    def _worked_out(self, edge: Edge) -> SmallFloat:
        evidence, places = self._evidence, self._places.of(edge)
        begins, ends = map(np.flatnonzero, self._places.marks(edge))
        reach = reach_of(begins, ends, self._size)
        costs = np.empty((len(self._walkers), len(places)), dtype=np.float32)
        begin = 0
        for piece in pieces(places):
            at = replace(evidence.laid_out(edge, piece), reach=reach)
            end, ending = begin + len(piece), evidence.ending(edge, at.second)
            for number, walker in enumerate(self._walkers):
                cost = evidence.portion_costs(edge, walker, at) + ending
                costs[number, begin:end] = cost
            begin = end
        return costs


class _Places:
    """The portions of each edge, as their places among all."""

    def __init__(self, evidence: Evidence) -> None:
        self._evidence = evidence
        self._known: dict[EdgeKey, tuple[int, NDArray[np.uint8]]] = {}
        self._marks: dict[EdgeKey, tuple[Marks, Marks]] = {}

    def of(self, edge: Edge) -> SmallIndex:
        """Give the portions worth a look; they are chosen once, and kept as a bit each."""
        key = self._evidence.key(edge)
        if key not in self._known:
            places = self._evidence.worth_a_look(edge)
            begin = int(places[0]) if len(places) else 0
            chosen = np.zeros(int(places[-1]) + 1 - begin if len(places) else 0, dtype=bool)
            chosen[places - begin] = True
            self._known[key] = begin, np.packbits(chosen)
        begin, bits = self._known[key]
        return (np.flatnonzero(np.unpackbits(bits).view(bool)) + begin).astype(np.int32)

    def cuts(self, edge: Edge) -> tuple[IndexArray, IndexArray]:
        """Give the cuts between which they lie; a leap stays at its cut."""
        if edge.kind == "jump":
            every = np.arange(len(self._evidence.cuts))
            return every, every
        places, portions = self.of(edge), self._evidence.portions
        return portions.first[places], portions.second[places]

    def marks(self, edge: Edge) -> tuple[Marks, Marks]:
        """Mark the cuts at which they begin, and at which they end."""
        key = self._evidence.key(edge)
        if key not in self._marks:
            begins, ends = np.zeros((2, len(self._evidence.cuts)), dtype=bool)
            first, second = self.cuts(edge)
            begins[first] = ends[second] = True
            self._marks[key] = begins, ends
        return self._marks[key]


def _total(costs: FloatArray) -> FloatArray:
    return np.array([total_cost(of) for of in costs])


class _PassingStays(Stays):
    """Stays of which one node's are kept at a time: all of them would fill the memory."""

    def __init__(self, stays: Stays, places: _Places) -> None:
        super().__init__(stays.evidence, stays._pairs)  # noqa: SLF001 - the same pairs
        self._places = places
        self._marked: dict[int, tuple[Marks, Marks]] = {}

    def at(self, node: int) -> StaysAtPoint:
        """Give the stays between cuts at which some edge ends, and some sets out."""
        if node not in self._at:
            self._at = {node: self.worked_out(node)}
        return self._at[node]

    def _marks(self, node: int) -> tuple[Marks, Marks]:
        if node not in self._marked:
            self._marked[node] = super()._marks(node)
        return self._marked[node]

    def _cuts_of(self, edge: Edge) -> tuple[Marks, Marks]:
        return self._places.marks(edge)
