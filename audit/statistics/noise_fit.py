"""How strong a receiver's noise is and how long it lasts, from stretches of standing still.

Each stretch has a place of its own, which nobody knows; about it the fixes scatter with
one strength, sigma, and forget it over one time, tau (see `correlated_noise`). The
likelihood of both, the places left out (restricted maximum likelihood), is worked out
over a grid and mixed with what is known beforehand.

Not everybody who rests stands still. So it is left open, stretch by stretch, whether the
walker's own movements add to the scatter: one rest with a walk to the stream does not pass for
bad reception. Nor is reception the same at every halt.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.statistics.correlated_noise import covariance
from audit.units import FloatArray

_DEVIATES = ((-np.sqrt(3.0), 1.0 / 6.0), (0.0, 2.0 / 3.0), (np.sqrt(3.0), 1.0 / 6.0))
"""Three values that stand for a normal one: its first five moments are theirs."""


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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class NoiseGrid:
    """What is tried and what speaks for it beforehand: log-normal priors over two grids.

    ``differs_log_sd`` is by how much the noise of one stretch differs from the next one's,
    ``kinds_differ_log_sd`` by how much what stretches show may be out, and what walking shows.
    ``moved_m`` has what the walker's movements may add to the scatter of a stretch in metres,
    0 for standing still, each with its chance.
    """

    noise_m: FloatArray
    correlation_s: FloatArray
    prior: NoiseFit
    white_share: float
    differs_log_sd: float = 0.0
    kinds_differ_log_sd: float = 0.0
    moved_m: tuple[tuple[float, float], ...] = ((0.0, 1.0),)


def fit_noise(
    stretches: Sequence[tuple[FloatArray, FloatArray]],
    grid: NoiseGrid,
    walking: Sequence[FloatArray] = (),
) -> NoiseFit:
    """Fit noise to stretches of times, shape (n,), and places, shape (n, d), each n >= 2.

    ``walking`` are log likelihoods over the grid, strengths by memories, by what was seen while
    walking. What is seen standing and what is seen walking may each be out by
    ``kinds_differ_log_sd``; where there is one of them alone, it stands. Without any evidence
    the prior comes back, as the grid holds it.
    """
    prior = grid.prior
    log_noise, log_tau = np.log(grid.noise_m), np.log(grid.correlation_s)
    log_weight = (
        -0.5 * (((log_noise - np.log(prior.noise_m)) / prior.noise_log_sd) ** 2)[:, None]
        - 0.5 * (((log_tau - np.log(prior.correlation_s)) / prior.correlation_log_sd) ** 2)[None, :]
    )
    standing = [_log_weight_of_stretch(time_s, place, grid) for time_s, place in stretches]
    kinds = [np.sum(of, axis=0) for of in (standing, walking) if len(of)]
    for seen in kinds:
        log_weight += seen if len(kinds) == 1 else _blurred(seen, grid)
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


def _blurred(log_weight: FloatArray, grid: NoiseGrid) -> FloatArray:
    """Blur what speaks for a strength by how much one kind of evidence may be out."""
    if grid.kinds_differ_log_sd == 0.0:
        return log_weight
    apart = np.log(grid.noise_m[:, None] / grid.noise_m) / grid.kinds_differ_log_sd
    near = -0.5 * apart[:, :, None] ** 2
    return np.asarray(np.logaddexp.reduce(near + log_weight[None, :, :], axis=1))


def _log_weight_of_stretch(time_s: FloatArray, place: FloatArray, grid: NoiseGrid) -> FloatArray:
    """Give the log likelihood of every strength and memory, whatever kind the stretch is."""
    kinds = []
    for deviate, weight in _DEVIATES:
        here_m = grid.noise_m * np.exp(grid.differs_log_sd * deviate)
        kinds += [(np.hypot(here_m, moved_m), weight * chance) for moved_m, chance in grid.moved_m]
    strength = np.array([of for of, _ in kinds])
    log_chance = np.log([chance for _, chance in kinds])
    free = place.shape[1] * (len(time_s) - 1)
    columns = []
    for tau_s in grid.correlation_s:
        square, log_det = _about_own_mean(time_s, place, float(tau_s), grid.white_share)
        log_density = -free * np.log(strength) - 0.5 * square / strength**2
        log_density -= 0.5 * place.shape[1] * log_det
        columns.append(np.logaddexp.reduce(log_density + log_chance[:, None], axis=0))
    return np.column_stack(columns)


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
