"""Points near no-go areas and hazards, and ordinary walks that reach them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from audit.course_setting.checked_lanes import FindingKind, Lane, LaneFinding
from audit.course_setting.legs_and_areas import placed_finding
from audit.forecast.course_forecast import CourseForecast
from audit.forecast.near_areas import areas_near
from audit.geodesy.areas_on_grid import GroundAreas
from audit.settings import ForecastSettings
from audit.words import sentence

_OF_AREA: dict[Literal["no-go", "hazard"], tuple[FindingKind, FindingKind]] = {
    "no-go": ("point-near-no-go", "walks-reach-no-go"),
    "hazard": ("point-near-hazard", "walks-reach-hazard"),
}


def walks_and_areas(
    lane: Lane, forecast: CourseForecast | None, areas: GroundAreas, settings: ForecastSettings
) -> Iterator[LaneFinding]:
    """Tell what a walk without a mistake comes to, in the order of the points."""
    forecasts = () if forecast is None else forecast.legs
    for one in areas_near(lane.card, forecasts, areas, settings):
        of_point, of_walks = _OF_AREA[one.kind]
        by_leg = "" if one.leg is None else f"leg {one.leg.name}"
        kind, what = (of_point, one.point.name) if one.near else (of_walks, by_leg)
        message = sentence("lanes-said", lane=lane.name, said=one.message)
        at = (lane.card, (one.point.east_m, one.point.north_m))
        yield placed_finding(kind, lane.name, what, message, at)
