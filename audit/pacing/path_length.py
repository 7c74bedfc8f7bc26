"""How far somebody walked by a recording: corners given back, the receiver's wander taken off."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.along_line import steps_m
from audit.matching.halts import Movement
from audit.matching.walk_samples import WalkSamples, per_stretch, smoothed
from audit.measurement.receiver_noise import ReceiverNoise
from audit.settings import PacingSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Steps:
    """A smoothed path and its steps.

    Attributes
    ----------
    place : float array, shape (n, 2)
    even_m : float array, shape (n - 1,)
        From place to place.
    over_ground_m : float array, shape (n - 1,)
        What was walked, as well as the recording can tell; good as a sum, not one by one.
    """

    place: FloatArray
    even_m: FloatArray
    over_ground_m: FloatArray


def steps_over_ground(
    samples: WalkSamples, movement: Movement, noise: ReceiverNoise, settings: PacingSettings
) -> Steps:
    """Give the steps of a walk.

    Smoothing takes noise off a path and cuts its corners, by a length that grows with the
    width: what twice the width cuts off more than once the width is what once the width cut
    off. The noise that is left makes a step longer by its variance across over twice the
    step; how much is left is seen where the walker stands.
    """
    widths_s = (settings.smoothing_s, 2.0 * settings.smoothing_s)
    places = [_smoothed(samples, width_s / samples.step_s) for width_s in widths_s]
    even_m, wide_m = map(steps_m, places)
    step_s = np.diff(samples.time_s)
    wander = [
        _wander_m2_s2(samples, movement, noise, place, width_s, settings)
        for place, width_s in zip(places, widths_s, strict=True)
    ]
    # The same extrapolation for what the wander adds at the walker's usual speed.
    added = (2.0 * wander[0] - wander[1]) / (2.0 * movement.walking_m_s**2)
    over_ground = 2.0 * even_m - wide_m - added * movement.walking_m_s * step_s
    return Steps(place=places[0], even_m=even_m, over_ground_m=over_ground)


def _smoothed(samples: WalkSamples, width: float) -> FloatArray:
    return per_stretch(samples, lambda part: smoothed(samples.raw[part], width))


def _wander_m2_s2(
    samples: WalkSamples,
    movement: Movement,
    noise: ReceiverNoise,
    place: FloatArray,
    width_s: float,
    settings: PacingSettings,
) -> float:
    """Give the variance per axis of the speed that the receiver's error feigns after smoothing.

    Before anything is seen of it: that of an error forgotten over tau, smoothed by a
    Gaussian of width w, sigma^2 / (sqrt(pi) tau w).
    """
    usual = noise.noise_m**2 / (math.sqrt(math.pi) * noise.correlation_s * width_s)
    still = _well_inside(movement, samples, width_s)
    if not still.any():
        return usual
    speed = np.diff(place, axis=0)[still] / np.diff(samples.time_s)[still, None]
    seen = float((speed**2).sum(axis=1).mean()) / 2.0
    seen_s = float(still.sum()) * samples.step_s
    weight_s = settings.wander_prior_s
    return (usual * weight_s + seen * seen_s) / (weight_s + seen_s)


def _well_inside(movement: Movement, samples: WalkSamples, width_s: float) -> NDArray[np.bool_]:
    """Tell which steps lie so far inside a halt that smoothing brings no walking into them."""
    inside = np.zeros(len(samples) - 1, dtype=bool)
    edge = math.ceil(2.0 * width_s / samples.step_s) + math.ceil(5.0 / samples.step_s)
    for first, last in movement.halts:
        if last - first > 2 * edge + 1:
            inside[first + edge : last - edge] = True
    return inside
