"""Runs of samples: the stretches over which something holds, or stays the same."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray


def runs_of_true(holds: NDArray[np.bool_]) -> NDArray[np.int64]:
    """Give where each run of what holds begins, and the sample after its end; shape (k, 2)."""
    return np.flatnonzero(np.diff(np.concatenate([[False], holds, [False]]))).reshape(-1, 2)


def runs_of_one(values: NDArray[Any]) -> NDArray[np.int64]:
    """Give where each run of one value begins, and the sample after its end; shape (k, 2).

    Together they are all samples, in their order.
    """
    if not len(values):
        return np.empty((0, 2), dtype=np.int64)
    edges = np.concatenate([[0], np.flatnonzero(np.diff(values)) + 1, [len(values)]])
    return np.column_stack([edges[:-1], edges[1:]])
