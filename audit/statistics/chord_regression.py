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

_HALVINGS = 12
_NORMAL_PLACES = np.array([NormalDist().inv_cdf((place + 0.5) / 201) for place in range(201)])


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """Cross-track rise over distance, end to end: centre and 95 % interval, as ratios.

    ``own_sd`` is the error if the leg is the portion that it was matched to.
    """

    centre: float
    low: float
    high: float
    sd: float
    own_sd: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A bypass: when, how far out it went, and whether it came back to about the line."""

    begin_s: float
    end_s: float
    out_m: float
    returned: bool = True

    def sd_m(self, share: float) -> float:
        """Give how far beside the line he may go on, if it is a share of how far he went out."""
        return self.out_m * (share if self.returned else 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asides:
    """What moved the walker sideways that is no part of his heading.

    Attributes
    ----------
    steps : tuple of Step
        After each the walk may go on beside the line that it left. No fix within them
        may be given.
    other_ends : tuple of (share, shift_m)
        Probabilities that the leg began or ended otherwise, and how much further right
        each would put its end.
    other_portions : tuple of (share, shift_m)
        The same for its being another portion altogether.
    ends_sd_m : float
        Standard error across the leg for want of knowing when it began and ended.
    """

    steps: tuple[Step, ...] = ()
    other_ends: tuple[tuple[float, float], ...] = ()
    other_portions: tuple[tuple[float, float], ...] = ()
    ends_sd_m: float = 0.0


_NO_ASIDES = Asides()


def chord_slope(
    time_s: FloatArray,
    across_m: FloatArray,
    *,
    duration_s: float,
    length_m: float,
    noise_m: float,
    settings: HeadingSettings,
    asides: Asides = _NO_ASIDES,
) -> Slope:
    """Estimate (true place at the end - true place at the start) / length, across.

    What bypasses added sideways is left out of it.

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
    stepped = [
        np.clip((time_s - step.begin_s) / max(step.end_s - step.begin_s, 1e-9), 0.0, 1.0)
        for step in asides.steps
    ]
    design = np.column_stack([np.ones_like(clock), clock / duration_s, *stepped])
    strengths = _strengths(noise_m, length_m / duration_s, settings)
    noises = [_noise(time_s, tau, settings) for tau in settings.noise_correlations_s]
    wanders = [
        (
            integrated_covariance(clock, clock, tau),
            integrated_covariance(clock, end, tau),
            float(integrated_covariance(end, end, tau)[0, 0]),
        )
        for tau in settings.wander_correlations_s
    ]
    pairs = list(product(noises, wanders))
    # Bases in which the noise is one everywhere and the wander a number for each axis.
    whitened = [noise.whiten @ wander @ noise.whiten.T for noise, (wander, _, _) in pairs]
    share, basis = np.linalg.eigh(np.array(whitened))
    given = [
        noise.whiten @ np.column_stack([design, across_m, to_end])
        for noise, (_, to_end, _) in pairs
    ]
    rotated = basis.transpose(0, 2, 1) @ np.array(given)
    spread = _Spread(
        share=np.maximum(share, 0.0),
        log_det_noise=np.array([noise.log_det for noise, _ in pairs]),
        at_end=np.array([at_end for _, (_, _, at_end) in pairs]),
    )
    log_prior = np.array([noise.log_prior for noise, _ in pairs])
    answers = []
    for share_left, chance in settings.step_sds if asides.steps else ((1.0, 1.0),):
        beside = np.array([step.sd_m(share_left) ** 2 for step in asides.steps])
        answer = _weigh_strengths(rotated, spread, strengths, beside)
        answer[0] += np.log(chance) + log_prior[:, None]
        answers.append(answer.reshape(3, -1))
    return _mixed(np.concatenate(answers, axis=1), length_m, asides)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Noise:
    """The receiver's noise for one time over which it forgets its error.

    ``whiten``, shape (n, n), makes it one everywhere; ``log_prior`` speaks for it beforehand.
    """

    whiten: FloatArray
    log_det: float
    log_prior: float


def _noise(time_s: FloatArray, tau_s: float, settings: HeadingSettings) -> _Noise:
    noise = covariance(time_s, tau_s) + settings.white_share * np.eye(len(time_s))
    whiten = np.linalg.inv(np.linalg.cholesky(noise))
    return _Noise(
        whiten=whiten,
        log_det=-2.0 * float(np.log(np.diag(whiten)).sum()),
        log_prior=_log_prior_of_memory(tau_s, settings),
    )


def _log_prior_of_memory(tau_s: float, settings: HeadingSettings) -> float:
    """Give what speaks beforehand for a time over which the receiver forgets its error."""
    off = np.log(tau_s / settings.usual_correlation_s) / settings.usual_correlation_log_sd
    return float(-0.5 * off**2)


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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Spread:
    """The wander in bases in which the noise is one everywhere.

    ``share`` has shape (c, n); ``at_end``, shape (c,), is its variance at the end of the leg.
    """

    share: FloatArray
    log_det_noise: FloatArray
    at_end: FloatArray


