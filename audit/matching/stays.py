"""Staying at a point: from the claim of one leg, over any search, to setting out on the next."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.matching.learnt import Signs
from audit.matching.portions import IndexArray, SmallFloat, SmallIndex, near_pairs
from audit.matching.route import Edge
from audit.matching.soft_minimum import IMPOSSIBLE, Runs, combined, order_of
from audit.matching.walk_evidence import Evidence
from audit.units import FloatArray

Marks = NDArray[np.bool_]
"""At which cuts something is so."""

_LEFT_OUT_ASIDE = 2
"""Legs that are taken to be left out by who ends the course beside its order."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Pairs:
    """All pairs of cuts that lie near each other along the path, sorted by the later one.

    ``before`` tells of each cut how many cuts lie too far before it to be paired with it,
    ``after`` which is the first that lies too far after it.
    """

    first: SmallIndex
    second: SmallIndex
    stayed: FloatArray
    before: IndexArray
    after: IndexArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class StaysAtPoint:
    """The stays at one node that some way may take: pairs of cuts and what each costs."""

    first: SmallIndex
    second: SmallIndex
    cost: FloatArray
    by_first: IndexArray
    at_first: Runs
    at_second: Runs


class Stays:
    """Pairs of cuts between arriving at a point and leaving it again."""

    def __init__(self, evidence: Evidence, pairs: _Pairs | None = None) -> None:
        self.evidence = evidence
        self._pairs = _pairs(evidence) if pairs is None else pairs
        self.first, self.second = self._pairs.first, self._pairs.second
        self._near: dict[int, SmallFloat] = {}
        self._at: dict[int, StaysAtPoint] = {}
        self._far: dict[int, FloatArray] = {}
        self._begin: dict[int, FloatArray] = {}
        self._end: dict[int, FloatArray] = {}
        self._into: dict[int, list[Edge]] = defaultdict(list)
        self._out_of: dict[int, list[Edge]] = defaultdict(list)
        for edge in evidence.route.edges:
            self._into[edge.target].append(edge)
            self._out_of[edge.source].append(edge)

    def narrowed(self, evidence: Evidence) -> Stays:
        """Give the stays among the portions that are left in narrowed evidence."""
        return Stays(evidence, self._pairs)

    def cost(self, node: int) -> SmallFloat:
        """Cost of each pair as a stay at a node; the walker may also have found the point."""
        if node not in self._near:
            self._near[node] = self._cost(node, slice(None)).astype(np.float32)
        return self._near[node]

    def at(self, node: int) -> StaysAtPoint:
        """Give the stays between cuts at which some edge ends, and some sets out."""
        if node not in self._at:
            self._at[node] = self.worked_out(node)
        return self._at[node]

    def worked_out(self, node: int) -> StaysAtPoint:
        """Work out the stays at a node, without keeping them."""
        pairs = self._pairs
        ends, begins = self._marks(node)
        places = np.flatnonzero(ends[pairs.first] & begins[pairs.second])
        first, second = pairs.first[places], pairs.second[places]
        # A stay of the usual kind, or one after which anything may have happened.
        cost = combined(self._cost(node, places), self._leaving_far(node)[second])
        if self.evidence.noted is not None:
            cost = cost + self.evidence.noted.stayed(node, first, second)
        if self.evidence.learnt is not None:
            signs = self.evidence.seen.of_stays(node, first, second)
            cost = cost + self.evidence.learnt.stays.nats(signs, self.evidence.seen.habits)
        size = len(self.evidence.cuts)
        by_first = order_of(first, size)
        return StaysAtPoint(
            first=first,
            second=second,
            cost=cost,
            by_first=by_first,
            at_first=Runs(first[by_first], size),
            at_second=Runs(second, size),
        )

    def left(self, node: int, arrived: FloatArray) -> FloatArray:
        """Give what leaving a node at each cut costs, by what arriving at each does.

        The last axis is that of the cuts.
        """
        stays = self.at(node)
        near = stays.at_second.combined(arrived.take(stays.first, axis=-1) + stays.cost)
        noted = self._noted_so_far(node)
        running = -np.logaddexp.accumulate(noted - arrived, axis=-1)
        running = np.concatenate([np.full_like(running[..., :1], IMPOSSIBLE), running], axis=-1)
        far = running.take(self._pairs.before, axis=-1) + self._leaving_far(node) + noted
        return combined(near, far)

    def to_come(self, node: int, leaving: FloatArray) -> FloatArray:
        """Give what is to come after arriving at each cut, by what leaving at each costs.

        The last axis is that of the cuts.
        """
        stays = self.at(node)
        costs = leaving.take(stays.second, axis=-1) + stays.cost
        near = stays.at_first.combined(costs.take(stays.by_first, axis=-1))
        noted = self._noted_so_far(node)
        far = (leaving + self._leaving_far(node) + noted)[..., ::-1]
        running = -np.logaddexp.accumulate(-far, axis=-1)[..., ::-1]
        running = np.concatenate([running, np.full_like(running[..., :1], IMPOSSIBLE)], axis=-1)
        return combined(near, running.take(self._pairs.after, axis=-1) - noted)

    def setting_out(self, node: int) -> FloatArray:
        """Cost of beginning the course at a node, at each cut."""
        if node not in self._begin:
            evidence = self.evidence
            cost = self.first_departure(evidence, node)
            if evidence.learnt is not None:
                signs = evidence.seen.of_starts(node)
                cost = cost + evidence.learnt.ends.nats(signs, evidence.seen.habits)
            if evidence.noted is not None:
                cost = cost + evidence.noted.begun(node)
            self._begin[node] = cost
        return self._begin[node]

    def ending(self, node: int) -> FloatArray:
        """Cost of ending the course after arriving at a node, at each cut."""
        if node not in self._end:
            evidence, settings = self.evidence, self.evidence.settings
            legs, cost = evidence.route.legs, settings.cost_end_aside
            if node <= legs:
                cost = settings.cost_ended_early if node < legs else 0.0
                cost += settings.cost_leg_left_out * (legs - node)
            costs = np.full(len(evidence.cuts), cost)
            if evidence.learnt is not None:
                signs = self.ending_signs(node)
                costs += evidence.learnt.ends.nats(signs, evidence.seen.habits)
            if self.evidence.noted is not None:
                costs += self.evidence.noted.ended(node)
            self._end[node] = costs
        return self._end[node]

    def ending_signs(self, node: int) -> Signs:
        """Give the signs of ending the course after arriving at a node, at each cut."""
        legs = self.evidence.route.legs
        return self.evidence.seen.of_endings(legs - node if node <= legs else _LEFT_OUT_ASIDE)

    @staticmethod
    def first_departure(evidence: Evidence, node: int) -> FloatArray:
        """Cost of starting the course at a node: everything before is the approach."""
        settings, route = evidence.settings, evidence.route
        if node >= route.legs:
            return np.full(len(evidence.cuts), IMPOSSIBLE)
        near = -0.5 * (evidence.to_point_m[:, node] / settings.found_sd_m) ** 2
        cost = -np.logaddexp(near, -settings.cost_start_elsewhere) + evidence.leave
        if node > 0:
            cost = cost + settings.cost_start_later + settings.cost_leg_left_out * (node - 1)
        return np.asarray(cost)

    @staticmethod
    def far_departure(evidence: Evidence, node: int) -> FloatArray:
        """Cost of leaving a node after any amount of walking since arriving there."""
        settings = evidence.settings
        near = -0.5 * (evidence.to_point_m[:, node] / settings.found_sd_m) ** 2
        found = -np.logaddexp(near, -settings.cost_relocated_nowhere)
        return np.asarray(found + evidence.leave + settings.cost_long_stay)

    def _leaving_far(self, node: int) -> FloatArray:
        if node not in self._far:
            cost = self.far_departure(self.evidence, node)
            if {edge.kind for edge in self._into[node]} == {"reversed"}:
                cost = cost + self.evidence.settings.cost_turned_back_late
            self._far[node] = cost
        return self._far[node]

    def _noted_so_far(self, node: int) -> FloatArray | float:
        """Cost of what was noted elsewhere before each cut: of a long stay, the difference."""
        noted = self.evidence.noted
        return 0.0 if noted is None else noted.so_far(node)

    def _cost(self, node: int, places: IndexArray | slice) -> FloatArray:
        second = self._pairs.second[places]
        to_point = self.evidence.to_point_m[second, node]
        found = -0.5 * (to_point / self.evidence.settings.found_sd_m) ** 2
        stayed = self._pairs.stayed[places]
        return np.asarray(-np.logaddexp(stayed, found) + self.evidence.leave[second])

    def _marks(self, node: int) -> tuple[Marks, Marks]:
        """Mark the cuts at which some edge into a node may end, and some out of it begin."""
        ends, begins = np.zeros((2, len(self.evidence.cuts)), dtype=bool)
        for edge in self._into[node]:
            # A leap goes from any cut to itself.
            ends[slice(None) if edge.kind == "jump" else self._cuts_of(edge)[1]] = True
        for edge in self._out_of[node]:
            begins[slice(None) if edge.kind == "jump" else self._cuts_of(edge)[0]] = True
        return ends, begins

    def _cuts_of(self, edge: Edge) -> tuple[Marks | SmallIndex, Marks | SmallIndex]:
        """Give the cuts between which the portions of an edge lie, or mark them."""
        at = self.evidence.of_edge(edge)
        return at.first, at.second


