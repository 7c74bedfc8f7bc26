"""Corners between sparse fixes of walks that are laid down on paper."""

from __future__ import annotations

import numpy as np
import pytest

from audit.statistics.sparse_corner import sparse_corner

SPEED_M_S = 1.2


def walked(time_s, halt_s: float):
    """North to (0, 0) by 0 s, a halt there, and east from it."""
    north = np.minimum(time_s, 0.0) * SPEED_M_S
    east = np.maximum(time_s - halt_s, 0.0) * SPEED_M_S
    return np.column_stack([east, north])


@pytest.mark.parametrize("halt_s", [0.0, 10.0, 20.0])
@pytest.mark.parametrize("offset_s", [3.0, 11.0, 19.0, 27.0])
def test_the_corner_is_where_both_ways_meet(offset_s, halt_s) -> None:
    time_s = np.arange(-90.0, 120.0, 30.0) + offset_s
    place = walked(time_s, halt_s)
    moments_s = np.linspace(-30.0, 30.0, 13) + halt_s / 2.0
    corner = sparse_corner(time_s, place, moments_s, speed_m_s=SPEED_M_S, speed_sd=0.2, noise_m=1.0)
    assert corner is not None
    straight = [np.interp(halt_s / 2.0, time_s, axis) for axis in place.T]
    assert np.hypot(*corner.place) < 3.0
    assert np.hypot(*corner.place) <= np.hypot(*straight) + 1.0


def test_too_few_fixes_on_a_side_show_no_corner() -> None:
    time_s = np.array([-60.0, -30.0, 0.0, 30.0])
    moments_s = np.linspace(-15.0, 15.0, 7)
    found = sparse_corner(
        time_s[:3], walked(time_s[:3], 0.0), moments_s, speed_m_s=1.2, speed_sd=0.2, noise_m=1.0
    )
    assert found is None


def test_more_noise_leaves_more_open() -> None:
    time_s = np.arange(-90.0, 120.0, 30.0) + 11.0
    moments_s = np.linspace(-30.0, 30.0, 13)
    small, large = (
        sparse_corner(
            time_s, walked(time_s, 0.0), moments_s, speed_m_s=1.2, speed_sd=0.2, noise_m=noise_m
        ).sd_m
        for noise_m in (0.5, 8.0)
    )
    assert small < large