def _weigh_strengths(
    rotated: FloatArray, spread: _Spread, strengths: _Strengths, step_variance: FloatArray
) -> FloatArray:
    """Give log weight, mean and variance of the answer for each basis and strength; (3, c, s).

    ``rotated``, shape (c, n, k), holds, for each axis of each basis, the design (2, and one
    for each step aside), the offset across and the covariance with the wander at the end.
    There every covariance is diagonal, so a strength costs a few sums over the axes. What
    is known of the steps, shape (k,), comes in as one more observation each: none, to
    within its variance.
    """
    bases, steps = len(rotated), len(step_variance)
    known = np.zeros((bases, steps, rotated.shape[2]))
    known[:, :, 2 : 2 + steps] = np.eye(steps)
    rotated = np.concatenate([rotated, known], axis=1)
    design, across, to_end = rotated[..., : 2 + steps], rotated[:, None, :, -2], rotated[..., -1]
    drift = strengths.drift_m_s[:, None] ** 2
    variance = strengths.noise_m[:, None] ** 2 + drift * spread.share[:, None, :]
    of_steps = np.broadcast_to(step_variance, (*variance.shape[:2], steps))
    variance = np.concatenate([variance, of_steps], axis=2)
    scaled = design[:, None] / variance[..., None]
    information = design.transpose(0, 2, 1)[:, None] @ scaled
    inverse = np.linalg.inv(information)
    moment = across[:, :, None, :] @ scaled
    coefficient = (moment @ inverse)[:, :, 0]
    residual = across - coefficient @ design.transpose(0, 2, 1)
    log_weight = strengths.log_prior - 0.5 * (
        spread.log_det_noise[:, None]
        + np.log(variance).sum(axis=2)
        + np.linalg.slogdet(information)[1]
        + (residual**2 / variance).sum(axis=2)
    )
    pull = drift * to_end[:, None, :]
    mean = coefficient[..., 1] + (pull * residual / variance).sum(axis=2)
    wanted = np.zeros(2 + steps)
    wanted[1] = 1.0
    wanting = wanted - (pull[:, :, None, :] @ scaled)[:, :, 0]
    left = drift[:, 0] * spread.at_end[:, None] - (pull**2 / variance).sum(axis=2)
    square = left + ((wanting[:, :, None, :] @ inverse)[:, :, 0] * wanting).sum(axis=2)
    return np.array([log_weight, mean, square])


def _mixed(answers: FloatArray, length_m: float, asides: Asides) -> Slope:
    """Mix normal answers, shape (3, k), by their log weights; the interval is of the mixture.

    Where the leg may have ended otherwise, the centre is still that of the likelier end.
    """
    log_weight, mean, variance = answers
    weight = np.exp(log_weight - log_weight.max())
    weight /= weight.sum()
    sd = np.sqrt(np.maximum(variance, 1e-9) + asides.ends_sd_m**2)
    centre = float(weight @ mean)
    own, *_ = _ended_otherwise(weight, mean, sd, asides.other_ends)
    others = asides.other_ends + asides.other_portions
    spread, weight, mean, sd = _ended_otherwise(weight, mean, sd, others)
    low, high = (_place_below_which(mean, sd, weight, part) for part in (0.025, 0.975))
    return Slope(
        centre=centre / length_m,
        low=low / length_m,
        high=high / length_m,
        sd=spread / length_m,
        own_sd=own / length_m,
    )


def _ended_otherwise(
    weight: FloatArray, mean: FloatArray, sd: FloatArray, ends: tuple[tuple[float, float], ...]
) -> tuple[float, FloatArray, FloatArray, FloatArray]:
    """Mix in other ends; give the spread about the likelier end, then weights, means and sds."""
    centre = float(weight @ mean)
    if ends:
        chances, shifts = np.array(((1.0, 0.0), *ends)).T
        chances[0] -= chances[1:].sum()
        weight = np.outer(chances, weight).ravel()
        mean, sd = (mean + shifts[:, None]).ravel(), np.tile(sd, len(chances))
    return float(np.sqrt(weight @ (sd**2 + (mean - centre) ** 2))), weight, mean, sd


def _place_below_which(
    mean: FloatArray, sd: FloatArray, weight: FloatArray, wanted: float
) -> float:
    """Give the place below which the wanted share of a mixture lies, half of what is there counted.

    Each answer stands as equally likely places of its normal curve, from ``first`` to
    ``last`` still looked at; only those about the place that is sought are put in order.
    """
    share = weight / len(_NORMAL_PLACES)
    first, last = np.zeros(len(mean), dtype=int), np.full(len(mean), len(_NORMAL_PLACES))
    low, high = (mean + _NORMAL_PLACES[0] * sd).min(), (mean + _NORMAL_PLACES[-1] * sd).max()
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        cut = np.searchsorted(_NORMAL_PLACES, (middle - mean) / sd)
        # What is there is one place of one answer at the least.
        if abs(float(share @ cut) - wanted) <= share.max():
            break
        if share @ cut < wanted:
            low, first = middle, cut
        else:
            high, last = middle, cut
    each = last - first
    answer = np.repeat(np.arange(len(mean)), each)
    number = np.arange(len(answer)) - np.repeat(np.cumsum(each) - each, each) + first[answer]
    places, shares = mean[answer] + sd[answer] * _NORMAL_PLACES[number], share[answer]
    # Of equal places the one with the smaller share first, on every machine.
    order = np.lexsort((shares, places))
    reached = share @ first + np.cumsum(shares[order]) - shares[order] / 2.0
    return float(np.interp(wanted, reached, places[order]))
