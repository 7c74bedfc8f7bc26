"""Lines on the grid, measured on paper."""

from __future__ import annotations

import numpy as np
import pytest

from audit.geodesy.along_line import (
    even_places,
    metres_about,
    metres_along,
    metres_long,
    nearest_on_steps,
    off_line_m,
    places_along,
    steps_m,
)

# Legs of right-angled triangles with whole sides: 3-4-5 and 5-12-13.
LINE = np.array([[0.0, 0.0], [30.0, 40.0], [80.0, 160.0]])


def test_a_line_is_as_long_as_its_pieces():
    assert steps_m(LINE).tolist() == [50.0, 130.0]
    assert metres_along(LINE).tolist() == [0.0, 50.0, 180.0]
    assert metres_about(LINE).tolist() == [25.0, 90.0, 65.0]
    assert metres_long(LINE) == 180.0
    assert metres_long(LINE[:1]) == 0.0
    assert steps_m(LINE[:1]).tolist() == []


def test_places_along_a_line_lie_on_its_pieces():
    found = places_along(LINE, metres_along(LINE), np.array([0.0, 25.0, 50.0, 115.0, 180.0]))
    assert found == pytest.approx(
        np.array([[0.0, 0.0], [15.0, 20.0], [30.0, 40.0], [55.0, 100.0], [80.0, 160.0]])
    )


def test_even_places_go_on_round_the_corners_and_end_at_the_last():
    found = even_places(LINE, 50.0)
    assert found[0] == pytest.approx(LINE[0])
    assert found[1] == pytest.approx(LINE[1])
    assert np.hypot(*(found[2] - LINE[1])) == pytest.approx(50.0)
    assert found[-1] == pytest.approx(LINE[-1])
    assert len(found) == 5  # 0, 50, 100 and 150 m along, and the end


def test_a_step_is_nearest_at_its_foot_or_at_one_of_its_ends():
    place = np.array([[-3.0, 4.0], [1.0, 1.0], [-2.0, 0.0], [0.0, -5.0]])
    step = np.array([[6.0, 0.0], [5.0, 0.0], [1.0, 0.0], [0.0, 0.0]])
    share, away_m = nearest_on_steps(place, step)
    assert share == pytest.approx([0.5, 0.0, 1.0, 0.0])
    assert away_m == pytest.approx([4.0, np.sqrt(2.0), 1.0, 5.0])


@pytest.mark.parametrize(
    ("place", "away_m"),
    [((15.0, 20.0), 0.0), ((11.0, 23.0), 5.0), ((-3.0, -4.0), 5.0), ((80.0, 170.0), 10.0)],
)
def test_a_place_lies_off_a_line_by_the_way_to_its_nearest_piece_or_end(place, away_m):
    assert off_line_m(np.array(place), LINE) == pytest.approx(away_m)


def test_a_line_of_no_length_is_as_far_as_its_place():
    assert off_line_m(np.array([3.0, 4.0]), np.zeros((2, 2))) == pytest.approx(5.0)
