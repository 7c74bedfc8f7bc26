"""Speed and direction moment by moment, against walks whose speed is known."""

from __future__ import annotations

import numpy as np
import pytest

from audit.matching.leg_match import CleanTrack, Gap
from audit.measurement.speed_and_direction import speed_and_direction
from audit.settings import Settings

SETTINGS = Settings().measuring


def straight(speed_m_s=1.25, azimuth_deg=300.0, seconds=200, *, timed=True, gaps=()):
    time_s = np.arange(0.0, seconds + 1)
    turn = np.radians(azimuth_deg)
    nothing = np.full(len(time_s), np.nan)
    return CleanTrack(
        time_s=time_s, east_m=speed_m_s * time_s * np.sin(turn),
        north_m=speed_m_s * time_s * np.cos(turn), elevation_m=nothing, hdop=nothing,
        fix=np.arange(len(time_s)), timed=timed, gaps=gaps, cleaning=(), median_interval_s=1.0,
    )  # fmt: skip


@pytest.mark.parametrize("azimuth_deg", [0.0, 90.0, 300.0, 359.5])
def test_even_walk(azimuth_deg):
    moved = speed_and_direction(straight(azimuth_deg=azimuth_deg), SETTINGS)
    assert moved.speed_m_s == pytest.approx(1.25, abs=1e-9)  # metres a second, to both ends
    assert moved.direction_deg == pytest.approx(azimuth_deg, abs=1e-6)


def test_who_stands_has_no_direction():
    moved = speed_and_direction(straight(speed_m_s=0.0), SETTINGS)
    assert np.all(moved.speed_m_s == 0.0)
    assert np.all(np.isnan(moved.direction_deg))


def test_silence_has_neither():
    gap = Gap(before=100, start_s=100.0, end_s=101.0)
    moved = speed_and_direction(straight(gaps=(gap,)), SETTINGS)
    half = int(SETTINGS.passage_window_s / 2)
    silent = np.isnan(moved.speed_m_s)
    assert silent[101 - half + 1 : 100 + half].all()
    assert not silent[: 100 - half].any()
    assert np.array_equal(silent, np.isnan(moved.direction_deg))


def test_without_times_there_is_a_direction_but_no_speed():
    moved = speed_and_direction(straight(timed=False), SETTINGS)
    assert np.isnan(moved.speed_m_s).all()
    assert moved.direction_deg == pytest.approx(300.0)
