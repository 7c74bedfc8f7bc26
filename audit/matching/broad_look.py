"""One broad look at all portions as all edges, held small: edge by edge, and piece by piece.

What all portions cost as all edges would fill the memory. It is not kept between the way
forward and the way back in time, but worked out once more on the way back, for the few
portions that lie between cuts where a likely way may pass.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from audit.matching.edge_evidence import CutRuns, pieces, reach_of
from audit.matching.portions import SmallIndex
from audit.matching.route import Edge
from audit.matching.soft_minimum import IMPOSSIBLE, Runs, combined, total_costs
from audit.matching.stays import Marks, Stays, StaysAtPoint
from audit.matching.walk_evidence import EdgeKey, Evidence
from audit.matching.walker import Walker, abreast
from audit.units import FloatArray

_BESIDE_NATS = 10.0
"""How much less likely than those in play all ways over a portion are that is passed over on
the way back: each would add less than a ten-thousandth of a nat to the others; chosen."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Forward:
    """What the way forward in time tells; costs of shape (walkers, cuts), a node each.

    The last of each stands for node -1, outside the recording.

    Attributes
    ----------
    arrived, left : list of float arrays
        What arriving at a node at each cut costs, and leaving it.
    least : dict of float arrays, shape (walkers,)
        Of each edge the least that one of its portions costs.
    total : float array, shape (walkers,)
        All ways together.
    """

    arrived: list[FloatArray]
    left: list[FloatArray]
    least: dict[EdgeKey, FloatArray]
    total: FloatArray


class BroadLook:
    """All ways weighed as in `Ways`, for some walkers at once; costs have shape (walkers, n)."""

    def __init__(self, stays: Stays, walkers: Sequence[Walker]) -> None:
        self._evidence, self._walkers = stays.evidence, abreast(walkers)
        self._route = stays.evidence.route
        self._shape = len(walkers), len(stays.evidence.cuts)
        self._places = _Places(stays.evidence)
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
        forward = self._forward()
        return self._backward(forward, forward.total + within_nats)

    def _forward(self) -> _Forward:
        """Weigh all ways forward in time."""
        nodes = range(len(self._route.position))
        arrived = [np.full(self._shape, IMPOSSIBLE) for _ in (*nodes, -1)]
        left = [np.tile(self._stays.setting_out(node), (self._shape[0], 1)) for node in nodes]
        left.append(np.zeros(self._shape))
        least: dict[EdgeKey, FloatArray] = {}
        ends = [np.full(self._shape[0], IMPOSSIBLE)]
        shared: dict[EdgeKey, list[tuple[SmallIndex, FloatArray]]] = {}
        priced: Iterable[tuple[SmallIndex, FloatArray]]
        waiting = Counter(self._evidence.key(edge) for of in self._from.values() for edge in of)
        for node in (-1, *self._route.order):
            if node >= 0 and arrived[node].min() < IMPOSSIBLE / 2:
                left[node] = combined(left[node], self._stays.left(node, arrived[node]))
                ends.append(total_costs(arrived[node] + self._stays.ending(node)))
            for edge in self._from[node]:
                key = self._evidence.key(edge)
                if key in shared:
                    priced = shared.pop(key)
                else:
                    priced = self._priced(edge, self._places.of(edge))
                waiting[key] -= 1
                if waiting[key]:  # another edge over which they cost the same is to come
                    priced = shared[key] = list(priced)
                for places, costs in priced:
                    least[key] = np.minimum(least.get(key, IMPOSSIBLE), costs.min(axis=1))
                    first, second = self._places.cuts(edge, places)
                    so_far = costs + edge.cost + left[node].take(first, axis=1)
                    there = Runs(second, self._shape[1]).combined(so_far)
                    arrived[edge.target] = combined(arrived[edge.target], there)
        ends.append(total_costs(arrived[-1]))
        total = total_costs(np.array(ends).T)
        return _Forward(arrived=arrived, left=left, least=least, total=total)

    def _backward(self, forward: _Forward, most: FloatArray) -> list[tuple[Edge, SmallIndex]]:
        """Give of each edge the portions over which all ways together cost less than this."""
        to_come = [np.full(self._shape, IMPOSSIBLE) for _ in self._route.position]
        to_come.append(np.zeros(self._shape))
        found = []
        for node in (*reversed(self._route.order), -1):
            to_come_left = np.full(self._shape, IMPOSSIBLE)
            for edge in self._from[node]:
                places = self._open(edge, forward, to_come[edge.target], most + _BESIDE_NATS)
                if len(places) == 0:
                    continue
                first, second = self._places.cuts(edge, places)
                priced = self._priced(edge, places)
                costs = np.concatenate([costs for _, costs in priced], axis=1) + edge.cost
                costs += to_come[edge.target].take(second, axis=1)
                if node >= 0:
                    runs = CutRuns(first, second, self._shape[1])
                    there = runs.at_first.combined(costs.take(runs.by_first, axis=1))
                    to_come_left = combined(to_come_left, there)
                if edge.kind != "jump":
                    costs += forward.left[node].take(first, axis=1)
                    found.append((edge, places[(costs < most[:, None]).any(axis=0)]))
            if node >= 0:
                stayed = self._stays.to_come(node, to_come_left)
                to_come[node] = combined(
                    stayed, np.broadcast_to(self._stays.ending(node), stayed.shape)
                )
        return found

    def _open(
        self, edge: Edge, forward: _Forward, to_come: FloatArray, most: FloatArray
    ) -> SmallIndex:
        """Give the portions of an edge that lie between cuts where a way may pass that costs less.

        All ways over a portion cost no less than all that come to its end; nor less than the
        way up to it, the way on, and the least that any portion of the edge costs.
        """
        places = self._places.of(edge)
        first, second = self._places.cuts(edge, places)
        rooms = most - edge.cost - forward.least[self._evidence.key(edge)]
        fits = np.zeros(len(places), dtype=bool)
        reached = forward.arrived[edge.target] + to_come < most[:, None]
        onward = np.where(reached, to_come, IMPOSSIBLE)
        for before, after, room in zip(forward.left[edge.source], onward, rooms, strict=True):
            fits |= before.take(first) + after.take(second) < room
        return places[fits]

    def _priced(self, edge: Edge, places: SmallIndex) -> Iterator[tuple[SmallIndex, FloatArray]]:
        """Give some portions of an edge piece by piece, with their costs, arriving included."""
        if edge.kind == "jump":
            yield places, np.zeros((self._shape[0], len(places)))
            return
        evidence = self._evidence
        begins, ends = map(np.flatnonzero, self._places.marks(edge))
        reach = reach_of(begins, ends, self._shape[1])
        for piece in pieces(places):
            at = replace(evidence.laid_out(edge, piece), reach=reach)
            ending = evidence.ending(edge, at.second)
            yield piece, evidence.portion_costs(edge, self._walkers, at) + ending


