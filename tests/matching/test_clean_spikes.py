"""Planted spikes are found again, and no good fix is lost."""

from __future__ import annotations

import numpy as np
import pytest
from matching.planted_walks import START, FlatGrid, recording, walked, with_spikes

from audit.geodesy.grids import course_grid
from audit.matching.clean_track import clean_track
from audit.readers.gpx_track import read_track
from audit.settings import CleaningSettings

SETTINGS = CleaningSettings()
FRESH = range(50_000, 50_200)  # the thresholds were chosen on seeds 0 to 199


def dropped(time_s, place) -> np.ndarray:
    clean = clean_track(recording(time_s, place[:, 0], place[:, 1]), FlatGrid(), SETTINGS)
    gone = np.ones(len(time_s), dtype=bool)
    gone[clean.fix] = False
    return gone


@pytest.mark.parametrize("every_s", [1, 2, 5, 10, 15, 20, 30])
def test_no_fix_of_a_clean_walk_is_dropped(every_s: int) -> None:
    lost = []
    for seed in FRESH:
        time_s, place, _ = walked(seed, every_s, minutes=20 if every_s < 5 else 90)
        if dropped(time_s, place).any():
            lost.append(seed)
    assert lost == []


@pytest.mark.parametrize(("every_s", "walks"), [(2, 0), (5, 0), (10, 0), (20, 2)])
def test_running_a_leg_or_a_side_trip_costs_no_fix(every_s: int, walks: int) -> None:
    # Beyond 10 s a dash out and back in a few fixes cannot be told from a spike for sure.
    lost = [
        seed
        for seed in FRESH
        if dropped(*walked(seed, every_s, minutes=20 if every_s < 5 else 60, runs=True)[:2]).any()
    ]
    assert len(lost) <= walks


@pytest.mark.parametrize("every_s", [1, 2, 5, 10, 15, 20, 30])
def test_planted_spikes_are_found_again(every_s: int) -> None:
    found = planted = good_lost = 0
    for seed in FRESH:
        time_s, place, rng = walked(seed, every_s, minutes=15 if every_s < 5 else 90)
        spiked = with_spikes(place, rng)
        gone = dropped(time_s, spiked.place)
        found += int((gone & spiked.bad).sum())
        planted += int(spiked.bad.sum())
        good_lost += int((gone & ~spiked.bad).sum())
    assert planted > 500
    assert found / planted >= (0.95 if every_s == 30 else 0.99)
    assert good_lost / planted < 0.01


def line(fixes: int, every_s: float = 1.0, pace_m_s: float = 1.25):
    """An even walk east."""
    walked_s = np.arange(fixes) * every_s
    return START + walked_s, np.column_stack([walked_s * pace_m_s, np.zeros(fixes)])


@pytest.mark.parametrize("length", [1, 2, 3, 4, 5])
@pytest.mark.parametrize("way", [(0, 80), (80, 0), (-80, 0), (-50, -60)])
def test_a_spike_in_any_direction_goes_and_nothing_else(length: int, way: tuple) -> None:
    time_s, place = line(60)
    place[30 : 30 + length] += way
    assert np.flatnonzero(dropped(time_s, place)).tolist() == list(range(30, 30 + length))


def test_six_fixes_are_a_place_and_stay() -> None:
    time_s, place = line(60)
    place[30:36] += (0, 80)
    assert not dropped(time_s, place).any()


def test_a_lasting_shift_stays() -> None:
    time_s, place = line(60)
    for shift in ((0, 60), (60, 0), (-60, 0), (0, 400)):
        moved = place.copy()
        moved[30:] += shift
        assert not dropped(time_s, moved).any()


@pytest.mark.parametrize("every_s", [1, 5, 10, 30])
def test_a_ride_into_a_dead_end_and_back_stays(every_s: int) -> None:
    # 10 m/s out along a road for a minute and a half, turned about at once, and back.
    walked_s = np.arange(0, 400, every_s, dtype=float)
    east = np.interp(walked_s, [0, 100, 190, 280, 400], [0, 125, 1025, 125, 275])
    assert not dropped(START + walked_s, np.column_stack([east, 0 * east])).any()


@pytest.mark.parametrize("length", [1, 3, 5])
def test_strays_before_a_receiver_has_settled_go(length: int) -> None:
    time_s, place = line(60)
    place[:length] += (90, 250)
    assert np.flatnonzero(dropped(time_s, place)).tolist() == list(range(length))


@pytest.mark.parametrize("length", [1, 3, 5])
def test_strays_at_the_end_go(length: int) -> None:
    time_s, place = line(60)
    place[-length:] += (90, 250)
    assert np.flatnonzero(dropped(time_s, place)).tolist() == list(range(60 - length, 60))


def test_strays_on_waking_after_a_silence_go() -> None:
    time_s, place = line(120)
    time_s[60:] += 300.0
    place[60:62] += (-150, 90)
    assert np.flatnonzero(dropped(time_s, place)).tolist() == [60, 61]


def test_fixes_that_agree_with_the_far_side_of_a_silence_stay() -> None:
    time_s, place = line(120)
    time_s[60:] += 60.0
    place[65:] += (0, 90)
    assert not dropped(time_s, place).any()


def test_a_recording_that_ends_in_a_car_keeps_the_ride() -> None:
    time_s, place = line(60)
    place[-4:, 0] = place[-5, 0] + np.array([8.0, 30.0, 60.0, 95.0])
    assert not dropped(time_s, place).any()


def test_what_was_dropped_is_counted() -> None:
    time_s, place = line(60)
    place[30:33] += (0, 80)
    place[0] += (0, 300)
    clean = clean_track(recording(time_s, place[:, 0], place[:, 1]), FlatGrid(), SETTINGS)
    assert [(did.what, did.count) for did in clean.cleaning] == [("spike", 3), ("stray-end", 1)]


@pytest.mark.parametrize(
    ("name", "most"),
    [
        ("hike-handheld-long", 0),
        ("hike-watch-60km", 0),
        ("trek-hr-temp", 0),
        ("pair-ilona-2014", 0),
        ("pair-south-2015", 0),
        ("walk-1hz-woods", 0),
        ("run-watch-hr", 0),
        ("static-receiver", 0),
        ("phone-hdop", 0),
        ("walk-logger-speed", 0),
        ("walk-car-mix", 1),  # leaps 184 m in 2 s on waking
        ("hike-handheld-gaps", 5),  # the jump of 808 m that its description names
    ],
)
def test_real_recordings_lose_nothing_but_leaps(shared_tracks, name: str, most: int) -> None:
    track = read_track(shared_tracks / f"{name}.gpx")
    zone = int((np.median(track.longitude_deg) + 180) // 6) + 1
    south = np.median(track.latitude_deg) < 0
    grid = course_grid(f"EPSG:{(32700 if south else 32600) + zone}")
    clean = clean_track(track, grid, SETTINGS)
    leaps = [did.count for did in clean.cleaning if did.what in {"spike", "stray-end"}]
    assert sum(leaps) == most
