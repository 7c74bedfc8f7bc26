"""Two straight pieces that meet, on walks whose bend is known."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.statistics.two_pieces import best_meeting, fit_meeting


def bent_walk(time_s, bend_s, at, before, after):
    since = (time_s - bend_s)[:, None]
    return (
        np.asarray(at)
        + np.minimum(since, 0) * np.asarray(before)
        + np.maximum(since, 0) * np.asarray(after)
    )


def test_walk_north_then_east_meets_at_its_corner() -> None:
    time_s = np.arange(0.0, 61.0)
    walk = bent_walk(time_s, 30.0, (100.0, 200.0), (0.0, 1.2), (1.2, 0.0))
    found = fit_meeting(time_s, walk, 30.0)
    assert found.position == pytest.approx([100.0, 200.0], abs=1e-4)
    assert found.residual == pytest.approx(0.0, abs=1e-6)


def test_fit_is_that_of_plain_least_squares() -> None:
    rng = np.random.default_rng(2)
    time_s = np.arange(0.0, 41.0, 3.0)
    walk = rng.normal(0.0, 20.0, (len(time_s), 2))
    since = time_s - 17.0
    design = np.column_stack([np.ones_like(since), np.minimum(since, 0), np.maximum(since, 0)])
    expected, left, _, _ = np.linalg.lstsq(design, walk, rcond=None)
    found = fit_meeting(time_s, walk, 17.0)
    assert found.position == pytest.approx(expected[0], abs=1e-6)
    assert found.residual == pytest.approx(left.sum(), rel=1e-9)


@settings(max_examples=40, deadline=None)
@given(
    bend=st.integers(10, 50),
    turn=st.floats(25.0, 335.0),
    first=st.floats(0.0, 360.0),
    speed=st.floats(0.5, 2.0),
)
def test_the_best_of_many_times_is_the_time_of_the_bend(bend, turn, first, speed) -> None:
    time_s = np.arange(0.0, 61.0)
    way = [
        speed * np.array([np.sin(np.radians(a)), np.cos(np.radians(a))])
        for a in (first, first + turn)
    ]
    walk = bent_walk(time_s, float(bend), (0.0, 0.0), *way)
    found = best_meeting(time_s, walk, np.arange(10.0, 51.0))
    assert found.time_s == bend
    assert found.position == pytest.approx([0.0, 0.0], abs=1e-3)


def test_coming_to_rest_is_found_under_noise() -> None:
    rng = np.random.default_rng(8)
    time_s = np.arange(0.0, 61.0)
    walk = bent_walk(time_s, 35.0, (0.0, 0.0), (1.2, 0.0), (0.0, 0.0))
    found = best_meeting(time_s, walk + rng.normal(0, 1.0, walk.shape), np.arange(10.0, 51.0))
    assert found.time_s == pytest.approx(35.0, abs=3.0)  # s
    assert found.position == pytest.approx([0.0, 0.0], abs=1.0)  # m


def test_a_side_without_fixes_does_not_blow_up() -> None:
    time_s = np.arange(0.0, 11.0)
    walk = np.column_stack([1.2 * time_s, 0.0 * time_s])
    found = fit_meeting(time_s, walk, 10.0)
    assert found.position == pytest.approx([12.0, 0.0], abs=1e-3)