def _pairs(evidence: Evidence) -> _Pairs:
    cuts, settings = evidence.cuts, evidence.settings
    size, reach = len(cuts), settings.stay_path_m
    first, second = near_pairs(cuts.seen_path_m, reach)
    same = np.arange(size, dtype=np.int32)
    first, second = np.concatenate([first, same]), np.concatenate([second, same])
    order = np.argsort(second, kind="stable")
    first, second = first[order], second[order]
    # Reckoned into a silence, a later cut may be an earlier moment.
    in_time = cuts.time_s[second] >= cuts.time_s[first] - settings.unseen_late_s
    first, second = first[in_time], second[in_time]
    moved_m = np.hypot(*(cuts.position[second] - cuts.position[first]).T)
    # Stayed where he claimed to be; or wandered off some way before leaving.
    stayed = np.logaddexp(
        -0.5 * (moved_m / settings.stay_sd_m) ** 2,
        np.log(settings.wander_share) - moved_m / settings.wander_m,
    )
    reached = cuts.seen_path_m + reach
    return _Pairs(
        first=first,
        second=second,
        stayed=np.logaddexp(stayed, -settings.cost_relocated_nowhere),
        before=np.searchsorted(reached, cuts.seen_path_m, side="left"),
        after=np.searchsorted(cuts.seen_path_m, reached, side="right"),
    )
