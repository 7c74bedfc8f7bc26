"""Densities that causes and ordinary error are weighed by."""

from __future__ import annotations

import math


def normal(off: float, sd: float) -> float:
    """Give the density of the normal distribution at this distance from its middle."""
    return math.exp(-0.5 * (off / sd) ** 2) / (sd * math.sqrt(2.0 * math.pi))
