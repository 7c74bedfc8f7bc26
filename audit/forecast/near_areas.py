"""Areas that a faultless walk comes to: near a point, or where ordinary walks of a leg lead."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from audit.forecast.leg_forecast import LegForecast
from audit.forecast.normal_in_disk import normal_deviate
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.leg_card import CardLeg, CardPoint, LegCard
from audit.settings import ForecastSettings
from audit.units import FloatArray, unit_vector
from audit.words import sentence
from audit.words.figures import Length

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

_DEVIATES = 40
"""Ordinary walks are spread evenly in chance, so many by as many: to less than 1 in 100."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class NearArea:
    """An area near a point, or one that ordinary walks of the leg to it reach.

    Attributes
    ----------
    leg : CardLeg or None
        The leg that ends at the point; None where no leg does.
    away_m, near_m : float
        How far the area lies from the point, and from what distance on that is near.
    walks : float or None
        Share of the ordinary walks of the leg that reach the area on their way or at their end;
        None where that is not worked out: without a leg, for one that follows a line that is
        not straight, and for one that goes through the area as planned.
    """

    point: CardPoint
    leg: CardLeg | None
    area: str
    kind: Literal["no-go", "hazard"]
    away_m: float
    near_m: float
    walks: float | None

    @property
    def near(self) -> bool:
        """Say whether the point lies near the area."""
        return self.away_m < self.near_m

    @property
    def message(self) -> str:
        """Say it in a sentence."""
        leg, walks = self.leg, round(100.0 * (self.walks or 0.0))
        named = {"kind": self.kind, "area": self.area, "walks": str(walks or "none")}
        if leg is not None and not self.near:
            ends = {"start": leg.start.name, "end": leg.end.name}
            return sentence("forecast-walks-reach", **named, leg=leg.name, **ends)
        return sentence(
            "forecast-near-area",
            **named,
            point=self.point.name,
            away=Length(metres=self.away_m),
            near=Length(metres=self.near_m),
            leg="none" if leg is None else leg.name,
        )


def areas_near(
    card: LegCard,
    forecasts: Sequence[LegForecast],
    areas: GroundAreas,
    settings: ForecastSettings | None = None,
) -> tuple[NearArea, ...]:
    """Give the areas that points of a course are near, or that ordinary walks of its legs reach.

    A point inside an area is not among them. Without forecasts, as where the order of the
    points is free, the arrival radius alone says what is near.
    """
    chosen = settings or ForecastSettings()
    legs = list(zip(card.legs, forecasts, strict=True)) if forecasts else []
    led_to = {id(leg.end) for leg, _ in legs}
    places: list[tuple[CardPoint, CardLeg | None, LegForecast | None]] = [
        (point, None, None) for point in card.points if id(point) not in led_to
    ]
    places += [(leg.end, leg, forecast) for leg, forecast in legs]
    return tuple(
        found
        for place in places
        for found in _near_one(place, areas, card.arrival_radius_m, chosen)
    )


def _near_one(
    place: tuple[CardPoint, CardLeg | None, LegForecast | None],
    areas: GroundAreas,
    radius_m: float,
    settings: ForecastSettings,
) -> Iterator[NearArea]:
    point, leg, forecast = place
    kinds: tuple[tuple[Literal["no-go", "hazard"], tuple[GroundArea, ...]], ...] = (
        ("no-go", areas.no_go),
        ("hazard", areas.hazards),
    )
    for kind, area in ((kind, area) for kind, group in kinds for area in group):
        away_m, near_m = away_and_near_m(point, area.shape, radius_m, forecast, settings)
        if away_m == 0.0:
            continue
        walks = None
        if leg is not None and forecast is not None:
            walks = share_that_reaches(leg, forecast, area.shape)
        if away_m < near_m or (walks or 0.0) >= settings.told_reach:
            yield NearArea(
                point=point, leg=leg, area=area.name, kind=kind,
                away_m=away_m, near_m=near_m, walks=walks,
            )  # fmt: skip


def share_that_reaches(leg: CardLeg, forecast: LegForecast, shape: BaseGeometry) -> float | None:
    """Give the share of ordinary walks of a straight leg that come into an area, or to a line.

    A walk is the straight line from the start of the leg to where it ends. None for a leg that
    is not straight, or that goes there as planned.
    """
    import shapely  # noqa: PLC0415

    line = shapely.LineString(leg.line)
    if len(leg.line) > 2 or shape.intersects(line):
        return None
    ends = _ends(leg, forecast)
    reach_m = float(np.hypot(*(ends - leg.line[-1]).T).max())
    if shape.distance(line) > reach_m:
        return 0.0
    starts = np.broadcast_to(leg.line[0], ends.shape)
    walks = shapely.linestrings(np.stack([starts, ends], axis=1))
    shapely.prepare(shape)
    return float(shapely.intersects(shape, walks).mean())


def _ends(leg: CardLeg, forecast: LegForecast) -> FloatArray:
    """Give where ordinary walks end, spread evenly in chance over their normal scatter."""
    toward = forecast.toward_deg
    middle = leg.line[-1] + forecast.along_m * unit_vector(toward)
    middle = middle + forecast.across_m * unit_vector(toward + 90.0)
    deviates = [normal_deviate((n + 0.5) / _DEVIATES) for n in range(_DEVIATES)]
    both = np.stack(np.meshgrid(deviates, deviates), axis=-1).reshape(-1, 2)
    variances, axes = np.linalg.eigh(forecast.covariance_m2)
    return np.asarray(middle + (both * np.sqrt(np.maximum(variances, 0.0))) @ axes.T)


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
