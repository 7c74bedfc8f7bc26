"""The nearest that a walk came to a point, on lines whose answer is known."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, clean_of, measure
from shapely import LineString, Point

from audit.measurement.nearest_approach import nearest_approach

TIME_S = np.array([0.0, 10.0, 20.0, 30.0])
CORNER = np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 100.0], [0.0, 100.0]])


@pytest.mark.parametrize(
    ("times_s", "target", "metres", "moment_s"),
    [
        ((0.0, 30.0), (30.0, -7.0), 7.0, 3.0),
        ((0.0, 30.0), (104.0, -3.0), 5.0, 10.0),  # past a corner: 3, 4, 5
        ((0.0, 30.0), (95.0, 60.0), 5.0, 16.0),
        ((0.0, 30.0), (-3.0, 104.0), 5.0, 30.0),  # past the end
        ((0.0, 5.0), (95.0, 60.0), 75.0, 5.0),  # he was at (50, 0) then: 45, 60, 75
        ((15.0, 25.0), (95.0, 40.0), np.hypot(5.0, 10.0), 15.0),
        ((12.0, 13.0), (90.0, 25.0), 10.0, 12.5),
        ((10.0, 20.0), (100.0, 0.0), 0.0, 10.0),
    ],
)
def test_distance_and_moment_by_hand(times_s, target, metres, moment_s) -> None:
    found = nearest_approach(clean_of(TIME_S, CORNER), times_s, np.array(target))
    assert found == pytest.approx((metres, moment_s), abs=1e-9)


def test_a_walker_who_stood_has_one_distance() -> None:
    still = clean_of(TIME_S, np.tile([3.0, 4.0], (4, 1)))
    metres, moment_s = nearest_approach(still, (5.0, 25.0), np.zeros(2))
    assert metres == 5.0
    assert 5.0 <= moment_s <= 25.0


def test_any_walk_is_as_near_as_a_general_library_says() -> None:
    rng = np.random.default_rng(4)
    for _ in range(50):
        place = rng.uniform(-100.0, 100.0, (6, 2))
        target = rng.uniform(-150.0, 150.0, 2)
        clean = clean_of(np.cumsum(rng.uniform(1.0, 9.0, 6)), place)
        times_s = (float(clean.time_s[0]), float(clean.time_s[-1]))
        metres, moment_s = nearest_approach(clean, times_s, target)
        assert metres == pytest.approx(LineString(place).distance(Point(target)), abs=1e-9)
        there = [np.interp(moment_s, clean.time_s, column) for column in place.T]
        assert np.hypot(*(there - target)) == pytest.approx(metres, abs=1e-9)


def test_a_rest_at_the_claim_is_no_coming_back_to_the_point() -> None:
    """Bug: what a rest at the claim wandered was taken for coming back to the point."""
    rests = HandWalk().halt(60).mark("start").walk(90, 350).mark("claim").halt(60)
    wandering = np.zeros((len(rests.places), 2))
    wandering[-30:-10, 0] = 25.0  # the receiver, and not the walker
    card = card_of((0, 0), (400, 0))
    clean = rests.clean(noise=lambda _: wandering)
    stayed = measure(card, clean, [rests.portion()], rests.halts).legs[0].measures
    assert stayed.nearest_after_m == stayed.miss_m
    rests.walk(90, 50).halt(60)
    came = measure(card, rests.clean(), [rests.portion()], rests.halts).legs[0].measures
    assert came.nearest_after_m < 1.0
    assert came.came_back(30.0)
