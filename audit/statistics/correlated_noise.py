"""Noise that forgets itself exponentially in time: how much its means and slopes scatter.

All of it rests on one covariance, sigma^2 exp(-|t2 - t1| / tau), the
Ornstein-Uhlenbeck or first-order Gauss-Markov process. Stationary receivers have
been found to follow it rather than white noise (Sensors 2020, 20(21), 6050).
"""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray


def covariance(time_s: FloatArray, tau_s: float) -> FloatArray:
    """Give the correlation matrix of the noise at times of shape (n,); shape (n, n)."""
    return np.asarray(np.exp(-np.abs(time_s[:, None] - time_s[None, :]) / tau_s))


def variance_of_mean(length_s: float, tau_s: float) -> float:
    """Give the variance of the mean over a time, as a share of the noise's own variance.

    The continuous mean: (2/x) (1 - (1 - exp(-x)) / x), x = length / tau; 1 for x = 0.
    """
    x = length_s / tau_s
    if x < 1e-6:
        return 1.0
    return float(2.0 / x * (1.0 + np.expm1(-x) / x))


def variance_about_mean(length_s: float, tau_s: float) -> float:
    """Give the expected variance about the own mean over a time, as a share."""
    return 1.0 - variance_of_mean(length_s, tau_s)
