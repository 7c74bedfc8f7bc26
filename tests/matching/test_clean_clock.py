"""Late fixes, clocks put back, parts in another order, recordings side by side."""

from __future__ import annotations

import numpy as np
import pytest
from matching.planted_walks import START, FlatGrid, picked, receiver_error, recording, walked

from audit.matching.clean_track import clean_track
from audit.matching.leg_match import CleanTrack
from audit.settings import CleaningSettings
from audit.track import Track

SETTINGS = CleaningSettings()


def cleaned(track: Track) -> CleanTrack:
    return clean_track(track, FlatGrid(), SETTINGS)


def account(clean: CleanTrack) -> list[tuple[str, int]]:
    return [(did.what, did.count) for did in clean.cleaning]


def straight(fixes: int, every_s: float = 5.0, segment=None) -> Track:
    """An even walk east at 1.25 m/s."""
    walked_s = every_s * np.arange(fixes)
    return recording(START + walked_s, 1.25 * walked_s, 0.0 * walked_s, segment)


# Late fixes and repeats


def test_late_fixes_are_put_in_order_and_counted() -> None:
    order = np.arange(60)
    order[[10, 11]] = (11, 10)
    order[[40, 41, 42]] = (41, 42, 40)
    clean = cleaned(picked(straight(60), order))
    assert order[clean.fix].tolist() == list(range(60))
    assert account(clean) == [("out-of-order", 2)]


def test_a_recording_written_backwards_is_turned_round() -> None:
    clean = cleaned(picked(straight(60), np.arange(60)[::-1]))
    assert clean.fix.tolist() == list(range(59, -1, -1))
    assert account(clean) == [("out-of-order", 59)]


def test_of_fixes_with_one_time_the_first_is_kept() -> None:
    track = straight(30)
    times = track.time_s.copy()
    times[11], times[21] = times[10], times[20]
    place = 1.25 * 5.0 * np.arange(30)
    place[21] = place[20]
    clean = cleaned(recording(times, place, 0.0 * place))
    assert clean.fix.tolist() == [n for n in range(30) if n not in {11, 21}]
    assert account(clean) == [("same-time", 2)]
    assert "1 of the others was at another place" in clean.cleaning[0].detail


def test_standing_still_is_no_repeat() -> None:
    track = recording(START + np.arange(60.0), np.zeros(60), np.zeros(60))
    assert len(cleaned(track)) == 60


# Clocks


@pytest.mark.parametrize("back_s", [900.0, 3600.0, 7200.0, 86_400.0, 1024 * 7 * 86_400.0])
@pytest.mark.parametrize("at", [80, 300])
def test_a_clock_put_back_on_the_way_does_not_fold_the_walk(back_s: float, at: int) -> None:
    track = straight(400)
    times = track.time_s.copy()
    times[at:] -= back_s
    clean = cleaned(picked(track, slice(None), times))
    assert clean.fix.tolist() == list(range(400))
    np.testing.assert_allclose(np.diff(clean.time_s), 5.0, rtol=0, atol=1e-6)  # seconds
    # The clock that most fixes have is believed.
    moved = min(at, 400 - at)
    assert account(clean) == [("clock-jump", moved)]
    unmoved = slice(at, None) if at < 200 else slice(None, at)
    np.testing.assert_array_equal(clean.time_s[unmoved], times[unmoved])


def test_a_clock_put_back_twice_runs_on_twice() -> None:
    track = straight(400)
    times = track.time_s.copy()
    times[100:] -= 3600.0
    times[320:] -= 1800.0
    clean = cleaned(picked(track, slice(None), times))
    np.testing.assert_allclose(np.diff(clean.time_s), 5.0, rtol=0, atol=1e-6)  # seconds
    assert account(clean) == [("clock-jump", 180)]


def test_a_clock_put_back_between_parts_of_the_file_is_known_by_the_place() -> None:
    track = straight(400, segment=[0] * 200 + [1] * 200)
    times = track.time_s.copy()
    times[200:] -= 700.0  # the clock now names moments at which he was hundreds of metres away
    clean = cleaned(picked(track, slice(None), times))
    assert clean.fix.tolist() == list(range(400))
    assert account(clean) == [("clock-jump", 200)]


def test_fixes_late_by_minutes_are_no_clock() -> None:
    track = straight(400, every_s=2.0)
    order = np.concatenate([np.arange(100, 160), np.arange(100), np.arange(160, 400)])
    clean = cleaned(picked(track, order))
    assert order[clean.fix].tolist() == list(range(400))
    assert account(clean) == [("out-of-order", 1)]


