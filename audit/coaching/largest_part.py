"""The part of a miss that is the largest, and the leg whose miss is told first for it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from audit.measurement.leg_measures import LegMeasures

MissPart = Literal["heading", "distance", "inherited", "plan", "detour"]


def largest_part(measures: LegMeasures) -> MissPart:
    """Name the largest part of a leg's ledger."""
    return sized_parts(measures)[0][0]


def sized_parts(measures: LegMeasures) -> list[tuple[MissPart, float]]:
    """Give the parts of a leg's ledger with their metres, the largest first."""
    ledger = measures.ledger
    vectors: dict[MissPart, tuple[float, float]] = {
        "heading": ledger.heading,
        "distance": ledger.distance,
        "inherited": ledger.inherited,
        "plan": ledger.plan,
        "detour": ledger.detour,
    }
    sizes = [(part, math.hypot(*vector)) for part, vector in vectors.items()]
    return sorted(sizes, key=lambda sized: -sized[1])


def blamed(legs: Mapping[str, LegMeasures], part: MissPart, radius_m: float) -> frozenset[str]:
    """Give the leg that missed by most, at the head of every debrief, where this part made it.

    None where all arrived: then no leg is blamed for anything.
    """
    worst = max(legs, key=lambda name: legs[name].miss_m, default=None)
    if worst is None or legs[worst].miss_m <= radius_m or legs[worst].under_way:
        return frozenset()
    return frozenset({worst}) if largest_part(legs[worst]) == part else frozenset()
