"""How long a leg takes on foot, by rules that each have a name and a source; none is hidden."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray

_MILE_M, _FOOT_M = 1609.344, 0.3048
_GENTLE_FROM_DEG, _STEEP_FROM_DEG = 5.0, 12.0
"""Langmuir's; from memory."""
_LANGMUIR_S_PER_M = 600.0 / 300.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Way:
    """A way cut into short stretches: metres on the map, and metres that each rises.

    ``rise_m`` is None where the heights are not known; a rule then takes the ground for level.
    """

    run_m: FloatArray
    rise_m: FloatArray | None = None

    @property
    def rises_m(self) -> FloatArray:
        """Give the rises, none where they are not known."""
        return np.zeros_like(self.run_m) if self.rise_m is None else self.rise_m


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkingRule:
    """A rule for the time on foot.

    Attributes
    ----------
    name : str
        What it is called. What it says in figures, and who says so, is a message of its
        name: `audit/words/en/rule.ftl`.
    seconds : callable
        Takes a way, gives the time without rests.
    """

    name: str
    seconds: Callable[[Way], float]


def even_speed_s(way: Way, metres_per_hour: float) -> float:
    """Give the time at one speed, whatever the ground."""
    return 3600.0 * float(way.run_m.sum()) / metres_per_hour


def naismith_s(way: Way, metres_per_hour: float, climb_per_hour_m: float) -> float:
    """Give the time for the distance, and on top of it the time for all that is climbed."""
    climb_m = float(np.maximum(way.rises_m, 0.0).sum())
    return even_speed_s(way, metres_per_hour) + 3600.0 * climb_m / climb_per_hour_m


def langmuir_s(way: Way) -> float:
    """Give Naismith's time, less for gentle descent and more for steep."""
    down_m = np.maximum(-way.rises_m, 0.0)
    slope_deg = np.degrees(np.arctan(np.divide(down_m, way.run_m, where=way.run_m > 0.0,
                                               out=np.zeros_like(down_m))))  # fmt: skip
    gentle = (slope_deg >= _GENTLE_FROM_DEG) & (slope_deg <= _STEEP_FROM_DEG)
    steep = slope_deg > _STEEP_FROM_DEG
    change_s = _LANGMUIR_S_PER_M * float(down_m[steep].sum() - down_m[gentle].sum())
    return naismith_s(way, 5000.0, 600.0) + change_s


def tobler_m_s(slope: float) -> float:
    """Give the walking speed on a slope (rise over run, uphill positive), on a path."""
    return 6000.0 / 3600.0 * math.exp(-3.5 * abs(slope + 0.05))


def tobler_s(way: Way, share_of_speed: float = 1.0) -> float:
    """Give the time at the speed of each stretch's slope."""
    total_s = 0.0
    for run_m, rise_m in zip(way.run_m.tolist(), way.rises_m.tolist(), strict=True):
        if run_m > 0.0:
            total_s += run_m / (share_of_speed * tobler_m_s(rise_m / run_m))
    return total_s


def _naismith_1892(way: Way) -> float:
    return naismith_s(way, 3.0 * _MILE_M, 2000.0 * _FOOT_M)


WALKING_RULES: tuple[WalkingRule, ...] = (
    WalkingRule(
        name="Naismith",
        seconds=lambda way: naismith_s(way, 5000.0, 600.0),
    ),
    WalkingRule(
        name="Naismith 1892",
        seconds=_naismith_1892,
    ),
    WalkingRule(
        name="Langmuir",
        seconds=langmuir_s,
    ),
    WalkingRule(
        name="Tobler",
        seconds=tobler_s,
    ),
    WalkingRule(
        name="Tobler off path",
        seconds=lambda way: tobler_s(way, 0.6),
    ),
    WalkingRule(
        name="3 km/h",
        seconds=lambda way: even_speed_s(way, 3000.0),
    ),
)
"""In the order in which they are told."""
