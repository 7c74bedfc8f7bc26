"""The walk on an even time step: places are kept, ends stay, silences are known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import BEGIN, ORIGIN, SETTINGS, HandWalk, clean_of, receiver

from audit.matching.halts import find_movement
from audit.matching.silences import find_unseen_cuts
from audit.matching.walk_samples import per_stretch, sample_walk, smoothed

S = SETTINGS.matching


@pytest.mark.parametrize("every_s", [1, 2, 5, 10, 30, 60])
def test_even_walk_is_given_back_at_every_logging_rate(every_s) -> None:
    clean = HandWalk().walk(60, 900).clean(every_s)
    samples = sample_walk(clean, S)
    along = np.hypot(*(samples.raw - ORIGIN).T)
    expected = 1.25 * (samples.time_s - BEGIN)  # m/s
    assert along[1:-1] == pytest.approx(expected[1:-1], abs=0.01)
    # The first and the last step hold fixes of one side only: up to half a second at each end.
    assert along[[0, -1]] == pytest.approx(expected[[0, -1]], abs=0.7)
    assert np.diff(samples.time_s) == pytest.approx(samples.step_s, abs=1e-6)
    assert S.step_shortest_s <= samples.step_s <= S.step_longest_s
    assert not samples.in_gap.any()
    assert set(samples.stretch.tolist()) == {0}


def test_dense_fixes_are_averaged() -> None:
    # Ten fixes a second of white noise of 4 m: the mean of 20 of them scatters by 0.9 m.
    rng = np.random.default_rng(1)
    time_s = BEGIN + np.arange(0.0, 600.0, 0.1)
    place = np.column_stack([1.25 * (time_s - BEGIN), 0.0 * time_s]) + ORIGIN
    samples = sample_walk(clean_of(time_s, place + rng.normal(0.0, 4.0, place.shape)), S)
    off = samples.raw[:, 1] - ORIGIN[1]
    assert samples.step_s == S.step_shortest_s
    assert off.std() == pytest.approx(4.0 / np.sqrt(20.0), rel=0.2)


def test_silence_breaks_the_recording_and_shorter_ones_are_marked() -> None:
    walk = HandWalk().walk(90, 1000)
    whole = walk.clean()
    keep = np.ones(len(whole), dtype=bool)
    keep[100:160] = False  # a minute
    place = np.column_stack([whole.east_m, whole.north_m])[keep]
    time_s = whole.time_s[keep].copy()
    time_s[time_s > BEGIN + 400] += 3600.0  # an hour
    samples = sample_walk(clean_of(time_s, place), S)
    assert set(samples.stretch.tolist()) == {0, 1}
    assert samples.in_gap.sum() * samples.step_s == pytest.approx(60.0, abs=2 * samples.step_s)
    inside = (samples.time_s > BEGIN + 400) & (samples.time_s < BEGIN + 4000)
    assert not inside.any()  # nothing is invented for the hour


def test_smoothing_holds_the_ends_and_straight_lines() -> None:
    line = np.column_stack([np.arange(50.0), 3.0 * np.arange(50.0)])
    assert smoothed(line, 4.0) == pytest.approx(line, abs=1e-9)
    noisy = line + receiver(3, 5.0)(50)
    found = smoothed(noisy, 4.0)
    assert found[0] == pytest.approx(noisy[0], abs=1e-9)
    assert found[-1] == pytest.approx(noisy[-1], abs=1e-9)


@pytest.mark.parametrize("count", [1, 2, 3, 4, 10])
def test_few_samples_are_smoothed_without_harm(count) -> None:
    values = np.arange(2.0 * count).reshape(-1, 2)
    assert smoothed(values, 20.0).shape == values.shape
    assert np.isfinite(smoothed(values, 20.0)).all()


def test_figures_are_worked_out_stretch_by_stretch() -> None:
    time_s = BEGIN + np.concatenate([np.arange(10.0), 5000.0 + np.arange(6.0)])
    samples = sample_walk(clean_of(time_s, np.zeros((16, 2)) + ORIGIN, every_s=1.0), S)
    sizes = per_stretch(samples, lambda part: np.full(part.stop - part.start, part.start * 1.0))
    assert set(sizes.tolist()) == {0.0, float((samples.stretch == 0).sum())}


def test_long_lines_of_a_recording_without_times_are_no_silences() -> None:
    # A corner that is drawn by its ends alone: 300 m to the east, then 300 m to the north.
    corner = HandWalk().walk(90, 300).walk(0, 300).clean()
    drawn = np.r_[0:60, 180:300, 420 : len(corner)]
    timed = clean_of(corner.time_s[drawn], np.column_stack([corner.east_m, corner.north_m])[drawn])
    bare = replace(timed, timed=False, median_interval_s=None)
    reckoned = [
        find_unseen_cuts(samples, find_movement(samples, S), S)
        for samples in (sample_walk(timed, S), sample_walk(bare, S))
    ]
    assert len(reckoned[0]) > 0
    assert len(reckoned[1]) == 0


@pytest.mark.parametrize("at_s", [299, 300, 301, 302, 303])
def test_a_lone_fix_parts_two_silences_wherever_its_sample_lies(at_s) -> None:
    """Bug: between two samples it was forgotten."""
    walk = HandWalk().walk(90, 900).clean()
    since = walk.time_s - BEGIN
    keep = (since <= 240) | (since == at_s) | (since >= 400)
    place = np.column_stack([walk.east_m, walk.north_m])[keep]
    samples = sample_walk(clean_of(walk.time_s[keep], place), S)
    edges = np.flatnonzero(np.diff(samples.in_gap.astype(int)) == 1)
    assert len(edges) == 2
