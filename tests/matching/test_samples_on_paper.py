"""Smoothing, speeds, silences and cuts put to the second, on figures worked out by hand."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest
from matching.drawn_samples import drawn, samples_of
from measurement.hand_made import BEGIN, SETTINGS, HandWalk

from audit.matching import halts
from audit.matching.cuts import _near, _rest, find_cuts
from audit.matching.halts import find_movement
from audit.matching.portions import find_portions
from audit.matching.refine_cuts import _thinned, refine_cut
from audit.matching.walk_samples import _sample_stretch, smoothed

S = SETTINGS.matching


@pytest.mark.parametrize("width", [0.3, 0.5, 2.0, 2.4])
def test_a_place_is_smoothed_by_a_bell_curve_of_three_widths(width) -> None:
    """Of one place aside each neighbour takes its share of the bell curve, whole in all."""
    places = np.zeros((61, 2))
    places[30] = 1.0, -2.0
    off = np.arange(61) - 30.0
    bell = np.exp(-0.5 * (off / width) ** 2) * (np.abs(off) <= np.ceil(3.0 * width))
    found = smoothed(places, width)
    assert found == pytest.approx(np.outer(bell / bell.sum(), [1.0, -2.0]), abs=1e-12)


def test_too_little_to_smooth_is_left_as_it_is() -> None:
    places = np.array([[0.0, 0.0], [1.0, 5.0], [0.0, 0.0], [0.0, 1.0]])
    assert smoothed(places, 0.29).tolist() == places.tolist()
    assert smoothed(places[:2], 5.0).tolist() == places[:2].tolist()
    # Three places are enough: the middle one gives a third and more of its way aside.
    assert smoothed(places[:3], 1.0)[1].tolist() != [1.0, 5.0]


@pytest.mark.parametrize(("window_s", "half"), [(4.0, 1), (12.0, 3), (30.0, 8), (1.0, 1)])
def test_the_speed_is_that_over_the_window_about_a_sample(window_s, half) -> None:
    """Of a walk of i cubed metres, between i - h and i + h: 3 i i + h h metres a sample."""
    number = np.arange(40.0)
    speed = halts._speed(samples_of(np.column_stack([number**3, 0.0 * number])), window_s)
    inner = number[half : 40 - half]
    assert speed[half : 40 - half] == pytest.approx((3.0 * inner**2 + half**2) / 2.0)
    assert speed[0] == pytest.approx(half**2 / 2.0)  # shorter at the ends
    assert speed[-1] == pytest.approx((39.0**3 - (39.0 - half) ** 3) / half / 2.0)


def test_silence_lies_between_the_cuts_before_and_after_it() -> None:
    """Half an hour after the fiftieth sample, ten minutes after the hundredth."""
    samples = drawn((300.0, 0.0, 150))
    number = np.arange(151)
    stretch = (number > 50).astype(np.int64) + (number > 100)
    time_s = samples.time_s + 1800.0 * (number > 50) + 600.0 * (number > 100)
    samples = samples_of(samples.smooth, stretch=stretch)
    object.__setattr__(samples, "time_s", time_s)
    movement = find_movement(samples, S)
    cuts = find_cuts(samples, movement, np.empty((0, 2)), S)
    made = find_portions(samples, movement, cuts, 400.0)
    assert len(made) > 10
    begin, end = cuts.sample[made.first], cuts.sample[made.second]
    silent = 1802.0 * ((begin <= 50) & (end > 50)) + 602.0 * ((begin <= 100) & (end > 100))
    assert made.silence_s.tolist() == silent.tolist()


def test_pairs_that_are_asked_for_are_described_once_however_far() -> None:
    samples = drawn((700.0, 0.0, 350))
    movement = find_movement(samples, S)
    cuts = find_cuts(samples, movement, np.empty((0, 2)), S)
    reach_m = float(cuts.path_m[3] - cuts.path_m[0])
    plain = find_portions(samples, movement, cuts, reach_m)
    near, far = [0, 3], [0, len(cuts) - 1]
    made = find_portions(samples, movement, cuts, reach_m, np.array([near, far]))
    pairs = list(zip(made.first.tolist(), made.second.tolist(), strict=True))
    assert sorted(pairs) == sorted([*zip(plain.first.tolist(), plain.second.tolist(), strict=True),
                                    tuple(far)])  # fmt: skip
    assert np.all(np.diff(made.second) >= 0)


def test_a_walk_is_cut_at_its_first_and_its_last_sample() -> None:
    """And not at those beside them, whatever else stands there."""
    samples = drawn((0.0, 300.0, 150), (3.0, 0.0, 1))
    cuts = find_cuts(samples, find_movement(samples, S), np.empty((0, 2)), S)
    assert cuts.sample[[0, -1]].tolist() == [0, 151]
    assert np.diff(cuts.sample)[[0, -1]].min() > 1


def test_rest_is_that_of_the_halt_at_whose_edge_a_cut_stands() -> None:
    """Halts of 20, 60 and 40 s, four samples apart; edges count within two samples."""
    samples = drawn((200.0, 0.0, 100))
    movement = SimpleNamespace(halts=np.array([[10, 20], [24, 54], [58, 78]]))
    at = np.array([0, 8, 12, 15, 20, 22, 26, 40, 54, 56, 57, 76, 80, 81])
    rest = [0, 20, 20, 0, 20, 60, 60, 0, 60, 60, 40, 40, 40, 0]
    assert _rest(at, samples, movement, 2.0).tolist() == rest
    assert (
        _rest(at, samples, SimpleNamespace(halts=np.empty((0, 2), int)), 2.0).tolist() == [0] * 14
    )
    begins = [False, True, True, False, False, True, True, False, False, True, True, *[False] * 3]
    assert _near(at, movement.halts[:, 0], 2.0).tolist() == begins
    assert not _near(at, np.empty(0, int), 2.0).any()


def bent(seconds: int):
    """A bend after 200 m, two minutes and forty seconds, and the cut six seconds behind it."""
    clean = HandWalk().walk(90, 200).walk(0, 200).clean()
    bend_s = BEGIN + 160.0
    # With the fix at the end of the window there are one more than it has seconds.
    return refine_cut(clean, bend_s + 1.0, bend_s - 1.0, bend_s - 1.0 + seconds, S), bend_s


def test_a_bend_shows_in_five_fixes_and_not_in_four() -> None:
    found, bend_s = bent(S.refine_least_fixes - 1)
    assert found == pytest.approx(bend_s, abs=0.25)
    found, bend_s = bent(S.refine_least_fixes - 2)
    assert found == bend_s + 1.0


def test_many_fixes_are_thinned_evenly_with_both_ends() -> None:
    time_s = np.arange(101.0)
    thin, place = _thinned(time_s, np.column_stack([time_s, -time_s]), 11)
    assert thin.tolist() == list(range(0, 101, 10))
    assert place.tolist() == [[one, -one] for one in thin]
    assert len(_thinned(time_s, np.zeros((101, 2)), 101)[0]) == 101


def test_between_fixes_far_apart_nothing_was_seen() -> None:
    """Every two seconds, but for a silence from the 40th to the 100th second."""
    time_s = np.concatenate([np.arange(0.0, 41.0, 2.0), np.arange(100.0, 141.0, 2.0)])
    place = np.column_stack([time_s, 0.0 * time_s])
    grid_s, raw, in_gap = _sample_stretch(time_s, place, 2.0, 20.0)
    assert grid_s.tolist() == np.arange(0.0, 141.0, 2.0).tolist()
    assert raw[:, 0] == pytest.approx(grid_s)
    assert in_gap.tolist() == ((grid_s > 40.0) & (grid_s < 100.0)).tolist()
    # An interval of just so many seconds is none.
    assert not _sample_stretch(time_s, place, 2.0, 60.0)[2].any()


def test_a_walk_at_the_fastest_pace_on_foot_is_none() -> None:
    """2.5 m/s and over tells nothing of the usual pace; below, the walk is its own measure."""
    for step_m, walking in ((5, S.usual_walk_m_s), (4, 2.0)):
        along = float(step_m) * np.arange(200.0)
        found = find_movement(samples_of(np.column_stack([along, 0.0 * along])), S)
        assert found.walking_m_s == walking


def test_the_ends_of_a_track_are_within_it() -> None:
    clean = HandWalk().walk(90, 100).clean()
    assert [clean.holds(BEGIN + second) for second in (-0.5, 0.0, 40.0, 80.0, 80.5)] == [
        False, True, True, True, False,
    ]  # fmt: skip
