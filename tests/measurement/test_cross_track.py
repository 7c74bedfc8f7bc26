"""Distance to the right of a line, against a general geometry library."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.measurement.cross_track import measure_cross_track, straight_line

place = st.tuples(st.floats(-500, 500), st.floats(-500, 500))


def test_right_of_a_northward_line_is_east() -> None:
    line = straight_line(np.zeros(2), 0.0, 100.0)
    found = measure_cross_track(line, np.array([[10.0, 20.0], [-5.0, 60.0]]))
    assert found.offset_m == pytest.approx([10.0, -5.0])
    assert found.along_m == pytest.approx([20.0, 60.0])
    assert found.end_m == pytest.approx(-5.0)
    assert found.max_abs_m == pytest.approx(10.0)


def test_straight_line_is_prolonged_at_both_ends() -> None:
    line = straight_line(np.zeros(2), 90.0, 100.0)
    found = measure_cross_track(line, np.array([[-20.0, -3.0], [150.0, 4.0]]))
    assert found.offset_m == pytest.approx([3.0, -4.0])
    assert found.along_m == pytest.approx([-20.0, 150.0])


@settings(max_examples=150, deadline=None)
@given(places=st.lists(place, min_size=2, max_size=12))
def test_offsets_from_a_bent_line_are_the_distances_of_shapely(places) -> None:
    line = np.array([[0.0, 0.0], [100.0, 30.0], [160.0, -80.0], [300.0, 0.0]])
    walk = np.array(places)
    found = measure_cross_track(line, walk)
    # The same line, its ends prolonged far beyond all places.
    first, last = line[0] - line[1], line[-1] - line[-2]
    longer = np.vstack(
        [line[0] + 5000 * first / np.hypot(*first), line, line[-1] + 5000 * last / np.hypot(*last)]
    )
    expected = shapely.distance(shapely.linestrings(longer), shapely.points(walk))
    assert np.abs(found.offset_m) == pytest.approx(expected, abs=1e-6)
    on_line = shapely.line_interpolate_point(shapely.linestrings(longer), found.along_m + 5000.0)
    apart = shapely.distance(on_line, shapely.points(walk))
    assert apart == pytest.approx(expected, abs=1e-6)


def test_mean_square_counts_distance_and_not_fixes() -> None:
    # Half the way on the line, half 10 m beside it; many fixes of a rest do not count.
    line = straight_line(np.zeros(2), 90.0, 200.0)
    on, beside = [[x, 0.0] for x in (0.0, 50.0, 100.0)], [[x, -10.0] for x in (100.0, 150.0, 200.0)]
    once = measure_cross_track(line, np.array(on + beside))
    rested = measure_cross_track(line, np.array(on + [[100.0, 0.0]] * 500 + beside))
    assert rested.rms_m == pytest.approx(once.rms_m, abs=1e-9)
    assert once.rms_m == pytest.approx(10.0 / np.sqrt(2.0), abs=0.1)


def test_walk_that_stays_in_one_place_has_its_offset() -> None:
    found = measure_cross_track(straight_line(np.zeros(2), 0.0, 50.0), np.full((4, 2), 7.0))
    assert found.rms_m == pytest.approx(7.0)
    assert found.end_m == pytest.approx(7.0)


def test_repeated_vertex_does_no_harm() -> None:
    line = np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 0.0], [100.0, 100.0]])
    found = measure_cross_track(line, np.array([[50.0, -5.0], [110.0, 50.0]]))
    assert found.offset_m == pytest.approx([5.0, 10.0])


def test_curves_cannot_be_changed() -> None:
    found = measure_cross_track(straight_line(np.zeros(2), 0.0, 50.0), np.zeros((3, 2)))
    with pytest.raises(ValueError, match="read-only"):
        found.offset_m[0] = 1.0


def test_trap_9_ten_degrees_over_a_kilometre_are_176_metres() -> None:
    # FM 3-25.26 chapter 9 (second hand) says about 180 m in its text, 18 m a degree, and
    # 100 m beside a figure; the exact 1000 m x tan 10 degrees is 176.33 m.
    line = straight_line(np.zeros(2), 300.0, 1000.0)
    aimed_off = straight_line(np.zeros(2), 310.0, 1000.0 / np.cos(np.radians(10.0)))
    found = measure_cross_track(line, aimed_off)
    assert found.end_m == pytest.approx(176.327, abs=0.001)  # metres
    assert found.along_m[-1] == pytest.approx(1000.0, abs=0.001)  # metres
    assert abs(found.end_m - 10 * 18.0) < 4.0  # metres: the rule of thumb
