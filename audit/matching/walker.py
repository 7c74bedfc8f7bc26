"""What is supposed of a walker on all legs alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Walker:
    """What is supposed of this walker on all legs alike.

    Attributes
    ----------
    bias_deg : float
        Turn of the walked directions off the planned ones.
    pace_scale : float
        Distance walked over distance planned.
    heading_sd_deg, distance_sd : float
        Scatter from leg to leg, in degrees and in the logarithm of distance.
    finds : float
        Share of legs that end at their point because it was seen, whatever was reckoned.
    distance_factor : float
        About which his pace scale lies: 1, or half or twice the distance on every leg.
    """

    bias_deg: float
    pace_scale: float
    heading_sd_deg: float
    distance_sd: float
    finds: float
    distance_factor: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Abreast:
    """What is supposed of several walkers who are weighed at once, by the names of `Walker`.

    Columns of shape (walkers, 1): against portions, shape (n,), they give (walkers, n). What is
    the same of all, their turns apart, has shape (1, 1), and is worked out once for all of them.
    """

    bias_deg: FloatArray
    pace_scale: FloatArray
    heading_sd_deg: FloatArray
    distance_sd: FloatArray
    finds: FloatArray

    @property
    def rows(self) -> tuple[int]:
        """How many they are, as the shape of what has a row for each."""
        return (len(self.bias_deg),)


Walkers = Walker | Abreast
"""One walker, of whom costs have shape (n,), or several, of whom they have (walkers, n)."""


def abreast(walkers: Sequence[Walker]) -> Abreast:
    """Put walkers side by side, to be weighed at once."""
    shared = ("pace_scale", "heading_sd_deg", "distance_sd", "finds")
    columns = {name: np.array([[getattr(of, name)] for of in walkers]) for name in shared}
    return Abreast(
        bias_deg=np.array([[of.bias_deg] for of in walkers]),
        **{name: of[:1] if (of == of[0]).all() else of for name, of in columns.items()},
    )
