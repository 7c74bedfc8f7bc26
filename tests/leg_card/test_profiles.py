"""Heights along a leg: where they are taken, and the climb they make."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from leg_card.plans import A, B, grid_point, leg, plan

from audit.leg_card import work_out_card
from audit.leg_card.profiles import profile, stations, way_of

LINE = np.array([(0.0, 0.0), (300.0, 0.0), (300.0, 410.0)])


def test_stations_hold_the_corners_and_lie_on_the_line():
    along, places = stations(LINE, 25.0)
    assert (along[0], along[-1]) == (0.0, 710.0)
    assert np.diff(along).max() <= 25.0
    assert 300.0 in along
    assert np.hypot(*np.diff(places, axis=0).T).sum() == pytest.approx(710.0)


def test_a_hill_is_climbed_and_descended():
    along = np.linspace(0.0, 1000.0, 41)
    hill = 200.0 + 80.0 * np.sin(np.pi * along / 1000.0)
    ground = profile(along, hill, 2.0)
    assert (ground.climb_m, ground.descent_m) == pytest.approx((80.0, 80.0), abs=0.3)


def test_ripples_are_no_climb():
    along = np.linspace(0.0, 1000.0, 41)
    ground = profile(along, 200.0 + 0.9 * (-1.0) ** np.arange(41), 2.0)
    assert ground.climb_m + ground.descent_m < 2.0


@given(st.lists(st.floats(0.0, 900.0), min_size=2, max_size=40))
def test_climb_less_descent_is_the_difference_of_the_ends(heights):
    along = np.arange(len(heights), dtype=np.float64)
    ground = profile(along, np.array(heights), 2.0)
    assert ground.climb_m - ground.descent_m == pytest.approx(heights[-1] - heights[0], abs=1e-6)
    assert ground.climb_m <= np.maximum(np.diff(heights), 0.0).sum() + 1e-6


def test_a_missing_height_is_no_profile():
    assert profile(np.array([0.0, 25.0]), np.array([1.0, np.nan]), 2.0) is None
    (level,) = work_out_card(plan((A, B))).legs
    assert way_of(level, None).rise_m is None
    assert way_of(level, None).run_m.sum() == pytest.approx(1000.0, abs=0.01)


def test_a_way_is_as_long_as_it_is_walked():
    """Bug: a leg of pieces had the length of its plan on the card, and that of its points in lanes."""
    corner = grid_point("c", 700_000.0, 3_580_500.0).position
    stated = (leg("1", distance_m=990.0), leg("2", "B", "A", distance_m=1300.0, via=(corner,)))
    straight, bent = work_out_card(plan((A, B), stated)).legs
    assert way_of(straight, None).run_m.sum() == pytest.approx(990.0)
    assert way_of(bent, None).run_m.sum() == pytest.approx(500.0 + 866.0254, abs=0.01)
