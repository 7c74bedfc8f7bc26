"""Legs that are harder than the rest, once the walkers' skill is taken out.

A mixed model of the logarithm of the miss: a fixed part for each leg, a random one for
each walker, fitted by statsmodels. Legs are compared with the mean of all others.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.util import find_spec

import numpy as np

from audit.settings.class_shows import ClassShowsSettings
from audit.units import FloatArray
from audit.words import sentence

WITHOUT_MODEL = sentence("shows-no-model")


@dataclass(frozen=True, slots=True, kw_only=True)
class HarderLeg:
    """A leg whose misses are so many times those of the other legs.

    ``low`` and ``high`` are its 95 % interval, ``chance`` that of a ratio as large over
    all legs by chance (Holm). ``by_length`` is what the length of the leg alone would make.
    """

    leg: tuple[str, str]
    ratio: float
    low: float
    high: float
    chance: float
    by_length: float
    walkers: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LegComparison:
    """The harder legs, the hardest first; or why legs were not compared."""

    legs: tuple[HarderLeg, ...] = ()
    why_not: str = ""


def harder_legs(
    legs: Sequence[tuple[str, str]],
    walkers: Sequence[str],
    misses_m: FloatArray,
    lengths_m: FloatArray,
    settings: ClassShowsSettings,
) -> LegComparison:
    """Compare the legs. One entry for each walker on each leg: its names, miss and length.

    Misses below what a receiver can tell are expected to be raised to that already.
    """
    kept = _walked_enough(legs, settings.least_leg_walkers)
    names = sorted({legs[number] for number in kept})
    if len(names) < settings.least_legs:
        return LegComparison(why_not=sentence("shows-too-few-legs"))
    if find_spec("statsmodels") is None:
        return LegComparison(why_not=WITHOUT_MODEL)
    rows = [names.index(legs[number]) for number in kept]
    wide = np.eye(len(names))[rows]
    fitted = _fit(np.log(misses_m[kept]), wide, [walkers[number] for number in kept])
    if fitted is None:
        return LegComparison(why_not=sentence("shows-no-comparison"))
    effects, covariance = fitted
    length = np.array([lengths_m[kept][np.array(rows) == row].mean() for row in range(len(names))])
    return _told(names, effects, covariance, np.log(length), wide.sum(axis=0), settings)


def load_model() -> None:
    """Load what the comparison takes longest to load, where it is installed."""
    if find_spec("statsmodels") is not None:
        import statsmodels.regression.mixed_linear_model  # noqa: F401, PLC0415 (one second)


def _told(
    names: Sequence[tuple[str, str]],
    effects: FloatArray,
    covariance: FloatArray,
    log_length: FloatArray,
    counts: FloatArray,
    settings: ClassShowsSettings,
) -> LegComparison:
    from scipy.stats import norm  # noqa: PLC0415 (comes with statsmodels)

    contrast = np.eye(len(names)) * (1 + 1 / (len(names) - 1)) - 1 / (len(names) - 1)
    more = contrast @ effects
    error = np.sqrt(np.diag(contrast @ covariance @ contrast.T))
    chances = _holm(norm.sf(more / error))
    by_length = np.exp(contrast @ log_length)
    found = [
        HarderLeg(
            leg=names[number],
            ratio=float(np.exp(more[number])),
            low=float(np.exp(more[number] - 1.96 * error[number])),
            high=float(np.exp(more[number] + 1.96 * error[number])),
            chance=float(chances[number]),
            by_length=float(by_length[number]),
            walkers=int(counts[number]),
        )
        for number in np.argsort(-more)
        if chances[number] <= settings.chance_of_leg and np.exp(more[number]) >= settings.harder_by
    ]
    return LegComparison(legs=tuple(found))


def _walked_enough(legs: Sequence[tuple[str, str]], least: int) -> list[int]:
    walked = Counter(legs)
    return [number for number, leg in enumerate(legs) if walked[leg] >= least]


def _fit(
    log_miss: FloatArray, wide: FloatArray, walkers: Sequence[str]
) -> tuple[FloatArray, FloatArray] | None:
    """Give the legs' effects and their covariance; None where the model does not settle."""
    import warnings  # noqa: PLC0415

    from numpy.linalg import LinAlgError  # noqa: PLC0415
    from statsmodels.regression.mixed_linear_model import MixedLM  # noqa: PLC0415 (1.8 s)

    legs = wide.shape[1]
    with warnings.catch_warnings():
        # A variance of nothing between walkers is an answer, and no fault of the fit.
        warnings.simplefilter("ignore")
        try:
            result = MixedLM(log_miss, wide, groups=np.array(walkers)).fit(reml=True)
        except (LinAlgError, ValueError):
            return None
    effects = np.asarray(result.fe_params, dtype=float)
    covariance = np.asarray(result.cov_params(), dtype=float)[:legs, :legs]
    return (effects, covariance) if np.isfinite(covariance).all() else None


def _holm(chances: FloatArray) -> FloatArray:
    """Raise chances for having looked at so many (Holm, 1979)."""
    order = np.argsort(chances)
    raised = chances[order] * np.arange(len(chances), 0, -1)
    made = np.empty_like(chances)
    made[order] = np.minimum(np.maximum.accumulate(raised), 1.0)
    return made
