"""The largest value in any range of a list, after one pass over it."""

from __future__ import annotations

import numpy as np

from audit.matching.portions import IndexArray
from audit.units import FloatArray


class RangeMost:
    """Largest values of all runs of 1, 2, 4, 8 … places; two of them cover any range."""

    def __init__(self, values: FloatArray) -> None:
        self._most = [np.asarray(values, dtype=np.float64)]
        width = 1
        while 2 * width <= len(values):
            last = self._most[-1]
            self._most.append(np.maximum(last[:-width], last[width:]))
            width *= 2

    def between(self, first: IndexArray, beyond: IndexArray) -> FloatArray:
        """Give the largest of each range ``first <= i < beyond``; 0 where it is empty."""
        count = np.asarray(beyond) - np.asarray(first)
        most = np.zeros(len(count))
        level = np.zeros(len(count), dtype=np.int64)
        level[count > 0] = np.frexp(count[count > 0])[1] - 1
        for width_of in np.unique(level[count > 0]):
            here = np.flatnonzero((count > 0) & (level == width_of))
            runs = self._most[width_of]
            most[here] = np.maximum(runs[first[here]], runs[beyond[here] - (1 << int(width_of))])
        return most
