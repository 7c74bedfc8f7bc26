"""Use of roads on ways whose truth is planted: lengths by plane geometry, times by the pace walked."""

from __future__ import annotations

import math

import numpy as np
import pytest
from shapely import LineString, MultiLineString, Point, Polygon, STRtree, get_parts, union_all
from shapely.affinity import rotate

from audit.measurement.near_roads import NearRule, _nearest_m, near_roads

NOWHERE = Polygon()
ROAD = LineString([(0, 0), (2000, 0)])
MIDDLE = np.array([1000.0, 0.0])
PACE_M_S = 1.25


def way(*corners: tuple[float, float]) -> tuple[np.ndarray, np.ndarray]:
    """A way at an even pace, one fix in ten seconds."""
    line = LineString(corners)
    along = np.append(np.arange(0.0, line.length, 10.0 * PACE_M_S), line.length)
    places = np.array([line.interpolate(one).coords[0] for one in along])
    return places, along / PACE_M_S


def used(places, times, *, within_m=25.0, sd_m=5.0, crossing=4.0, roads=(("Mill Road", ROAD),),
         points=NOWHERE):  # fmt: skip
    rule = NearRule(within_m=within_m, sd_m=sd_m, whole_error=2.0, crossing=crossing)
    return near_roads([places], [times], roads, points, rule)


def test_a_way_along_a_road_is_told_in_full():
    # In at a right angle, 800 m along the road, out again: 25 m at either end are near too.
    made = used(*way((500, 300), (500, 0), (1300, 0), (1300, -300)))
    assert made.seen_m == pytest.approx(800 + 2 * 25, abs=4)
    assert made.seen_s == pytest.approx(850 / PACE_M_S, abs=4)
    assert made.sure_m == pytest.approx(800 + 2 * 15, abs=4)  # within 25 less twice 5 m
    assert made.roads == ("Mill Road",)


@pytest.mark.parametrize("degrees", [90, 60, 45, 35])
def test_a_crossing_steeper_than_thirty_degrees_is_no_use_of_a_road(degrees):
    away = 400 * np.array([math.cos(math.radians(degrees)), math.sin(math.radians(degrees))])
    made = used(*way(tuple(MIDDLE - away), tuple(MIDDLE + away)))
    assert (made.seen_m, made.sure_m) == (0, 0)


def test_a_way_that_slants_along_a_road_is_one():
    # At 20 degrees the band of 25 m to either side is 50 / sin 20 = 146.2 m long.
    away = 600 * np.array([math.cos(math.radians(20)), math.sin(math.radians(20))])
    made = used(*way(tuple(MIDDLE - away), tuple(MIDDLE + away)))
    assert made.seen_m == pytest.approx(50 / math.sin(math.radians(20)), abs=4)


def test_where_crossing_is_no_excuse_it_is_told():
    made = used(*way((1000, 300), (1000, -300)), crossing=0.0)
    assert made.seen_m == pytest.approx(50, abs=4)


def test_beside_the_road_by_less_than_the_error_is_seen_and_not_sure():
    made = used(*way((300, 20), (1100, 20)))
    assert made.seen_m == pytest.approx(800, abs=1)
    assert made.sure_m == 0
    far = used(*way((300, 26), (1100, 26)))
    assert far.seen_m == 0


def test_what_is_sure_is_longer_than_a_crossing_too():
    """20 m off the road, and for 30 m or 100 m within the 15 m that are beyond error: four times 15."""
    for length_m, sure in ((30, False), (100, True)):
        made = used(*way((300, 20), (690, 20), (700, 5), (700 + length_m, 5), (710 + length_m, 20),
                         (1300, 20)))  # fmt: skip
        assert made.seen_m > 900
        assert (made.sure_m > 0) is sure


def test_nothing_is_sure_where_the_error_is_as_large_as_the_distance():
    made = used(*way((300, 0), (1100, 0)), within_m=10.0, sd_m=5.0)
    assert made.seen_m == pytest.approx(800, abs=1)
    assert made.sure_m == 0


def test_what_lies_about_the_points_does_not_count():
    made = used(*way((300, 0), (1100, 0)), points=Point(700, 0).buffer(55, quad_segs=64))
    # Two parts of 345 m, each longer than a crossing.
    assert made.seen_m == pytest.approx(800 - 110, abs=6)


def test_two_stretches_each_as_short_as_a_crossing_do_not_add_up():
    # Beside the road by 20 m for 60 m, twice.
    made = used(*way((0, 100), (300, 20), (360, 20), (600, 100), (900, 20), (960, 20), (1200, 100)),
                within_m=22.0)  # fmt: skip
    assert made.seen_m == 0


def test_names_of_roads_come_by_how_much_of_them_was_used():
    path = rotate(LineString([(0, 0), (2000, 0)]), 90, origin=(1000, 0))
    made = used(*way((700, 0), (1000, 0), (1000, 900)),
                roads=(("Mill Road", ROAD), ("Long Path", path)))  # fmt: skip
    assert made.roads == ("Long Path", "Mill Road")


def test_without_times_there_are_lengths_only():
    places, _ = way((300, 0), (1100, 0))
    rule = NearRule(within_m=25.0, sd_m=5.0, whole_error=2.0, crossing=4.0)
    made = near_roads([places], None, [("Mill Road", ROAD)], NOWHERE, rule)
    assert made.seen_m == pytest.approx(800, abs=1)
    assert made.seen_s is None


def test_noise_does_not_make_a_road_walker_of_who_stayed_beyond_the_error():
    # 60 m off, receiver error of 5 m with a memory of a minute: never within 25 m.
    rng = np.random.default_rng(3)
    places, times = way((0, 60), (2000, 60))
    noise = np.zeros_like(places)
    for step in range(1, len(noise)):
        noise[step] = 0.85 * noise[step - 1] + 5.0 * math.sqrt(1 - 0.85**2) * rng.normal(size=2)
    assert used(places + noise, times).seen_m == 0


def test_of_many_roads_the_nearest_counts():
    """Bug: each piece of a walk was held against all roads at once, 18 s for 20,000 corners.

    Judge: shapely's distance from the union of all roads.
    """
    rng = np.random.default_rng(4)
    ways = [
        rng.uniform(0, 2000, 2) + np.cumsum(rng.normal(0, 40, (30, 2)), axis=0) for _ in "1234567"
    ]
    roads = [MultiLineString([LineString(one)]) for one in ways]
    middles = rng.uniform(-200, 2200, (400, 2))
    together = union_all(roads)
    expected = [Point(one).distance(together) for one in middles]
    assert _nearest_m(middles, STRtree(get_parts(together))).tolist() == expected
    assert np.isinf(_nearest_m(middles, STRtree([]))).all()
