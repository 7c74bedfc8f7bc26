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


def test_the_corner_is_the_mean_of_all_pairs_of_moments_by_how_well_they_fit() -> None:
    """Two lines that meet, by least squares, for each moment of coming and later one of going."""
    time_s = np.arange(-90.0, 120.0, 30.0) + 11.0
    place = walked(time_s, 10.0) + np.random.default_rng(3).normal(0.0, 2.0, (7, 2))
    moments_s = np.linspace(-18.0, 28.0, 9)
    weights, corners = [], []
    for come in moments_s:
        for gone in moments_s[moments_s >= come]:
            columns = [np.ones(7), np.minimum(time_s - come, 0.0), np.maximum(time_s - gone, 0.0)]
            design = np.column_stack(columns)
            fit, *_ = np.linalg.lstsq(design, place, rcond=None)
            misfit = ((place - design @ fit) ** 2).sum() / 4.0
            for way in fit[1:]:
                misfit += ((np.hypot(*way) / SPEED_M_S - 1.0) / 0.2) ** 2
            weights.append(np.exp(-0.5 * misfit))
            corners.append(fit[0])
    share = np.array(weights) / sum(weights)
    middle = share @ np.array(corners)
    spread = share @ ((np.array(corners) - middle) ** 2).sum(axis=1)
    found = sparse_corner(time_s, place, moments_s, speed_m_s=SPEED_M_S, speed_sd=0.2, noise_m=2.0)
    assert found.place == pytest.approx(middle)
    assert found.sd_m == pytest.approx(np.sqrt(spread / 2.0))
