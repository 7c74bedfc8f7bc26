"""Speeds, halts, rides and noise of samples that are given one by one."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from matching.drawn_samples import drawn, samples_of
from measurement.hand_made import SETTINGS

from audit.matching.halts import find_movement

# A window of two samples to either side, so that edges can be counted.
S = replace(SETTINGS.matching, speed_window_s=8.0, step_shortest_s=2.0)


def test_an_even_walk_has_its_speed_path_and_no_halt() -> None:
    found = find_movement(drawn((240.0, 320.0, 100)), S)
    assert found.walking_m_s == pytest.approx(2.0)
    assert found.path_m == pytest.approx(np.arange(101) * 4.0)
    assert not found.halted.any()
    assert found.halts.shape == (0, 2)
    assert found.halted_s[-1] == found.ridden_m[-1] == found.noise_from_s == 0.0


def test_the_usual_speed_is_that_of_the_faster_quarter_of_walking() -> None:
    """A quarter at 1.5 m/s, the rest at 1 m/s; standing and riding do not count."""
    slow, fast = (300.0, 0.0, 150), (0.0, 300.0, 100)
    found = find_movement(drawn(slow, fast, (0.0, 0.0, 100), (0.0, 2000.0, 100)), S)
    assert found.walking_m_s == pytest.approx(1.5, abs=0.01)
    assert find_movement(drawn((0.0, 0.0, 100)), S).walking_m_s == S.usual_walk_m_s


def test_a_halt_is_where_the_walk_is_slow_long_enough() -> None:
    """From sample 100 to 150 nothing moves: the window sees two samples beyond either edge."""
    found = find_movement(drawn((200.0, 0.0, 100), (0.0, 0.0, 50), (200.0, 0.0, 100)), S)
    ((first, last),) = found.halts
    # Of a window of 8 s and 4 samples, at least 42 in 100 of the way must be left.
    assert (first, last) == (101, 149)
    assert found.halted.sum() == last - first + 1
    assert found.halted_s[-1] == 2.0 * (last - first)
    assert found.path_m[-1] == pytest.approx(400.0)
    assert np.flatnonzero(np.diff(found.halted_s))[[0, -1]].tolist() == [first, last - 1]


@pytest.mark.parametrize(("samples", "halts"), [(4, 0), (5, 1)])
def test_a_halt_lasts_six_seconds(samples, halts) -> None:
    """Of five samples at one place, each 2 s, the window leaves three steps slow."""
    found = find_movement(drawn((100.0, 0.0, 50), (0.0, 0.0, samples), (100.0, 0.0, 50)), S)
    assert len(found.halts) == halts


@pytest.mark.parametrize(("between", "halts"), [(2, 1), (3, 2)])
def test_halts_close_together_are_one(between, halts) -> None:
    """A step away for less than 10 s, as the window sees it two samples longer."""
    way = (100.0, 0.0, 50)
    stand, pause = (0.0, 0.0, 30), (2.0 * between, 0.0, between)
    found = find_movement(drawn(way, stand, pause, stand, way), S)
    assert len(found.halts) == halts, found.halts


def test_metres_that_went_by_too_fast_were_ridden() -> None:
    """At 10 m/s among 1.25: over 4 m/s, and over 2.5 times what is usual."""
    found = find_movement(drawn((250.0, 0.0, 100), (1000.0, 0.0, 50), (250.0, 0.0, 100)), S)
    assert found.ridden_m[-1] == pytest.approx(1000.0, abs=40.0)
    assert found.ridden_m[99 - 2] == 0.0
    # Somebody who runs is measured by his own pace: 2.5 times 4 m/s is 10.
    runner = find_movement(drawn((800.0, 0.0, 100), (950.0, 0.0, 50), (800.0, 0.0, 100)), S)
    assert runner.ridden_m[-1] == 0.0
    faster = find_movement(drawn((800.0, 0.0, 100), (1050.0, 0.0, 50), (800.0, 0.0, 100)), S)
    assert faster.ridden_m[-1] > 900.0


def test_noise_is_the_scatter_at_halts_pooled_with_what_is_usual() -> None:
    """Worked out by hand for one halt of known scatter: the share that its own mean hides given back."""
    samples = drawn((100.0, 0.0, 50), (0.0, 0.0, 60), (100.0, 0.0, 50))
    raw = samples.smooth + 7.0 * np.where(np.arange(161)[:, None] % 2, 1.0, -1.0)
    found = find_movement(replace(samples, raw=raw), S)
    ((first, last),) = found.halts
    length_s = 2.0 * (last - first)
    x = length_s / 30.0
    kept = 1.0 - 2.0 / x * (1.0 - (1.0 - math.exp(-x)) / x)
    variance = float(np.var(raw[first : last + 1], axis=0).mean())
    expected = math.sqrt((25.0 + x * variance / kept) / (1.0 + x))
    assert found.noise_m == pytest.approx(expected)
    assert found.noise_from_s == length_s
    # One shorter than 20 s says nothing.
    short = drawn((100.0, 0.0, 50), (0.0, 0.0, 10), (100.0, 0.0, 50))
    assert find_movement(short, S).noise_m == 5.0


def test_a_silence_is_no_speed() -> None:
    """Two stretches 500 m apart: at their edges speeds are of one side alone."""
    place = np.concatenate([drawn((80.0, 0.0, 40)).smooth, drawn((80.0, 0.0, 40)).smooth + 500.0])
    stretch = np.repeat([0, 1], 41)
    found = find_movement(samples_of(place, stretch=stretch), S)
    assert found.walking_m_s == pytest.approx(1.0)
    assert found.ridden_m[-1] == 0.0
