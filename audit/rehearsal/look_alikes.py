"""Which two mistakes of a leg end at one place, so that the leg cannot tell them apart."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from audit.forecast.leg_forecast import LegForecast
from audit.forecast.normal_in_disk import normal_deviate
from audit.geodesy.along_line import metres_along, places_along
from audit.rehearsal.finished_rehearsal import LookAlike, Way
from audit.settings import DiagnosisSettings, Settings
from audit.units import FloatArray

_SAMPLES = 25
"""Places along two ways that are held against each other."""


def resolution_m(settings: Settings) -> float:
    """Give how far apart two ends must lie for a usual recording to tell them apart.

    Start and claim are each measured with the receiver's error; a measured end is laid to
    the nearer of the two, and rightly so with the chance that the settings ask for.
    """
    place_sd_m = math.sqrt(2.0) * settings.noise.usual_noise_m
    return 2.0 * normal_deviate(settings.rehearsal.told_apart) * place_sd_m


def look_alikes(
    ways: Sequence[Way], forecast: LegForecast, settings: Settings
) -> tuple[LookAlike, ...]:
    """Give every pair of ways of two causes that end within the resolution, likeliest first."""
    if not ways:
        return ()
    ends = np.array([way.line[-1] for way in ways])
    between = ends[:, None, :] - ends[None, :, :]
    apart_m = np.hypot(between[..., 0], between[..., 1])
    near = np.argwhere(np.triu(apart_m < resolution_m(settings), k=1))
    if not len(near):
        return ()
    noise = 2.0 * settings.noise.usual_noise_m**2 * np.eye(2)
    inverse = np.linalg.inv(forecast.walk_covariance_m2 + noise)
    likely = _likelihoods(ways, settings.diagnosis)
    sampled = [_sampled(way.line) for way in ways]
    found = [
        LookAlike(
            first=int(first),
            second=int(second),
            apart_m=float(apart_m[first, second]),
            apart_sds=math.sqrt(float(between[first, second] @ inverse @ between[first, second])),
            by_line=_lines_apart_m(sampled[first], sampled[second]) > resolution_m(settings),
            weight=likely[first] * likely[second],
        )
        for first, second in near
        if ways[first].cause != ways[second].cause
    ]
    return tuple(sorted(found, key=lambda pair: (pair.by_line, -pair.weight)))


def mistakes_alike(ways: Sequence[Way], alike: Sequence[LookAlike]) -> set[frozenset[str]]:
    """Give the pairs of mistakes, each once, that neither their ends nor their lines tell apart.

    Two mistakes of many sizes are one pair, however many of their ways meet.
    """
    return {
        frozenset((ways[pair.first].cause, ways[pair.second].cause))
        for pair in alike
        if not pair.by_line
    }


def _likelihoods(ways: Sequence[Way], settings: DiagnosisSettings) -> list[float]:
    """Give how likely each way is, by the priors of the diagnosis."""
    priors: dict[str, float] = {}
    for name, prior in (*settings.walk_priors, *settings.leg_priors):
        priors[name] = priors.get(name, 0.0) + prior
    return [priors.get(way.cause, 0.0) * way.share for way in ways]


def _sampled(line: FloatArray) -> FloatArray:
    """Give places spread evenly along a way."""
    path = metres_along(line)
    return places_along(line, path, np.linspace(0.0, path[-1], _SAMPLES))


def _lines_apart_m(first: FloatArray, second: FloatArray) -> float:
    """Give how far one way is from the other where it is furthest, both sampled."""
    away = np.hypot(*np.moveaxis(first[:, None, :] - second[None, :, :], -1, 0))
    return float(max(away.min(axis=1).max(), away.min(axis=0).max()))
