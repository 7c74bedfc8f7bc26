"""Areas that a faultless walk comes to, against sums that need no program."""

from __future__ import annotations

import pytest
import shapely
from forecast.legs import made_card

from audit.forecast.course_forecast import forecast_course
from audit.forecast.near_areas import areas_near, share_that_reaches
from audit.forecast.normal_in_disk import normal_below
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas

CARD = made_card((0.0, 600.0), (800.0, 600.0))
FORECAST = forecast_course(CARD)
POINT = CARD.legs[0].end


def hazard(*corners: tuple[float, float]) -> GroundArea:
    """Give a line by places from the first leg's point, which is 600 m north of its start."""
    placed = [(POINT.east_m + east, POINT.north_m + north) for east, north in corners]
    return GroundArea(name="Edge", shape=shapely.LineString(placed))


@pytest.mark.parametrize("beyond_m", [20.0, 60.0, 100.0])
def test_share_of_walks_that_cross_a_line_is_that_of_the_longer_ones(beyond_m):
    # A line across the leg, wider than any walk strays, is crossed by whoever goes further.
    edge = hazard((-900.0, beyond_m), (900.0, beyond_m))
    leg, made = CARD.legs[0], FORECAST.legs[0]
    wanted = 1.0 - normal_below((beyond_m - made.along_m) / made.along_sd_m)
    assert share_that_reaches(leg, made, edge.shape) == pytest.approx(wanted, abs=0.015)


def test_a_point_near_a_hazard_is_told_with_its_walks():
    """Bug: a point 16 m from a quarry's edge, arrival radius 30 m, was not told."""
    areas = GroundAreas(hazards=(hazard((-40.0, 16.0), (40.0, 16.0)),))
    found = areas_near(CARD, FORECAST.legs, areas)
    assert [(one.point.name, one.near) for one in found] == [(POINT.name, True)]
    near_m = CARD.arrival_radius_m + FORECAST.legs[0].along_sd_m
    assert found[0].near_m == pytest.approx(near_m, abs=0.1)
    assert found[0].message.startswith(f"{POINT.name} lies 16 m from the hazard Edge")
    assert "in 100 ordinary walks of leg 1 reach it" in found[0].message


def test_a_hazard_beside_a_leg_is_told_where_walks_reach_it():
    # 20 m beside the middle of the leg, where walks scatter by 19 m, and 300 m from the point.
    near = areas_near(CARD, FORECAST.legs, GroundAreas(no_go=(beside(20.0),)))
    assert [(one.near, one.kind) for one in near] == [(False, "no-go")]
    assert near[0].walks == pytest.approx(0.14, abs=0.03)
    assert areas_near(CARD, FORECAST.legs, GroundAreas(no_go=(beside(120.0),))) == ()


def beside(east_m: float) -> GroundArea:
    return hazard((east_m, -310.0), (east_m + 60.0, -300.0))


def test_what_a_leg_goes_through_as_planned_has_no_share_of_walks():
    areas = GroundAreas(hazards=(hazard((-50.0, -20.0), (50.0, -20.0)),))
    (found,) = areas_near(CARD, FORECAST.legs, areas)
    assert found.walks is None
    assert found.near
