"""Adding up alternatives that are known by their costs: -log of the sum of exp(-cost)."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.portions import IndexArray
from audit.units import FloatArray

IMPOSSIBLE = 1e9
"""A cost that no way pays; finite, so that sums and differences of it stay numbers."""


def combined(*costs: FloatArray) -> FloatArray:
    """Combine alternatives of equal shape, element by element."""
    total = -costs[0]
    for cost in costs[1:]:
        total = np.logaddexp(total, -cost)
    return -total


def total_cost(costs: FloatArray) -> float:
    """Combine all alternatives into one cost; IMPOSSIBLE where there is none."""
    return float(total_costs(costs)) if len(costs) else IMPOSSIBLE


def total_costs(costs: FloatArray) -> FloatArray:
    """Combine all alternatives of each row, along the last axis; there is one at least."""
    least = costs.min(axis=-1, keepdims=True)
    return np.asarray(least[..., 0] - np.log(np.exp(least - costs).sum(axis=-1)))


def order_of(keys: IndexArray | NDArray[np.int32], size: int) -> IndexArray:
    """Give the order that sorts keys below ``size``, equal ones as they stand."""
    # Of two bytes each they are sorted in one sweep, several times as fast.
    small = keys.astype(np.uint16) if size <= np.iinfo(np.uint16).max else keys
    return np.argsort(small, kind="stable")


class Runs:
    """Runs of equal keys in a sorted index, for combining costs run by run."""

    def __init__(self, keys: IndexArray | NDArray[np.int32], size: int) -> None:
        changes = np.flatnonzero(np.diff(keys)) + 1
        self.starts = np.concatenate([[0], changes]) if len(keys) else changes
        self.keys = keys[self.starts]
        self._lengths = np.diff(np.concatenate([self.starts, [len(keys)]]))
        self.size = size

    def combined(self, costs: FloatArray) -> FloatArray:
        """Combine the costs of each run, along the last axis, which has ``size`` then.

        IMPOSSIBLE where there is no run.
        """
        out = np.full((*costs.shape[:-1], self.size), IMPOSSIBLE)
        if len(self.keys):
            least = np.minimum.reduceat(costs, self.starts, axis=-1)
            shares = np.exp(np.repeat(least, self._lengths, axis=-1) - costs)
            sums = np.add.reduceat(shares, self.starts, axis=-1)
            out[..., self.keys] = least - np.log(sums)
        return out
