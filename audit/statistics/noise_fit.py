"""How strong a receiver's noise is and how long it lasts, from stretches of standing still.

Each stretch has a place of its own, which nobody knows; about it the fixes scatter with
one strength, sigma, and forget it over one time, tau (see `correlated_noise`). The
likelihood of both, the places left out (restricted maximum likelihood), is worked out
over a grid and mixed with what is known beforehand.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.statistics.correlated_noise import covariance
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class NoiseFit:
    """Strength and memory of noise, each with the standard error of its logarithm.

    ``noise_m`` is the standard deviation per axis; ``correlation_s`` the time over which
    the correlation falls to 1/e.
    """

    noise_m: float
    noise_log_sd: float
    correlation_s: float
    correlation_log_sd: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NoiseGrid:
    """What is tried and what speaks for it beforehand: log-normal priors over two grids."""

    noise_m: FloatArray
    correlation_s: FloatArray
    prior: NoiseFit
    white_share: float


def fit_noise(
    stretches: Sequence[tuple[FloatArray, FloatArray]],
    grid: NoiseGrid,
    other_evidence: Sequence[FloatArray] = (),
) -> NoiseFit:
    """Fit noise to stretches of times, shape (n,), and places, shape (n, d), each n >= 2.

    ``other_evidence`` are log likelihoods over the grid, strengths by memories. Without
    any evidence the prior comes back, as the grid holds it.
    """
    prior = grid.prior
    log_noise, log_tau = np.log(grid.noise_m), np.log(grid.correlation_s)
    log_weight = (
        -0.5 * (((log_noise - np.log(prior.noise_m)) / prior.noise_log_sd) ** 2)[:, None]
        - 0.5 * (((log_tau - np.log(prior.correlation_s)) / prior.correlation_log_sd) ** 2)[None, :]
    )
    for time_s, place in stretches:
        for column, tau_s in enumerate(grid.correlation_s):
            square, log_det = _about_own_mean(time_s, place, float(tau_s), grid.white_share)
            axes = place.shape[1]
            log_weight[:, column] -= (
                axes * (len(time_s) - 1) * log_noise
                + 0.5 * square / grid.noise_m**2
                + 0.5 * axes * log_det
            )
    log_weight += sum(other_evidence, np.zeros_like(log_weight))
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    noise, noise_sd = _moments(log_noise, weight.sum(axis=1))
    tau, tau_sd = _moments(log_tau, weight.sum(axis=0))
    return NoiseFit(
        noise_m=float(np.exp(noise)),
        noise_log_sd=noise_sd,
        correlation_s=float(np.exp(tau)),
        correlation_log_sd=tau_sd,
    )


def _about_own_mean(
    time_s: FloatArray, place: FloatArray, tau_s: float, white_share: float
) -> tuple[float, float]:
    """Give the weighted sum of squares about the stretch's own mean, and the log determinant."""
    correlation = covariance(time_s, tau_s) + white_share * np.eye(len(time_s))
    whiten = np.linalg.inv(np.linalg.cholesky(correlation))
    ones = whiten @ np.ones(len(time_s))
    white = whiten @ place
    information = float(ones @ ones)
    left = white - np.outer(ones, ones @ white) / information
    log_det = -2.0 * float(np.log(np.diag(whiten)).sum()) + float(np.log(information))
    return float((left * left).sum()), log_det


def _moments(values: FloatArray, weight: FloatArray) -> tuple[float, float]:
    mean = float(weight @ values)
    return mean, float(np.sqrt(weight @ (values - mean) ** 2))
