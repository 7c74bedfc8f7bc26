"""Sums of noise that forgets itself exponentially: where a walker's wandering takes him."""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray


def integrated_covariance(first_s: FloatArray, second_s: FloatArray, tau_s: float) -> FloatArray:
    """Give the covariance of the integral from 0 of a unit-variance process.

    Times of shape (n,) and (m,), not negative; shape (n, m). The integral of
    exp(-|u - v| / tau) over 0 <= u <= a, 0 <= v <= b.
    """
    a, b = first_s[:, None], second_s[None, :]
    return np.asarray(
        tau_s
        * (
            2.0 * np.minimum(a, b)
            - tau_s
            * (1.0 + np.exp(-np.abs(a - b) / tau_s) - np.exp(-a / tau_s) - np.exp(-b / tau_s))
        )
    )
