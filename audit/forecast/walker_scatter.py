"""How a walker scatters: what a forecast takes for ordinary error."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from audit.settings import ForecastSettings
from audit.units import FloatArray
from audit.walked_before import WalkedBefore
from audit.words import sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkerScatter:
    """Ordinary error of one walker.

    Attributes
    ----------
    turn_deg, turn_sd_deg : float
        Mean turn off the azimuth, right positive, and its standard deviation on one leg:
        what is common to all legs and what differs from leg to leg together.
    log_ratio, log_ratio_sd : float
        The same of the logarithm of distance walked over planned.
    click_deg : float
        Step of the bezel where azimuths are set by its clicks; 0 where they are read off
        the dial, whose reading is part of the scatter.
    source : str
        Where the figures are from, in words.
    """

    turn_deg: float
    turn_sd_deg: float
    log_ratio: float
    log_ratio_sd: float
    click_deg: float = 0.0
    source: str = sentence("forecast-ordinary")


def ordinary_scatter(settings: ForecastSettings | None = None) -> WalkerScatter:
    """Give the scatter of a walker of whom nothing is known."""
    chosen = settings or ForecastSettings()
    return WalkerScatter(
        turn_deg=0.0,
        turn_sd_deg=math.hypot(chosen.heading_sd_deg, chosen.bias_sd_deg),
        log_ratio=chosen.weave,
        log_ratio_sd=math.hypot(chosen.pace_sd, chosen.pace_bias_sd),
    )


def scatter_of_walker(
    legs: Sequence[WalkedBefore], settings: ForecastSettings | None = None
) -> WalkerScatter:
    """Give the scatter of a walker from earlier legs, drawn towards that of walkers at large.

    Legs that are too far off to be scatter are left out, and ``source`` says how many. What
    measuring added to the scatter is taken off it.
    """
    chosen = settings or ForecastSettings()
    kept = [
        leg
        for leg in legs
        if abs(leg.turn_deg) <= chosen.largest_turn_deg
        and abs(leg.log_ratio) <= chosen.largest_log_ratio
    ]
    if not kept:
        return ordinary_scatter(chosen)
    turn, turn_sd = _mean_and_sd(
        np.array([leg.turn_deg for leg in kept]),
        np.array([leg.turn_sd_deg for leg in kept]),
        (0.0, chosen.bias_sd_deg, chosen.heading_sd_deg),
        chosen.prior_legs,
    )
    log_ratio, log_sd = _mean_and_sd(
        np.array([leg.log_ratio for leg in kept]),
        np.array([leg.log_ratio_sd for leg in kept]),
        (chosen.weave, chosen.pace_bias_sd, chosen.pace_sd),
        chosen.prior_legs,
    )
    left = len(legs) - len(kept)
    return WalkerScatter(
        turn_deg=turn,
        turn_sd_deg=turn_sd,
        log_ratio=log_ratio,
        log_ratio_sd=log_sd,
        source=sentence("forecast-earlier", count=len(kept), left=str(left)),
    )


def _mean_and_sd(
    seen: FloatArray, errors: FloatArray, prior: tuple[float, float, float], prior_legs: float
) -> tuple[float, float]:
    """Give the mean, and the standard deviation of one more leg about it.

    ``prior`` holds the mean of walkers at large, their spread about it, and their scatter
    from leg to leg.
    """
    middle, between, within = prior
    count = len(seen)
    excess = max(float(((seen - seen.mean()) ** 2).sum() - (errors**2).mean() * (count - 1)), 0.0)
    variance = (excess + prior_legs * within**2) / (count - 1 + prior_legs)
    of_mean = (variance + float((errors**2).mean())) / count
    weight = between**2 / (between**2 + of_mean)
    mean = middle + weight * (float(seen.mean()) - middle)
    return mean, math.sqrt(variance + weight * of_mean)
