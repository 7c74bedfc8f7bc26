"""What is a silence on foot is judged by the walk, not by the drive home or another day."""

from __future__ import annotations

import numpy as np
import pytest
from matching.planted_walks import START, FlatGrid, recording

from audit.matching.clean_track import clean_track
from audit.matching.outings import split_outings
from audit.settings import CleaningSettings, MatchingSettings

SETTINGS = CleaningSettings()
DAY_S = 86400.0


def by_distance(speeds_m_s, times_begin=START):
    """Times and places of a fix every 24 m to the east, at these speeds from fix to fix."""
    times = times_begin + np.concatenate([[0.0], np.cumsum(24.0 / np.asarray(speeds_m_s))])
    return times, 24.0 * np.arange(len(times))


def cleaned(times, east):
    return clean_track(recording(times, east, np.zeros(len(times))), FlatGrid(), SETTINGS)


def test_a_drive_home_does_not_make_silences_of_a_walk():
    """Bug: of a walk with a fix every 20 m each step was a gap where he was driven home after."""
    clean = cleaned(*by_distance([1.0] * 50 + [12.0] * 120))
    assert clean.gaps == ()
    assert clean.median_interval_s == pytest.approx(24.0)


def test_a_day_at_another_rate_does_not_make_silences_of_a_walk():
    """Bug: the file held another day with a fix every 5 s, and the walk, every 24 s, was gaps."""
    other = START + 5.0 * np.arange(200.0)
    times, east = by_distance([1.0] * 60, START + DAY_S)
    clean = cleaned(np.append(other, times), np.append(6.0 * np.arange(200.0), east))
    assert [gap.before for gap in clean.gaps] == [199]  # the night
    parts = split_outings(clean, MatchingSettings())
    assert [part.median_interval_s for part in parts] == pytest.approx([5.0, 24.0])
    assert clean.median_interval_s == pytest.approx(5.0)  # of the day with more fixes


def test_silences_of_a_walk_are_found_beside_a_drive_and_another_day():
    """A fix that is missing five times over is a gap still."""
    times, east = by_distance([1.0] * 30 + [0.2] + [1.0] * 30 + [12.0] * 80)
    assert [gap.before for gap in cleaned(times, east).gaps] == [30]


def test_a_whole_ride_has_the_interval_that_it_has():
    assert cleaned(*by_distance([12.0] * 40)).median_interval_s == pytest.approx(2.0)


def test_a_few_fast_steps_are_no_ride():
    """The usual interval of a walk with some bad fixes stays the median of all."""
    times, _ = by_distance([1.0] * 20 + [2.0] * 21)
    east = np.arange(len(times)) * 24.0
    east[10] += 15.0
    assert cleaned(times, east).median_interval_s == pytest.approx(12.0)
