"""The columns of the truth while a walk is put together."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray
from walks.trails import Trail


@dataclass(slots=True, kw_only=True)
class Seconds:
    """The columns of the truth while they are put together."""

    time_s: FloatArray
    places_m: FloatArray
    label: np.ndarray
    other_label: np.ndarray
    kind: np.ndarray

    def cut(self, keep: np.ndarray) -> Seconds:
        return Seconds(
            time_s=self.time_s[keep],
            places_m=self.places_m[keep],
            label=self.label[keep],
            other_label=self.other_label[keep],
            kind=self.kind[keep],
        )


def seconds_of(trail: Trail, first_s: float) -> Seconds:
    places, columns = trail.arrays()
    return Seconds(time_s=first_s + np.arange(len(places), dtype=float), places_m=places, **columns)
