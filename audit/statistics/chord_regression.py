"""The direction from where a leg began to where it ended, from all its fixes, with honest error.

Generalised least squares on the fixes of the halt before, the leg and the halt after
it. Two things move a fix off a straight line: the receiver, whose error is correlated
in time, and the walker, whose heading wanders, so that his place is the integral of a
correlated process. How strong each is has to be found from the same few minutes, and
a point estimate of it would make the interval too narrow; so everything is worked out
over a grid of strengths and correlation times and the answers are mixed by their
likelihood.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from statistics import NormalDist

import numpy as np

from audit.settings import HeadingSettings
from audit.statistics.correlated_noise import covariance
from audit.statistics.integrated_noise import integrated_covariance
from audit.units import FloatArray

_NORMAL_PLACES = np.array([NormalDist().inv_cdf((place + 0.5) / 201) for place in range(201)])


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """Cross-track rise over distance, end to end: centre and 95 % interval, as ratios."""

    centre: float
    low: float
    high: float
    sd: float


def chord_slope(
    time_s: FloatArray,
    across_m: FloatArray,
    *,
    duration_s: float,
    length_m: float,
    noise_m: float,
    settings: HeadingSettings,
) -> Slope:
    """Estimate (true place at the end - true place at the start) / length, across.

    Parameters
    ----------
    time_s, across_m : float arrays, shape (n,)
        Seconds since the leg began (negative in the halt before, beyond
        ``duration_s`` in the one after), and distance right of a line along the leg.
    noise_m : float
        What is known beforehand of the receiver noise, per axis.
    """
    clock = np.clip(time_s, 0.0, duration_s)
    end = np.array([duration_s])
    design = np.column_stack([np.ones_like(clock), clock / duration_s])
    strengths = _strengths(noise_m, length_m / duration_s, settings)
    answers = []
    for tau_noise, tau_wander in product(
        settings.noise_correlations_s, settings.wander_correlations_s
    ):
        noise = covariance(time_s, tau_noise) + settings.white_share * np.eye(len(time_s))
        wander = integrated_covariance(clock, clock, tau_wander)
        to_end = integrated_covariance(clock, end, tau_wander)
        # A basis in which the noise is one everywhere and the wander a number for each axis.
        whiten = np.linalg.inv(np.linalg.cholesky(noise))
        share, basis = np.linalg.eigh(whiten @ wander @ whiten.T)
        rotated = basis.T @ whiten @ np.column_stack([design, across_m, to_end])
        answers.append(
            _weigh_strengths(
                rotated,
                np.maximum(share, 0.0),
                strengths,
                log_det_noise=float(np.linalg.slogdet(noise)[1]),
                at_end=float(integrated_covariance(end, end, tau_wander)[0, 0]),
            )
        )
    return _mixed(np.concatenate(answers, axis=1), length_m)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Strengths:
    """Every pair of noise and wander to be tried: arrays of shape (s,).

    ``noise_m`` and ``drift_m_s`` (sideways speed of the wander) are standard deviations,
    ``log_prior`` is what speaks for the pair beforehand.
    """

    noise_m: FloatArray
    drift_m_s: FloatArray
    log_prior: FloatArray


def _strengths(noise_m: float, speed_m_s: float, settings: HeadingSettings) -> _Strengths:
    deviates = np.array(settings.strength_deviates)
    of_noise, of_wander = (grid.ravel() for grid in np.meshgrid(deviates, deviates))
    drift = speed_m_s * np.radians(settings.wander_sd_deg)
    return _Strengths(
        noise_m=noise_m * np.exp(settings.noise_log_sd * of_noise),
        drift_m_s=drift * np.exp(settings.wander_log_sd * of_wander),
        log_prior=-0.5 * (of_noise**2 + of_wander**2),
    )


def _weigh_strengths(
    rotated: FloatArray,
    share: FloatArray,
    strengths: _Strengths,
    *,
    log_det_noise: float,
    at_end: float,
) -> FloatArray:
    """Give log weight, mean and variance of the answer for each strength; shape (3, s).

    ``rotated`` holds, for each axis of the basis, the design (2), the offset across and
    the covariance with the wander at the end. There every covariance is diagonal, so a
    strength costs a few sums over the axes.
    """
    design, across, to_end = rotated[:, :2], rotated[:, 2], rotated[:, 3]
    drift = strengths.drift_m_s[:, None] ** 2
    variance = strengths.noise_m[:, None] ** 2 + drift * share
    scaled = design / variance[:, :, None]
    information = np.einsum("ni,snj->sij", design, scaled)
    inverse = np.linalg.inv(information)
    coefficient = np.einsum("sij,snj,n->si", inverse, scaled, across)
    residual = across - coefficient @ design.T
    log_weight = strengths.log_prior - 0.5 * (
        log_det_noise
        + np.log(variance).sum(axis=1)
        + np.linalg.slogdet(information)[1]
        + (residual**2 / variance).sum(axis=1)
    )
    pull = drift * to_end
    mean = coefficient[:, 1] + (pull * residual / variance).sum(axis=1)
    wanting = np.array([0.0, 1.0]) - np.einsum("snj,sn->sj", scaled, pull)
    left = drift[:, 0] * at_end - (pull**2 / variance).sum(axis=1)
    spread = left + np.einsum("si,sij,sj->s", wanting, inverse, wanting)
    return np.array([log_weight, mean, spread])


def _mixed(answers: FloatArray, length_m: float) -> Slope:
    """Mix normal answers, shape (3, k), by their log weights; the interval is of the mixture."""
    log_weight, mean, variance = answers
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    sd = np.sqrt(np.maximum(variance, 1e-9))
    centre = float(weight @ mean)
    spread = float(np.sqrt(weight @ (sd**2 + (mean - centre) ** 2)))
    # Each answer stands as equally likely places of its normal curve, all put in one order.
    places = (mean[:, None] + sd[:, None] * _NORMAL_PLACES).ravel()
    order = np.argsort(places)
    shares = np.repeat(weight / len(_NORMAL_PLACES), len(_NORMAL_PLACES))[order]
    below = np.cumsum(shares) - shares / 2.0
    low, high = np.interp([0.025, 0.975], below, places[order])
    return Slope(
        centre=centre / length_m,
        low=float(low) / length_m,
        high=float(high) / length_m,
        sd=spread / length_m,
    )
