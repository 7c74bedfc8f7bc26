"""How widely numbers scatter, whatever a few of them do."""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray

_NORMAL = 1.4826
"""Standard deviations of a normal law over the median of its absolute deviations (Hampel 1974)."""


def robust_sd(deviations: FloatArray) -> float:
    """Give the standard deviation that the middle of the absolute deviations stands for."""
    return _NORMAL * float(np.median(np.abs(deviations)))
