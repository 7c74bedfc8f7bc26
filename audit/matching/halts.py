"""Where the walker stood still, how far he walked, and how much the receiver wandered."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.along_line import steps_m
from audit.matching.walk_samples import WalkSamples, per_stretch
from audit.settings import MatchingSettings
from audit.statistics.correlated_noise import variance_about_mean
from audit.statistics.runs import runs_of_true
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Movement:
    """What the samples say about moving and standing. Arrays have shape (n,).

    Attributes
    ----------
    halts : int array, shape (k, 2)
        First and last sample of each halt.
    halted : bool array
    path_m : float array
        Distance walked up to each sample, nothing added while halted.
    halted_s : float array
        Seconds stood still up to each sample.
    ridden_m : float array
        Of that, the metres that went by too fast to be walked.
    walking_m_s : float
        This walker's usual speed.
    noise_m : float
        Receiver noise, standard deviation per axis.
    noise_from_s : float
        Seconds of standing still that the noise was estimated from.
    """

    halts: NDArray[np.int64]
    halted: NDArray[np.bool_]
    path_m: FloatArray
    halted_s: FloatArray
    ridden_m: FloatArray
    walking_m_s: float
    noise_m: float
    noise_from_s: float


def find_movement(samples: WalkSamples, settings: MatchingSettings) -> Movement:
    """Find the halts, the path walked between them and the receiver noise."""
    speed = _speed(samples, settings.speed_window_s)
    on_foot = speed[(speed > settings.slowest_walk_m_s) & (speed < settings.fastest_walk_m_s)]
    walking = float(np.percentile(on_foot, 75)) if len(on_foot) else settings.usual_walk_m_s
    halts = _halts(samples, speed < settings.halt_speed_share * walking, settings)
    halted = np.zeros(len(samples), dtype=bool)
    for first, last in halts:
        halted[first : last + 1] = True
    step = steps_m(samples.smooth)
    both = halted[1:] & halted[:-1]
    path = np.concatenate([[0.0], np.cumsum(np.where(both, 0.0, step))])
    still = np.concatenate([[0.0], np.cumsum(np.where(both, np.diff(samples.time_s), 0.0))])
    riding = speed >= _ride_m_s(speed, walking, settings)
    ridden = np.concatenate([[0.0], np.cumsum(np.where(riding[1:], np.diff(path), 0.0))])
    noise, noise_from = _noise(samples, halts, settings)
    return Movement(
        halts=halts,
        halted=halted,
        path_m=path,
        halted_s=still,
        ridden_m=ridden,
        walking_m_s=walking,
        noise_m=noise,
        noise_from_s=noise_from,
    )


def _ride_m_s(speed: FloatArray, walking_m_s: float, settings: MatchingSettings) -> float:
    """Give the speed from which on this walker was driven.

    Somebody who runs, or a whole recording on wheels, is measured by his own pace.
    """
    moving = speed[speed > settings.slowest_walk_m_s]
    usual = max(walking_m_s, float(np.median(moving)) if len(moving) else 0.0)
    return max(settings.slowest_ride_m_s, settings.ride_over_usual * usual)


def _speed(samples: WalkSamples, window_s: float) -> FloatArray:
    """Give metres a second over a window centred on each sample, shorter at the ends."""
    half = max(round(window_s / samples.step_s / 2), 1)

    def stretch_speed(part: slice) -> FloatArray:
        position = samples.smooth[part]
        index = np.arange(len(position))
        before = np.maximum(index - half, 0)
        after = np.minimum(index + half, len(position) - 1)
        span = np.maximum((after - before) * samples.step_s, samples.step_s)
        return np.asarray(np.hypot(*(position[after] - position[before]).T) / span)

    return per_stretch(samples, stretch_speed)


def _halts(
    samples: WalkSamples, slow: NDArray[np.bool_], settings: MatchingSettings
) -> NDArray[np.int64]:
    """Give first and last samples of the slow runs, short ones dropped, near ones joined."""
    runs = [
        (first, end - 1)
        for first, end in runs_of_true(slow).tolist()
        if samples.time_s[end - 1] - samples.time_s[first] >= settings.halt_shortest_s
    ]
    joined: list[list[int]] = []
    for first, last in runs:
        near = joined and (
            samples.time_s[first] - samples.time_s[joined[-1][1]] < settings.halt_join_s
        )
        if near:
            joined[-1][1] = last
        else:
            joined.append([first, last])
    return np.array(joined, dtype=np.int64).reshape(-1, 2)


def _noise(
    samples: WalkSamples, halts: NDArray[np.int64], settings: MatchingSettings
) -> tuple[float, float]:
    """Estimate receiver noise from the scatter about each halt's mean.

    Noise that is correlated in time scatters less about its own mean than about the
    truth; each halt's variance is put right for that before halts are pooled with the
    prior, weighted by the independent looks each of them gives.
    """
    tau = settings.noise_correlation_s
    total, weight, seconds = settings.prior_noise_m**2, 1.0, 0.0
    for first, last in halts:
        length_s = float(samples.time_s[last] - samples.time_s[first])
        if length_s < settings.noise_halt_s:
            continue
        variance = float(samples.raw[first : last + 1].var(axis=0).mean())
        looks = length_s / tau
        total += looks * variance / variance_about_mean(length_s, tau)
        weight += looks
        seconds += length_s
    noise = float(np.sqrt(total / weight))
    return float(np.clip(noise, settings.least_noise_m, settings.most_noise_m)), seconds
