"""Fixes on their way through cleaning."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Fixes:
    """Some fixes of a recording, on the grid of the course. Arrays have shape (n,).

    Attributes
    ----------
    fix : int array
        Index in the recording.
    time_s : float array
        NaN where there is none.
    segment : int array
        Number of the part of the file.
    """

    fix: NDArray[np.int64]
    time_s: FloatArray
    east_m: FloatArray
    north_m: FloatArray
    segment: NDArray[np.int64]

    def __len__(self) -> int:
        return len(self.fix)

    def take(self, which: NDArray[np.bool_] | NDArray[np.int64]) -> Fixes:
        """Give those that a mask or a list of places picks, in its order."""
        return Fixes(
            fix=self.fix[which],
            time_s=self.time_s[which],
            east_m=self.east_m[which],
            north_m=self.north_m[which],
            segment=self.segment[which],
        )

    def sorted_by(self, keys: FloatArray | NDArray[np.int64]) -> Fixes:
        """Give them in the order in which their keys rise, equal ones as they stand."""
        # Nearly every recording is in order; it is not copied.
        if (keys[1:] >= keys[:-1]).all():
            return self
        return self.take(np.argsort(keys, kind="stable"))

    def without(self, places: NDArray[np.int64]) -> Fixes:
        """Give all but those at some places."""
        kept = np.ones(len(self), dtype=np.bool_)
        kept[places] = False
        return self.take(kept)

    def at_times(self, time_s: FloatArray) -> Fixes:
        """Give the same places at other times."""
        return replace(self, time_s=time_s)

    def steps_m(self) -> FloatArray:
        """Give the distance from each fix to the next, shape (n - 1,)."""
        return np.hypot(np.diff(self.east_m), np.diff(self.north_m))

    def apart_m(self, one: NDArray[np.int64] | int, other: NDArray[np.int64] | int) -> FloatArray:
        """Give the distance between the fixes at two places, or lists of places."""
        return np.hypot(
            self.east_m[other] - self.east_m[one], self.north_m[other] - self.north_m[one]
        )


def usual_interval_s(time_s: FloatArray) -> float:
    """Give the median interval of times that rise; 0 for fewer than two."""
    return float(np.median(np.diff(time_s))) if len(time_s) > 1 else 0.0
