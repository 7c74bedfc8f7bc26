"""Moments at which the walker says he was at a point: between a leg that leads to it and the next.

Whoever writes down when he arrived had ended the leg by then, wherever he stood, and had not
set out on the next one. That is all it says: some note the end of the count, others the find.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.matching.portions import SmallIndex
from audit.settings import MatchingSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class NotedMoment:
    """When the walker noted to have ended a leg, by the clock of the recording; ``leg`` from 0.

    ``counted`` says that his count leads to where he then was: there he ended the leg.
    """

    leg: int
    time_s: float
    counted: bool = False


class NotedMoments:
    """What it costs to walk on, to be elsewhere or not to be on the course at a noted moment.

    Parameters
    ----------
    moments
        One a leg at the most.
    time_s : float array, shape (k,)
        The moment of each cut.
    place_of_node : int array
        The place that each node stands for; leg n leads to node n + 1.
    """

    def __init__(
        self,
        moments: Sequence[NotedMoment],
        time_s: FloatArray,
        place_of_node: NDArray[np.intp],
        settings: MatchingSettings,
    ) -> None:
        in_time = sorted(moments, key=lambda one: one.time_s)
        self._place_of_node = place_of_node
        self._noted_s = np.array([one.time_s for one in in_time], dtype=np.float64)
        self._places = place_of_node[[one.leg + 1 for one in in_time]]
        of_both = {True: settings.cost_against_counted, False: settings.cost_against_noted}
        self._costs = np.array([of_both[one.counted] for one in in_time])
        self._counted = np.array([one.counted for one in in_time], dtype=bool)
        self._time_s, self._just_then_s = time_s, settings.noted_just_then_s
        self._since_s, self._until_s = (
            time_s + settings.noted_within_s,
            time_s - settings.noted_within_s,
        )

    def on_way(self, first: SmallIndex, second: SmallIndex) -> FloatArray:
        """Cost of portions, by their two cuts, that are walked over noted moments."""
        return self._between(-1, first, second)

    def stayed(self, node: int, first: SmallIndex, second: SmallIndex) -> FloatArray:
        """Cost of stays at a node over moments that were noted of other points."""
        return self._between(node, first, second)

    def claimed(self, node: int) -> FloatArray:
        """Cost of claiming a node's point at each cut, shape (k,).

        It is none where another point was noted then, nor long before a moment to which the
        count leads too.
        """
        here = self._places == self._place_of_node[node]
        noted_s = self._noted_s[:, None]
        late = noted_s > self._since_s
        then = abs(noted_s - self._time_s) <= self._just_then_s
        against = np.where(here[:, None], late & self._counted[:, None], then)
        return np.asarray((self._costs[:, None] * against).sum(axis=0))

    def begun(self, node: int) -> FloatArray:
        """Cost of beginning the course at a node only now, shape (k,)."""
        return self._before(node, self._until_s)

    def ended(self, node: int) -> FloatArray:
        """Cost of ending it here, after arriving at a node, or at -1 at none; shape (k,)."""
        return self._before(node, np.array([np.inf])) - self._before(node, self._since_s)

    def so_far(self, node: int) -> FloatArray:
        """Cost of all that was noted of other points before each cut: of long stays, by parts."""
        return self._before(node, (self._since_s + self._until_s) / 2.0)

    def _before(self, node: int, time_s: FloatArray) -> FloatArray:
        """Add up what is noted before each time, of other points than a node's; -1 for of any."""
        costs = self._costs
        if node >= 0:
            costs = np.where(self._places == self._place_of_node[node], 0.0, costs)
        so_far = np.concatenate([[0.0], np.cumsum(costs)])
        return np.asarray(so_far[np.searchsorted(self._noted_s, time_s)])

    def _between(self, node: int, first: SmallIndex, second: SmallIndex) -> FloatArray:
        since, until = self._before(node, self._since_s), self._before(node, self._until_s)
        return np.asarray(np.maximum(until[second] - since[first], 0.0))
