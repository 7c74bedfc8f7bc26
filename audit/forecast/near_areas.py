"""How near an area a point may lie before ordinary walks to it come there."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from audit.forecast.leg_forecast import LegForecast
from audit.leg_card import CardPoint
from audit.settings import ForecastSettings

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry


def away_and_near_m(
    point: CardPoint,
    shape: BaseGeometry,
    radius_m: float,
    forecast: LegForecast | None,
    settings: ForecastSettings,
) -> tuple[float, float]:
    """Give how far an area lies from a point, and from what distance on that is near.

    Near is the arrival radius, and the ordinary error of the leg to the point in the direction
    of the area; the radius alone where no leg leads there.
    """
    import shapely  # noqa: PLC0415 (only where there are areas)

    place = shapely.Point(point.east_m, point.north_m)
    towards = np.subtract(
        shapely.get_coordinates(shapely.shortest_line(place, shape))[-1], (place.x, place.y)
    )
    away_m = float(np.hypot(*towards))
    if forecast is None or away_m == 0.0:
        return away_m, radius_m
    unit = towards / away_m
    error_m = math.sqrt(float(unit @ forecast.covariance_m2 @ unit))
    return away_m, radius_m + settings.near_area_sds * error_m
