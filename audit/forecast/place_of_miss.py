"""Where in the forecast of its leg a miss lies."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from audit.forecast.leg_forecast import LegForecast
from audit.units import FloatArray

EastNorth = tuple[float, float]
WhereInForecast = Literal[
    "inside the 50 % ellipse", "between the 50 % and the 95 % ellipse", "outside the 95 % ellipse"
]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MissInForecast:
    """A miss held against the forecast of its leg.

    Attributes
    ----------
    forecast : LegForecast
        As it was before the walk: of a leg begun at its start.
    began_off_m : float
        How far from its start the leg was really begun; what that carried over to its end,
        and what the card itself was off by, is no error of walking the leg and is left out
        of ``quantile`` and ``where``.
    quantile : float
        Share of ordinary walks, begun where this one was, that end nearer (by the ellipses)
        to where the card led: 0.5 on the inner ellipse, 0.95 on the outer one.
    whole_quantile : float
        The same of the miss as it stands, against a leg begun at its start.
    where : str
        By ``quantile``.
    """

    forecast: LegForecast
    began_off_m: float
    quantile: float
    whole_quantile: float
    where: WhereInForecast


def place_miss(
    forecast: LegForecast,
    *,
    miss_m: EastNorth,
    inherited_m: EastNorth,
    plan_m: EastNorth,
    own_sd_m: float,
    miss_sd_m: float,
    start_sd_m: float,
) -> MissInForecast:
    """Hold a miss against the forecast.

    Parameters
    ----------
    miss_m, inherited_m, plan_m
        From the planned point to the claim, the part that a wrong start carried over, and
        what the card says against what the points say.
    own_sd_m, miss_sd_m : float
        Standard errors per axis, as measured, of the way from start to claim and of the
        miss; they are added to the forecast, since a receiver moves every miss.
    start_sd_m : float
        How well the reference of the start says where it is, per axis.
    """
    own = np.subtract(np.subtract(miss_m, inherited_m), plan_m)
    mean = np.array(forecast.walk_mean_m)
    quantile = _share_nearer(own - mean, forecast.walk_covariance_m2, own_sd_m)
    # The square of the point's own reference is part of the miss's standard error already.
    whole_sd_m = math.hypot(miss_sd_m, start_sd_m)
    whole = np.subtract(miss_m, plan_m) - mean
    whole_quantile = _share_nearer(whole, forecast.walk_covariance_m2, whole_sd_m)
    return MissInForecast(
        forecast=forecast,
        began_off_m=math.hypot(*inherited_m),
        quantile=quantile,
        whole_quantile=whole_quantile,
        where=_where(quantile, forecast),
    )


def _share_nearer(away_m: FloatArray, covariance_m2: FloatArray, sd_m: float) -> float:
    """Give the share of a normal scatter that lies inside the ellipse through a place."""
    covariance = covariance_m2 + max(sd_m, 1e-6) ** 2 * np.eye(2)
    return -math.expm1(-0.5 * float(away_m @ np.linalg.solve(covariance, away_m)))


def _where(quantile: float, forecast: LegForecast) -> WhereInForecast:
    if quantile <= forecast.near.share:
        return "inside the 50 % ellipse"
    if quantile <= forecast.far.share:
        return "between the 50 % and the 95 % ellipse"
    return "outside the 95 % ellipse"
