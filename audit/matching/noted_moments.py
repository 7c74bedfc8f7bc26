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
    """When the walker noted to have ended a leg, by the clock of the recording; ``leg`` from 0."""

    leg: int
    time_s: float


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
        self._cost = settings.cost_against_noted
        self._place_of_node = place_of_node
        self._noted_s = np.array([one.time_s for one in moments], dtype=np.float64)
        self._places = place_of_node[[one.leg + 1 for one in moments]]
        order = np.argsort(self._noted_s, kind="stable")
        self._noted_s, self._places = self._noted_s[order], self._places[order]
        self._since_s, self._until_s = (
            time_s + settings.noted_within_s,
            time_s - settings.noted_within_s,
        )

    def on_way(self, first: SmallIndex, second: SmallIndex) -> FloatArray:
        """Cost of portions, by their two cuts, that are walked over noted moments."""
        return self._between(self._noted_s, first, second)

    def stayed(self, node: int, first: SmallIndex, second: SmallIndex) -> FloatArray:
        """Cost of stays at a node over moments that were noted of other points."""
        return self._between(self._elsewhere_s(node), first, second)

    def begun(self, node: int) -> FloatArray:
        """Cost of beginning the course at a node only now, shape (k,)."""
        return self._cost * _before(self._elsewhere_s(node), self._until_s)

    def ended(self, node: int) -> FloatArray:
        """Cost of ending it here, after arriving at a node, or at -1 at none; shape (k,)."""
        noted_s = self._elsewhere_s(node)
        return self._cost * (len(noted_s) - _before(noted_s, self._since_s))

    def so_far(self, node: int) -> FloatArray:
        """Cost of all that was noted of other points before each cut: of long stays, by parts."""
        return self._cost * _before(self._elsewhere_s(node), (self._since_s + self._until_s) / 2.0)

    def _elsewhere_s(self, node: int) -> FloatArray:
        if node < 0:
            return self._noted_s
        return np.asarray(self._noted_s[self._places != self._place_of_node[node]])

    def _between(self, noted_s: FloatArray, first: SmallIndex, second: SmallIndex) -> FloatArray:
        since, until = _before(noted_s, self._since_s), _before(noted_s, self._until_s)
        return np.asarray(self._cost * np.maximum(until[second] - since[first], 0.0))


def _before(noted_s: FloatArray, time_s: FloatArray) -> FloatArray:
    """Count the noted moments before each time."""
    return np.searchsorted(noted_s, time_s).astype(np.float64)
