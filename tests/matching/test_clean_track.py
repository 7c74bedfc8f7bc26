"""From recording to walk: what is kept, on what time axis, with what account."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from matching.planted_walks import START, FlatGrid, picked, recording, walked, with_spikes
from real.recordings import MENDED, REAL

from audit.errors import InputRefusedError
from audit.geodesy.grids import course_grid
from audit.matching.clean_track import clean_track
from audit.matching.leg_match import CleanTrack
from audit.readers.gpx_track import read_track
from audit.settings import CleaningSettings
from audit.track import Track

SETTINGS = CleaningSettings()


def cleaned(track: Track) -> CleanTrack:
    return clean_track(track, FlatGrid(), SETTINGS)


def east_walk(times, **columns) -> Track:
    """A fix every 1.25 m to the east, at these times."""
    return recording(times, 1.25 * np.arange(len(times)), np.zeros(len(times)), **columns)


def account(clean: CleanTrack) -> list[tuple[str, int]]:
    return [(did.what, did.count) for did in clean.cleaning]


def test_a_sound_recording_is_kept_whole_and_in_metres_of_the_grid() -> None:
    track = east_walk(START + np.arange(30.0))
    clean = cleaned(track)
    assert clean.timed
    assert clean.cleaning == ()
    assert clean.gaps == ()
    assert clean.median_interval_s == 1.0
    np.testing.assert_array_equal(clean.fix, np.arange(30))
    np.testing.assert_array_equal(clean.time_s, track.time_s)
    np.testing.assert_allclose(clean.east_m, 1.25 * np.arange(30), rtol=0, atol=1e-9)  # metres


def test_elevation_and_dilution_go_with_their_fixes() -> None:
    track = east_walk(START + np.array([0.0, 2.0, 1.0, 3.0]))
    track = replace(
        track, elevation_m=np.array([10.0, 12.0, 11.0, np.nan]), hdop=np.array([1.0, 3.0, 2.0, 4.0])
    )
    clean = cleaned(track)
    assert clean.fix.tolist() == [0, 2, 1, 3]
    np.testing.assert_array_equal(clean.elevation_m, [10.0, 11.0, 12.0, np.nan])
    np.testing.assert_array_equal(clean.hdop, [1.0, 2.0, 3.0, 4.0])


def test_the_arrays_cannot_be_changed() -> None:
    clean = cleaned(east_walk(START + np.arange(5.0)))
    for name in ("time_s", "east_m", "north_m", "elevation_m", "hdop", "fix"):
        assert not getattr(clean, name).flags.writeable


def test_fixes_beyond_the_grid_are_left_out_and_counted() -> None:
    track = recording(START + np.arange(3.0), [0.0, np.nan, 2.5], [0.0, 0.0, 0.0])
    clean = cleaned(track)
    assert clean.fix.tolist() == [0, 2]
    assert account(clean) == [("off-grid", 1)]


def test_a_recording_wholly_beyond_the_grid_is_one_sentence() -> None:
    track = recording(START + np.arange(2.0), [np.nan, np.nan], [0.0, 0.0])
    with pytest.raises(InputRefusedError, match="lies wholly outside of what the grid"):
        cleaned(track)


# Gaps


@pytest.mark.parametrize(
    ("every_s", "silence_s", "gap"),
    [
        (1, 20, False),
        (1, 21, True),
        (5, 20, False),
        (5, 21, True),
        (10, 40, False),
        (10, 41, True),
        (30, 120, False),
        (30, 121, True),
    ],
)
def test_a_gap_is_longer_than_20_s_and_than_four_intervals(every_s, silence_s, gap) -> None:
    times = START + every_s * np.arange(41.0)
    times[20:] += silence_s - every_s
    clean = cleaned(recording(times, np.zeros(41), np.zeros(41)))
    assert [(one.before, one.start_s, one.end_s) for one in clean.gaps] == (
        [(19, times[19], times[20])] if gap else []
    )


def test_fixes_left_out_as_a_spike_can_leave_a_gap() -> None:
    times = START + 30.0 * np.arange(60)
    place = np.column_stack([35.0 * np.arange(60), np.zeros(60)])
    place[30:35] += (0.0, 500.0)
    clean = cleaned(recording(times, place[:, 0], place[:, 1]))
    assert account(clean) == [("spike", 5)]
    assert [(one.before, one.end_s - one.start_s) for one in clean.gaps] == [(29, 180.0)]


# Recordings without times


def test_without_times_the_axis_is_an_even_walk_in_the_order_of_the_file() -> None:
    track = recording([np.nan] * 4, [0.0, 12.0, 12.0, 12.0], [0.0, 0.0, 0.0, 6.0])
    clean = cleaned(track)
    assert not clean.timed
    assert clean.median_interval_s is None
    assert clean.gaps == ()
    assert clean.fix.tolist() == [0, 1, 3]
    np.testing.assert_allclose(clean.time_s, [0.0, 10.0, 15.0], rtol=0, atol=1e-9)  # at 1.2 m/s
    assert account(clean) == [("no-times", 4), ("same-place", 1)]


@given(
    st.lists(
        st.floats(min_value=-1e-7, max_value=1e-7) | st.floats(min_value=-0.1, max_value=0.1),
        min_size=1,
        max_size=40,
    )
)
def test_the_axis_of_an_even_walk_rises_strictly_however_small_the_steps(steps: list) -> None:
    degrees = np.cumsum(steps)
    clean = cleaned(recording([np.nan] * len(steps), degrees * 1e5, degrees))
    assert (np.diff(clean.time_s) > 0.0).all()


def test_a_clock_that_stands_still_is_no_clock() -> None:
    times = np.full(50, START)
    times[-2:] += (1.0, 2.0)
    clean = cleaned(recording(times, 30.0 * np.arange(50), np.zeros(50)))
    assert not clean.timed
    assert clean.fix.tolist() == list(range(50))
    assert account(clean) == [("no-times", 50)]
    assert "50 fixes carry only 3 different times" in clean.cleaning[0].detail


def test_five_fixes_a_second_with_whole_seconds_keep_their_times() -> None:
    times = START + np.floor(np.arange(500) / 5.0)
    clean = cleaned(recording(times, 0.25 * np.arange(500), np.zeros(500)))
    assert clean.timed
    assert clean.fix.tolist() == list(range(0, 500, 5))
    assert account(clean) == [("same-time", 400)]


def test_times_before_satellites_do_no_harm_but_are_said() -> None:
    times = -2_147_483_648.0 + np.arange(30.0)  # 1901-12-13, where 32-bit clocks wrap
    clean = cleaned(east_walk(times))
    assert clean.timed
    np.testing.assert_array_equal(clean.time_s, times)
    assert account(clean) == [("clock-not-set", 30)]


def test_fixes_from_before_the_clock_was_set_do_not_stretch_the_walk() -> None:
    times = START + np.arange(30.0)
    times[:2] = (0.0, 1.0)  # 1970
    clean = cleaned(east_walk(times))
    assert clean.fix.tolist() == list(range(2, 30))
    assert account(clean) == [("clock-not-set", 2), ("no-time", 2)]


def test_times_in_2069_are_times() -> None:
    clean = cleaned(east_walk(3_124_000_000.0 + np.arange(30.0)))
    assert clean.timed
    assert clean.cleaning == ()


def test_a_few_fixes_without_times_are_left_out_and_counted() -> None:
    times = START + np.arange(30.0)
    times[[3, 17]] = np.nan
    clean = cleaned(east_walk(times))
    assert clean.fix.tolist() == [n for n in range(30) if n not in {3, 17}]
    assert account(clean) == [("no-time", 2)]


def test_a_saved_track_without_times_beside_a_timed_one_is_left_out_by_name() -> None:
    times = np.concatenate([np.full(40, np.nan), START + 5.0 * np.arange(30)])
    east = np.concatenate([5.0 * np.arange(40), 6.25 * np.arange(30)])
    track = recording(times, east, np.zeros(70), segment=[1] * 40 + [2] * 30)
    clean = cleaned(track)
    assert clean.timed
    assert clean.fix.tolist() == list(range(40, 70))
    assert account(clean) == [("no-time", 40)]
    assert "part 2 of the file has no times at all" in clean.cleaning[0].detail


def test_a_scrap_with_times_does_not_outweigh_the_walk_without() -> None:
    times = np.concatenate([np.full(400, np.nan), START + 5.0 * np.arange(30)])
    east = np.concatenate([5.0 * np.arange(400), 6.25 * np.arange(30)])
    clean = cleaned(recording(times, east, np.zeros(430), segment=[0] * 400 + [1] * 30))
    assert not clean.timed
    assert clean.fix.tolist() == list(range(400))
    assert account(clean) == [("few-times", 30)]


def test_the_hike_with_a_saved_track_is_taken_from_its_timed_logs(shared_tracks) -> None:
    # shared/tracks/README.md: the saved track has no times, 358 of 871 points.
    track = read_track(shared_tracks / "hike-karst.gpx")
    clean = clean_track(track, course_grid("EPSG:32633"), SETTINGS)
    assert clean.timed
    assert account(clean) == [("no-time", 358)]
    assert np.isfinite(track.time_s[clean.fix]).all()


def test_a_single_fix_is_a_walk_of_one() -> None:
    clean = cleaned(recording([START], [5.0], [6.0]))
    assert (len(clean), clean.timed, clean.time_s.tolist()) == (1, False, [0.0])
    assert cleaned(recording([np.nan], [5.0], [6.0])).time_s.tolist() == [0.0]


# Whatever is recorded


def again(track: Track, clean: CleanTrack) -> Track:
    """The recording that holds what cleaning kept, at the times that it gave."""
    nothing = np.full(len(track), np.nan)
    times = nothing.copy()
    if clean.timed:
        times[clean.fix] = clean.time_s
    return picked(track, clean.fix, times)


def assert_sound(track: Track, clean: CleanTrack) -> None:
    assert 1 <= len(clean) <= len(track)
    assert (np.diff(clean.time_s) > 0.0).all()
    assert np.isfinite(clean.east_m).all()
    assert np.isfinite(clean.north_m).all()
    assert len(np.unique(clean.fix)) == len(clean)
    left_out = (
        "off-grid",
        "no-time",
        "few-times",
        "side-by-side",
        "same-time",
        "same-place",
        "spike",
        "stray-end",
    )
    counted = sum(did.count for did in clean.cleaning if did.what in left_out)
    assert counted == len(track) - len(clean)
    assert all(did.detail.endswith(".") for did in clean.cleaning)


def assert_settled(grid, track: Track, clean: CleanTrack) -> None:
    second = clean_track(again(track, clean), grid, SETTINGS)
    np.testing.assert_array_equal(second.fix, np.arange(len(clean)))
    np.testing.assert_array_equal(second.time_s, clean.time_s)
    assert second.gaps == clean.gaps


@pytest.mark.parametrize("name", [*MENDED, *REAL])
def test_every_real_recording_becomes_a_walk_and_stays_one(shared_tracks, name: str) -> None:
    track = read_track(shared_tracks / f"{name}.gpx")
    zone = min(60, int((np.median(track.longitude_deg) + 180) // 6) + 1)
    south = np.median(track.latitude_deg) < 0
    grid = course_grid(f"EPSG:{(32700 if south else 32600) + zone}")
    clean = clean_track(track, grid, SETTINGS)
    assert_sound(track, clean)
    assert_settled(grid, track, clean)


times = (
    st.none()
    | st.floats(min_value=START, max_value=START + 5000.0)
    | st.sampled_from([-2_147_483_648.0, 0.0, START, START + 1.0, 3_124_000_000.0])
)
metres = st.floats(min_value=-500.0, max_value=500.0) | st.sampled_from([0.0, 1.0, 1e6])


@settings(max_examples=300, deadline=None)
@given(st.lists(st.tuples(times, metres, metres, st.integers(0, 3)), min_size=1, max_size=30))
def test_no_recording_whatever_its_times_and_places_fails(rows: list) -> None:
    rows.sort(key=lambda row: row[3])
    time_s = np.array([np.nan if row[0] is None else row[0] for row in rows])
    _, east, north, segment = zip(*rows, strict=True)
    track = recording(time_s, east, north, segment)
    assert_sound(track, cleaned(track))


@pytest.mark.parametrize("every_s", [1, 7, 30])
def test_cleaning_twice_changes_nothing(every_s: int) -> None:
    for seed in range(70_000, 70_020):
        time_s, place, rng = walked(seed, every_s, minutes=15 if every_s == 1 else 90)
        place = with_spikes(place, rng, every_fixes=25).place
        track = recording(time_s, place[:, 0], place[:, 1])
        assert_settled(FlatGrid(), track, cleaned(track))


@pytest.mark.parametrize("every_s", [1, 10])
def test_the_order_of_the_lines_does_not_matter(every_s: int) -> None:
    for seed in range(71_000, 71_010):
        time_s, place, rng = walked(seed, every_s, minutes=15 if every_s == 1 else 60)
        place = with_spikes(place, rng).place
        track = recording(time_s, place[:, 0], place[:, 1])
        clean = cleaned(track)
        for order in (rng.permutation(len(track)), np.arange(len(track))[::-1]):
            other = cleaned(picked(track, order))
            np.testing.assert_array_equal(order[other.fix], clean.fix)
            np.testing.assert_array_equal(other.time_s, clean.time_s)
            assert other.gaps == clean.gaps


def test_shifting_in_time_and_place_shifts_the_walk() -> None:
    for seed in range(72_000, 72_010):
        time_s, place, rng = walked(seed, 5, minutes=60)
        place = with_spikes(place, rng).place
        clean = cleaned(recording(time_s, place[:, 0], place[:, 1]))
        moved = cleaned(recording(time_s + 86_400.0, place[:, 0] + 4096.0, place[:, 1] - 1024.0))
        np.testing.assert_array_equal(moved.fix, clean.fix)
        np.testing.assert_allclose(moved.east_m, clean.east_m + 4096.0, rtol=0, atol=1e-6)


def test_thinning_a_clean_walk_leaves_it_clean() -> None:
    for seed in range(73_000, 73_010):
        time_s, place, _ = walked(seed, 1, minutes=60)
        for every in (1, 2, 3, 5, 8, 13, 30):
            thin = recording(time_s[::every], place[::every, 0], place[::every, 1])
            assert cleaned(thin).cleaning == ()
