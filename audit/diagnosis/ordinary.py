"""Ordinary error: the grids of bias, pace and scatter that it is summed over."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.settings import DiagnosisSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ordinary:
    """What a walker may have in common on all legs, and how he scatters; arrays of shape (n,).

    Attributes
    ----------
    common : turn in degrees, or logarithm of the pace ratio.
    scatter : standard deviation from leg to leg, in the same unit.
    prior : adds up to 1.
    """

    common: FloatArray
    scatter: FloatArray
    prior: FloatArray


def ordinary_turns(settings: DiagnosisSettings) -> Ordinary:
    """Give the turns and scatters of headings, a degree or so apart."""
    return _grid(settings.own_bias_deg, settings.scatter_deg, 0.0, 9)


def ordinary_paces(settings: DiagnosisSettings) -> Ordinary:
    """Give the pace ratios and scatters of distances."""
    return _grid((settings.own_pace_sd, 0.0), settings.pace_scatter, settings.weave, 21)


def _grid(
    own: tuple[float, float], scatter: tuple[tuple[float, float], ...], middle: float, count: int
) -> Ordinary:
    """Lay out the grid; ``own`` is the spread of what legs share: its least, and by scatter."""
    steps = np.linspace(-2.4, 2.4, count)
    weight = np.exp(-0.5 * steps**2)
    weight /= weight.sum()
    sizes, shares = np.array(scatter).T
    spread = np.hypot(own[0], own[1] * sizes)
    return Ordinary(
        common=(middle + np.outer(steps, spread)).ravel(),
        scatter=np.tile(sizes, count),
        prior=np.outer(weight, shares / shares.sum()).ravel(),
    )
