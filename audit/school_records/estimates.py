"""Means and changes over attempts, with errors that count how attempts differ.

Random effects: what an attempt shows is off by the error of its own figures, and by how
the walker differs from day to day. The latter is found by Paule and Mandel's equation
(J. Res. Natl Bur. Stand. 87, 1982, 377-385); intervals are Student's, after Knapp and
Hartung (Statistics in Medicine 22, 2003, 2693-2710), never narrower than without it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray

_ROUNDS = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """A figure with its standard error and interval.

    ``chance`` is how often so large a value comes by chance where the truth is 0.
    """

    value: float
    error: float
    low: float
    high: float
    chance: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """A standard deviation with its interval; ``seen`` holds the error of measuring too."""

    value: float
    low: float
    high: float
    seen: float
    freedom: float


def mean_of(values: FloatArray, errors: FloatArray, coverage: float) -> Estimate:
    """Give the mean over two attempts or more."""
    return _fitted(np.ones((len(values), 1)), values, errors, coverage)


def change_of(
    places: FloatArray, values: FloatArray, errors: FloatArray, coverage: float
) -> Estimate:
    """Give the change from one place to the next, over three attempts or more."""
    design = np.column_stack([places - places.mean(), np.ones(len(values))])
    return _fitted(design, values, errors, coverage)


def ends_of(places: FloatArray, values: FloatArray, errors: FloatArray) -> tuple[float, float]:
    """Give what the line of that change has at the first place and at the last."""
    design = np.column_stack([places - places.mean(), np.ones(len(values))])
    between = _between(design, values, errors, len(values) - 2)
    line = design @ _least_squares(design, values, 1.0 / (errors**2 + between))[0]
    return float(line[np.argmin(places)]), float(line[np.argmax(places)])


def _fitted(
    design: FloatArray, values: FloatArray, errors: FloatArray, coverage: float
) -> Estimate:
    """Give the first coefficient of a line through figures that differ beyond their errors."""
    from scipy.stats import t as student  # noqa: PLC0415 (slow to import)

    freedom = len(values) - design.shape[1]
    between = _between(design, values, errors, freedom)
    weights = 1.0 / (errors**2 + between)
    coefficients, cover, left = _least_squares(design, values, weights)
    error = math.sqrt(cover[0, 0] * max(1.0, left / freedom))
    value = float(coefficients[0])
    half = float(student.ppf(0.5 + coverage / 2.0, freedom)) * error
    chance = 2.0 * float(student.sf(abs(value) / error, freedom))
    return Estimate(value=value, error=error, low=value - half, high=value + half, chance=chance)


def _between(design: FloatArray, values: FloatArray, errors: FloatArray, freedom: int) -> float:
    """Give the variance between attempts at which what is left over is what is to be expected."""

    def excess(variance: float) -> float:
        return _least_squares(design, values, 1.0 / (errors**2 + variance))[2] - freedom

    low, high = 0.0, float(np.var(values)) + float((errors**2).max())
    if excess(0.0) <= 0.0:
        return 0.0
    while excess(high) > 0.0:
        high *= 2.0
    for _ in range(_ROUNDS):
        middle = (low + high) / 2.0
        low, high = (middle, high) if excess(middle) > 0.0 else (low, middle)
    return (low + high) / 2.0


def _least_squares(
    design: FloatArray, values: FloatArray, weights: FloatArray
) -> tuple[FloatArray, FloatArray, float]:
    """Give coefficients, their covariance, and the weighted sum of squares left over."""
    weighted = design * weights[:, None]
    cover = np.asarray(np.linalg.inv(weighted.T @ design), dtype=np.float64)
    coefficients = cover @ (weighted.T @ values)
    left = values - design @ coefficients
    return coefficients, cover, float((weights * left**2).sum())


def spread_of(squares: float, freedom: float, measuring: float, coverage: float) -> Spread:
    """Give a scatter from a sum of squares; ``measuring`` is the variance that measuring adds."""
    from scipy.stats import chi2  # noqa: PLC0415 (slow to import)

    tail = (1.0 - coverage) / 2.0
    variances = (
        squares / freedom,
        squares / float(chi2.ppf(1.0 - tail, freedom)),
        squares / float(chi2.ppf(tail, freedom)),
    )
    value, low, high = (math.sqrt(max(0.0, one - measuring)) for one in variances)
    return Spread(value=value, low=low, high=high, seen=math.sqrt(variances[0]), freedom=freedom)


def log_spread(spread: Spread) -> tuple[float, float]:
    """Give the logarithm of a scatter as seen, freed of its bias, and its standard error.

    The logarithm of a variance with so many degrees of freedom lies below the true one by
    log(n/2) - digamma(n/2), and has the variance trigamma(n/2).
    """
    from scipy.special import digamma, polygamma  # noqa: PLC0415 (slow to import)

    half = spread.freedom / 2.0
    low = float(digamma(half)) - math.log(half)
    return math.log(spread.seen) - low / 2.0, math.sqrt(float(polygamma(1, half))) / 2.0