def test_a_clock_put_forward_is_a_gap() -> None:
    track = straight(400)
    times = track.time_s.copy()
    times[200:] += 3600.0
    clean = cleaned(picked(track, slice(None), times))
    assert clean.cleaning == ()
    assert [gap.before for gap in clean.gaps] == [199]


# Parts and recordings


def test_parts_in_another_order_are_put_in_order_of_time() -> None:
    track = straight(400)
    order = np.concatenate([np.arange(250, 400), np.arange(120), np.arange(120, 250)])
    parts = np.repeat([0, 1, 2], [150, 120, 130])
    mixed = recording(track.time_s[order], track.longitude_deg[order] * 1e5, np.zeros(400), parts)
    clean = cleaned(mixed)
    assert order[clean.fix].tolist() == list(range(400))
    assert account(clean) == [("parts-out-of-order", 1)]


def two_receivers(every_s: int, apart_m: float, seed: int = 74_000):
    """One walk under two receivers: the first at every second fix of the second."""
    time_s, place, rng = walked(seed, 1, minutes=60)
    first, second = time_s[:: 2 * every_s], time_s[::every_s]
    other = place + apart_m
    for axis in range(2):
        other[:, axis] += receiver_error(len(place), 3.0, 30.0, rng)
    a, b = place[:: 2 * every_s], other[::every_s]
    return (
        recording(
            np.concatenate([first, second]),
            np.concatenate([a[:, 0], b[:, 0]]),
            np.concatenate([a[:, 1], b[:, 1]]),
            [0] * len(first) + [1] * len(second),
        ),
        len(first),
        len(second),
    )


@pytest.mark.parametrize("apart_m", [0.0, 2000.0])
def test_of_recordings_at_the_same_time_the_denser_is_kept(apart_m: float) -> None:
    track, few, many = two_receivers(5, apart_m)
    clean = cleaned(track)
    assert clean.fix.tolist() == list(range(few, few + many))
    assert account(clean) == [("side-by-side", few)]
    said = float(clean.cleaning[0].detail.split("usually ")[1].split(" m")[0])
    assert said == pytest.approx(np.hypot(apart_m, apart_m), abs=10.0)  # metres


def test_two_recordings_stuck_together_in_one_part_are_known_too() -> None:
    track, few, many = two_receivers(5, 0.0)
    together = recording(track.time_s, track.longitude_deg * 1e5, track.latitude_deg * 1e5)
    clean = cleaned(together)
    assert clean.fix.tolist() == list(range(few, few + many))
    assert account(clean) == [("side-by-side", few)]


def test_a_saved_copy_of_the_same_walk_is_left_out() -> None:
    track = straight(200)
    twice = np.concatenate([np.arange(200), np.arange(200)])
    parts = np.repeat([0, 1], 200)
    clean = cleaned(
        recording(track.time_s[twice], track.longitude_deg[twice] * 1e5, np.zeros(400), parts)
    )
    assert clean.fix.tolist() == list(range(200))
    assert account(clean) == [("side-by-side", 200)]
    assert "usually 0 m apart" in clean.cleaning[0].detail


def test_the_second_receiver_fills_in_where_the_first_is_silent() -> None:
    watch = np.concatenate([np.arange(0, 300), np.arange(500, 700)])
    phone = np.arange(250, 600, 3)
    fixes = np.concatenate([watch, phone])
    track = recording(
        START + 5.0 * fixes,
        6.25 * fixes,
        np.where(np.arange(len(fixes)) < 500, 0.0, 8.0),
        [0] * 500 + [1] * len(phone),
    )
    clean = cleaned(track)
    kept = fixes[clean.fix]
    assert set(watch) <= set(kept)
    assert [n for n in kept if 300 <= n < 500] == [n for n in phone if 300 <= n < 500]
    assert clean.gaps == ()


def test_pausing_within_a_second_is_no_second_receiver() -> None:
    track = straight(400, every_s=1.0, segment=np.repeat(np.arange(8), 50))
    clean = cleaned(track)
    assert clean.fix.tolist() == list(range(400))
    assert clean.cleaning == ()


@pytest.mark.parametrize("parts", [400, 4000])
def test_very_many_parts_at_the_same_time_are_bounded_work(parts: int) -> None:
    # Each part of 100 fixes goes on for half a part into the next.
    step = np.arange(100.0 * parts)
    walked_s = 50.0 * (step // 100) + step % 100
    track = recording(START + walked_s, 1.25 * walked_s, 0.0 * walked_s, step // 100)
    clean = cleaned(track)
    np.testing.assert_allclose(np.diff(clean.time_s), 1.0, rtol=0, atol=1e-6)  # seconds
    assert (account(clean)[0][0] == "mixed-by-time") == (parts > SETTINGS.most_side_by_side)
