"""Shares of a way inside a band, and where it was left for good, counted on paper."""

from __future__ import annotations

import numpy as np
import pytest

from audit.measurement.leg_measures import CrossTrack, Place
from audit.measurement.line_kept import measure_line_kept
from audit.settings import MeasuringSettings

S = MeasuringSettings()
ALONG_M = np.array([0.0, 10.0, 20.0, 50.0, 60.0])


def place_at(index: int) -> Place:
    return Place(
        fix=index, time_s=float(index), east_m=0.0, north_m=0.0, longitude_deg=0.0, latitude_deg=0.0
    )


def kept(offsets, sd_m=5.0):
    offset = np.array(offsets, dtype=np.float64)
    curve = CrossTrack(along_m=ALONG_M, offset_m=offset, end_m=0.0, max_abs_m=0.0, rms_m=0.0)
    walk = np.column_stack([ALONG_M, 0.0 * ALONG_M])
    return measure_line_kept(curve, walk, sd_m, place_at, S)


def test_shares_are_of_the_way_and_not_of_the_fixes() -> None:
    """Steps of 10, 10, 30 and 10 m: each fix stands for half of those beside it, of 60 m in all."""
    found = kept([0.0, 9.0, 12.0, 26.0, 9.7])
    assert found.band_m == pytest.approx(9.8)  # 1.96 x 5 m: 95 of 100 of a normal law
    assert found.in_band_share == pytest.approx((5.0 + 10.0 + 5.0) / 60.0)
    assert found.corridor_share == pytest.approx(40.0 / 60.0)  # all but 20 m, of 25 m to a side
    assert found.left is None  # back at the end


@pytest.mark.parametrize(
    ("offsets", "left", "side"),
    [
        ([0.0, 12.0, 3.0, 10.0, 30.0], 3, "right"),
        ([0.0, -3.0, -10.0, -12.0, -9.9], 2, "left"),
        ([12.0, 12.0, 12.0, 12.0, 12.0], 0, "right"),
    ],
)
def test_a_line_is_left_after_the_last_place_inside_its_band(offsets, left, side) -> None:
    found = kept(offsets)
    assert found.left == place_at(left)
    assert found.left_along_m == ALONG_M[left]
    assert found.left_side == side


def test_behind_its_start_nobody_is_on_a_line() -> None:
    """Bug: who walked 400 m on the back azimuth was "on the planned line for over 99 %"."""
    curve = CrossTrack(
        along_m=-ALONG_M, offset_m=0.0 * ALONG_M, end_m=0.0, max_abs_m=0.0, rms_m=0.0
    )
    walk = np.column_stack([ALONG_M, 0.0 * ALONG_M])
    found = measure_line_kept(curve, walk, 5.0, place_at, S)
    assert found.in_band_share == pytest.approx(5.0 / 60.0)  # of 9.8 m the first fix has half of 10
    assert found.left == place_at(1)


def test_who_never_moved_kept_nothing() -> None:
    curve = CrossTrack(
        along_m=np.zeros(2), offset_m=np.zeros(2), end_m=0.0, max_abs_m=0.0, rms_m=0.0
    )
    found = measure_line_kept(curve, np.zeros((2, 2)), 5.0, place_at, S)
    assert found.in_band_share == 0.0
    assert found.left is None