class _Places:
    """The portions of each edge, as their places among all."""

    def __init__(self, evidence: Evidence) -> None:
        self._evidence = evidence
        self._known: dict[EdgeKey, tuple[int, NDArray[np.uint8]]] = {}
        self._marks: dict[EdgeKey, tuple[Marks, Marks]] = {}

    def of(self, edge: Edge) -> SmallIndex:
        """Give the portions worth a look; they are chosen once, and kept as a bit each.

        Of a leap they are the cuts at which it stays.
        """
        if edge.kind == "jump":
            return np.arange(len(self._evidence.cuts), dtype=np.int32)
        key = self._evidence.key(edge)
        if key not in self._known:
            places = self._evidence.worth_a_look(edge)
            begin = int(places[0]) if len(places) else 0
            chosen = np.zeros(int(places[-1]) + 1 - begin if len(places) else 0, dtype=bool)
            chosen[places - begin] = True
            self._known[key] = begin, np.packbits(chosen)
        begin, bits = self._known[key]
        return (np.flatnonzero(np.unpackbits(bits).view(bool)) + begin).astype(np.int32)

    def cuts(self, edge: Edge, places: SmallIndex) -> tuple[SmallIndex, SmallIndex]:
        """Give the cuts between which some portions lie; a leap stays at its cut."""
        if edge.kind == "jump":
            return places, places
        portions = self._evidence.portions
        return portions.first[places], portions.second[places]

    def marks(self, edge: Edge) -> tuple[Marks, Marks]:
        """Mark the cuts at which they begin, and at which they end."""
        key = self._evidence.key(edge)
        if key not in self._marks:
            begins, ends = np.zeros((2, len(self._evidence.cuts)), dtype=bool)
            first, second = self.cuts(edge, self.of(edge))
            begins[first] = ends[second] = True
            self._marks[key] = begins, ends
        return self._marks[key]


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
