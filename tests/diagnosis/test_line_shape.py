"""How a line was held, on ways whose headings are known."""

from __future__ import annotations

import numpy as np
import pytest

from audit.diagnosis.line_shape import _even_nats, _other_bearing, line_shape
from audit.settings import LineShapeSettings

S = LineShapeSettings()


def way(headings_deg):
    """A way of one step of 8 m on each of these headings."""
    bearing = np.radians(headings_deg)
    moves = S.step_m * np.column_stack([np.sin(bearing), np.cos(bearing)])
    return np.concatenate([np.zeros((1, 2)), np.cumsum(moves, axis=0)])


def test_an_even_bend_counts_against_the_square_of_the_wander():
    bend = np.linspace(-15.0, 15.0, 60)
    aside = np.tile([1.0, -1.0], 30)
    some, twice = (_even_nats(bend + wander * aside, S) for wander in (8.0, 16.0))
    assert some / twice == pytest.approx(4.0, rel=0.1)


def test_a_stretch_on_another_bearing_is_found_with_its_length():
    headings = np.full(60, 90.0)
    headings[20:40] = 120.0
    other = line_shape(way(headings), 3.0, S).other
    assert other.turn_deg == pytest.approx(30.0, abs=0.5)
    assert other.length_m == pytest.approx(20 * S.step_m)
    assert other.nats > 10.0


def test_a_step_backwards_counts_as_one_that_is_clipped():
    """Bug: it shifted the mean that the clipped headings of the rest were held against."""
    off = np.tile([4.0, -4.0], 30)
    off[20:40] += 30.0
    backwards, clipped = off.copy(), off.copy()
    backwards[5], clipped[5] = 180.0, S.clipped_deg
    assert _other_bearing(backwards, 3.0, S) == _other_bearing(clipped, 3.0, S)
