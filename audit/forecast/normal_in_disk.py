"""The chance that a place with normal error lies within a disk, wherever the disk's centre is."""

from __future__ import annotations

import math

import numpy as np

from audit.units import FloatArray

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(200)
_REACH_SDS = 9.0
"""Beyond so many standard deviations a normal density is zero to a double's digits."""
_LEAST_SD = 1e-9


def chance_in_disk(mean_m: FloatArray, covariance_m2: FloatArray, radius_m: float) -> float:
    """Give the chance that a place lies within ``radius_m`` of the origin.

    In the principal axes of the covariance the chance is one integral over the wider
    axis: the density there, times the chance of lying within the chord of the disk. The
    chord's ends are taken smooth by x = r sin(t), and Gauss and Legendre do the rest.

    Parameters
    ----------
    mean_m : float array, shape (2,)
        Of the place, from the disk's centre.
    covariance_m2 : float array, shape (2, 2)
        Of the place; may be singular.
    radius_m : float
        Of the disk.
    """
    variances, axes = np.linalg.eigh(covariance_m2)
    wide_sd, thin_sd = (max(math.sqrt(max(v, 0.0)), _LEAST_SD) for v in variances[::-1])
    wide_m, thin_m = (axes.T @ mean_m)[::-1]
    low = max(-radius_m, wide_m - _REACH_SDS * wide_sd)
    high = min(radius_m, wide_m + _REACH_SDS * wide_sd)
    if radius_m <= 0.0 or low >= high:
        return 0.0
    first, last = math.asin(low / radius_m), math.asin(high / radius_m)
    angle = (first + last) / 2.0 + (last - first) / 2.0 * _NODES
    x = radius_m * np.sin(angle)
    half_chord = radius_m * np.cos(angle)
    density = np.exp(-0.5 * ((x - wide_m) / wide_sd) ** 2) / (math.sqrt(2.0 * math.pi) * wide_sd)
    within = _below((half_chord - thin_m) / thin_sd) - _below((-half_chord - thin_m) / thin_sd)
    total = float((last - first) / 2.0 * (_WEIGHTS * density * within * half_chord).sum())
    return min(max(total, 0.0), 1.0)


def normal_below(deviate: float) -> float:
    """Give the chance that a standard normal number is smaller than this."""
    return 0.5 * math.erfc(-deviate / math.sqrt(2.0))


def normal_deviate(share: float) -> float:
    """Give the number below which a standard normal one is with this chance."""
    from statistics import NormalDist  # noqa: PLC0415 (a heavy module of the library)

    return NormalDist().inv_cdf(share)


def _below(deviates: FloatArray) -> FloatArray:
    return np.array([normal_below(float(one)) for one in deviates])
