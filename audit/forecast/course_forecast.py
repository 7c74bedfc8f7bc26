"""The forecast of a whole course: each leg begun at its start."""

from __future__ import annotations

import math
from dataclasses import dataclass

from audit.forecast.leg_forecast import LegForecast, forecast_leg
from audit.forecast.walker_scatter import WalkerScatter, ordinary_scatter
from audit.leg_card import LegCard
from audit.settings import ForecastSettings


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CourseForecast:
    """The forecast of every leg.

    ``chance_of_all`` is that every point is come within sight of, the legs taken as
    independent of each other: what they share makes it a little larger.
    """

    card: LegCard
    scatter: WalkerScatter
    sight_m: float
    legs: tuple[LegForecast, ...]
    chance_of_all: float


def forecast_course(
    card: LegCard,
    scatter: WalkerScatter | None = None,
    *,
    sight_m: float | None = None,
    aim_off_m: float = 0.0,
    settings: ForecastSettings | None = None,
) -> CourseForecast:
    """Forecast every leg of a course; within the arrival radius counts as in sight."""
    scatter = scatter or ordinary_scatter(settings)
    sight_m = card.arrival_radius_m if sight_m is None else sight_m
    legs = tuple(
        forecast_leg(
            leg, scatter, sight_m, aim_off_m=aim_off_m, angles=card.angles, settings=settings
        )
        for leg in card.legs
    )
    return CourseForecast(
        card=card,
        scatter=scatter,
        sight_m=sight_m,
        legs=legs,
        chance_of_all=math.prod(leg.chance_in_sight for leg in legs),
    )
