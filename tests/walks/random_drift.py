"""Correlated random series: what receivers, compasses and paces really do."""

from __future__ import annotations

import numpy as np
from scipy.signal import lfilter

from audit.units import FloatArray


def drift(rng: np.random.Generator, n: int, sd: float, correlation_s: float) -> FloatArray:
    """Give n seconds of an Ornstein-Uhlenbeck series: stationary, correlation exp(-t/tau)."""
    if n == 0 or sd == 0.0:
        return np.zeros(n)
    keep = np.exp(-1.0 / correlation_s)
    shocks = rng.standard_normal(n) * sd * np.sqrt(1.0 - keep * keep)
    before = rng.standard_normal() * sd
    series, _ = lfilter([1.0], [1.0, -keep], shocks, zi=[keep * before])
    return np.asarray(series)


def smooth_drift(
    rng: np.random.Generator, n: int, sd: float, correlation_s: float, smoothing_s: float
) -> FloatArray:
    """Give a drift after a receiver's own filter: same spread, without second-to-second jumps.

    Two first-order filters in a row; the spread is scaled back with the closed form of
    the variance of an AR(2) series, so ``sd`` stays the standard deviation.
    """
    if smoothing_s <= 0.0:
        return drift(rng, n, sd, correlation_s)
    warm = int(4.0 * smoothing_s) + 1
    first = np.exp(-1.0 / correlation_s)
    second = np.exp(-1.0 / smoothing_s)
    rough = drift(rng, n + warm, 1.0, correlation_s)
    series = lfilter([1.0], [1.0, -second], rough)[warm:]
    both = first * second
    variance = (1.0 + both) / ((1.0 - both) * (1.0 - second * second))
    return np.asarray(series) * sd / np.sqrt(variance)
