"""The eight points of the compass, by the names that messages have for them."""

from __future__ import annotations

import math

from audit.units import wrap_degrees

_EIGHTHS = (
    "north", "north-east", "eastward", "south-east", "south", "south-west", "westward",
    "north-west",
)  # fmt: skip


def nearest_eighth(degrees: float) -> str:
    """Name the point of the compass nearest to a direction: "north-east" of 40 degrees."""
    return _EIGHTHS[math.floor(wrap_degrees(degrees) / 45.0 + 0.5) % len(_EIGHTHS)]
