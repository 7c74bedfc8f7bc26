"""Odds of a leg over portions, given one by one."""

from __future__ import annotations

import numpy as np

from audit.matching.reading import LegOdds


def odds_of(*portions: tuple[int, int, float]) -> LegOdds:
    """Odds of (first, second, probability)."""
    first, second, probability = (np.array(column) for column in zip(*portions, strict=True))
    return LegOdds(
        first=first, second=second, probability=probability, share=float(probability.sum())
    )
