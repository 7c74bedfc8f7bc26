"""Unsafe ground by sweeping, against places walked one by one and against sums on paper."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from audit.course_setting.safety_sweep import unsafe_ground

BOX = shapely.box(0.0, 0.0, 1000.0, 1000.0)


def test_a_lake_shadows_all_that_lies_before_it():
    # On paper: south over a lake of 200 m by 100 m, 600 m of ground north of it.
    lake = shapely.box(400.0, 300.0, 600.0, 400.0)
    found = unsafe_ground(BOX, lake, 180.0, 1.0)
    assert found.area_m2 == pytest.approx(200.0 * 600.0)
    assert found.share == pytest.approx(120_000.0 / 980_000.0)
    north_of_it = shapely.box(400.0, 400.0, 600.0, 1000.0)
    assert found.shape.symmetric_difference(north_of_it).area < 1e-6
    assert shapely.Point(found.furthest_m).within(found.shape)


def test_a_bearing_along_the_edge_of_a_lake_is_safe():
    lake = shapely.box(0.0, 0.0, 100.0, 100.0)
    assert unsafe_ground(BOX, lake, 0.0, 1.0) is None  # it lies on the lower edge
    behind = unsafe_ground(BOX, shapely.box(0.0, 900.0, 1000.0, 1000.0), 180.0, 1.0)
    assert behind is None  # nobody comes from beyond it
    outside = unsafe_ground(BOX, shapely.box(0.0, -300.0, 1000.0, -10.0), 180.0, 1.0)
    assert outside is None  # the bounds are left before


def test_bounds_that_turn_back_are_left_at_their_first_edge():
    # On paper: a U open to the south; the bearing south leaves its arms before the lake below.
    u = shapely.Polygon([(0, 0), (300, 0), (300, 500), (600, 500), (600, 0), (900, 0), (900, 900),
                         (0, 900)])  # fmt: skip
    in_arm = shapely.box(50.0, 100.0, 150.0, 200.0)
    across = shapely.box(350.0, 100.0, 550.0, 200.0)
    assert unsafe_ground(u, across, 180.0, 1.0) is None
    assert unsafe_ground(u, in_arm, 180.0, 1.0).area_m2 == pytest.approx(100.0 * 700.0)
    # To the east: from the left arm the way leaves the bounds before it comes to the right arm.
    right_arm = shapely.box(700.0, 100.0, 800.0, 200.0)
    assert unsafe_ground(u, right_arm, 90.0, 1.0).area_m2 == pytest.approx(100.0 * 100.0)


def test_a_line_is_swept_too():
    cliff = shapely.LineString([(200.0, 500.0), (400.0, 500.0)])
    assert unsafe_ground(BOX, cliff, 0.0, 1.0).area_m2 == pytest.approx(200.0 * 500.0)
    along = shapely.LineString([(200.0, 100.0), (200.0, 900.0)])
    assert unsafe_ground(BOX, along, 0.0, 1.0) is None


@pytest.mark.parametrize("azimuth", [0.0, 37.0, 90.0, 143.5, 250.0, 311.0])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_odd_ground_against_places_walked_one_by_one(azimuth, seed):
    rng = np.random.default_rng(seed)
    bounds = star(rng, (500.0, 500.0), 250.0, 600.0, 14)
    area = shapely.union_all(
        [star(rng, tuple(rng.uniform(250.0, 750.0, 2)), 30.0, 120.0, 9) for _ in range(3)]
    )
    found = unsafe_ground(bounds, area, azimuth, 1.0)
    shape = found.shape if found else shapely.Polygon()
    west, south, east, north = bounds.bounds
    wrong = tried = 0
    for place in rng.uniform([west, south], [east, north], (600, 2)):
        point = shapely.Point(place)
        if not bounds.covers(point) or area.covers(point):
            continue
        tried += 1
        wrong += shape.covers(point) != leads_in(point, bounds, area, azimuth)
    assert tried > 150
    assert wrong == 0


def star(rng, middle, least, most, corners) -> shapely.Polygon:
    angle = np.linspace(0.0, 2.0 * math.pi, corners, endpoint=False)
    away = rng.uniform(least, most, corners)
    return shapely.Polygon(
        np.add(middle, away[:, None] * np.column_stack([np.cos(angle), np.sin(angle)]))
    )


def leads_in(point, bounds, area, azimuth_deg) -> bool:
    """Walk from a place on the bearing to the first edge of the bounds; say whether it meets."""
    turn = math.radians(azimuth_deg)
    far = (point.x + 5000.0 * math.sin(turn), point.y + 5000.0 * math.cos(turn))
    way = shapely.LineString([(point.x, point.y), far])
    inside = shapely.get_parts(way.intersection(bounds))
    first = min(inside, key=lambda part: part.distance(point))
    return bool(first.intersects(area))
