"""How widely numbers scatter, whatever a few of them do, and what an interval is made of."""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray

TWO_SIDED_95 = 1.96
"""Standard errors to either side that hold 95 in 100 of a normal law."""
_NORMAL = 1.4826
"""Standard deviations of a normal law over the median of its absolute deviations (Hampel 1974)."""


def robust_sd(deviations: FloatArray) -> float:
    """Give the standard deviation that the middle of the absolute deviations stands for."""
    return _NORMAL * float(np.median(np.abs(deviations)))
