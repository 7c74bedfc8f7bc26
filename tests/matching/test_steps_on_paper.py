"""Steps between fixes: their pace, their neighbours' pace and the angles between them, by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from audit.matching.clean_fixes import Fixes
from audit.matching.clean_steps import measure_steps, silence_s
from audit.settings import CleaningSettings

S = CleaningSettings()


def steps_of(lengths, every_s=1.0, turns_deg=None):
    """Walk so many metres a step; turns are against the first step, east."""
    turns = np.radians(np.zeros(len(lengths)) if turns_deg is None else turns_deg)
    step = np.asarray(lengths)[:, None] * np.column_stack([np.cos(turns), np.sin(turns)])
    place = np.concatenate([[[0.0, 0.0]], np.cumsum(step, axis=0)])
    number = np.arange(len(place))
    time_s = 1000.0 + every_s * number
    return measure_steps(
        Fixes(
            fix=number, time_s=time_s, east_m=place[:, 0], north_m=place[:, 1], segment=0 * number
        ),
        S,
    )


def test_steps_have_their_length_and_speed() -> None:
    steps = steps_of([3.0, 4.0, 0.0, 12.0], every_s=4.0)
    assert steps.length_m == pytest.approx([3.0, 4.0, 0.0, 12.0])
    assert steps.speed_m_s(np.arange(4)) == pytest.approx([0.75, 1.0, 0.0, 3.0])


@pytest.mark.parametrize("turn_deg", [0.0, 60.0, 90.0, 135.0, 180.0])
def test_the_cosine_is_that_of_the_angle_between_two_steps(turn_deg) -> None:
    steps = steps_of([3.0, 7.0], turns_deg=[0.0, turn_deg])
    cosine = steps.cosine(np.array([0]), np.array([1]))
    assert cosine == pytest.approx([math.cos(math.radians(turn_deg))], abs=1e-12)


def test_a_step_of_no_length_has_no_direction() -> None:
    steps = steps_of([3.0, 0.0])
    assert steps.cosine(np.array([0, 1]), np.array([1, 0])).tolist() == [0.0, 0.0]


def test_the_pace_before_and_after_is_the_fastest_of_a_few_steps() -> None:
    """Rising pace: before step k it is that of k - 1, after it that of the last neighbour."""
    speeds = 0.5 + 0.05 * np.arange(40)
    steps = steps_of(speeds)
    width = S.neighbour_steps
    at = np.arange(width, 40 - width - 1)
    assert steps.neighbours == width
    assert steps.before(at) == pytest.approx(speeds[at - 1])
    assert steps.after(at) == pytest.approx(speeds[at + width])
    # Before the first and after the last step nothing was walked.
    assert steps.before(np.array([0])).tolist() == [0.0]
    assert steps.after(np.array([39])).tolist() == [0.0]


def test_what_nobody_walks_counts_only_where_it_lasts() -> None:
    """Of a ride of as many steps as make one the slowest counts; of fewer, the fastest on foot."""
    for count, pace_m_s in ((S.ride_steps, 20.0), (S.ride_steps - 1, S.spike_speed_m_s)):
        speeds = np.full(40, 1.0)
        speeds[20 : 20 + count] = 20.0
        steps = steps_of(speeds)
        assert steps.before(np.array([20 + count])) == pytest.approx([pace_m_s])
        assert steps.after(np.array([19])) == pytest.approx([pace_m_s])


def test_fast_is_more_than_the_brisk_pace_of_the_whole_walk_and_some_slack() -> None:
    """An even walk: its own pace with a margin, within what people walk."""
    for speed in (0.3, 1.2, 30.0):
        steps = steps_of(np.full(60, speed))
        brisk = min(max(S.pace_margin * speed, S.slow_pace_m_s), S.fast_pace_m_s)
        assert steps.pace_m_s == pytest.approx(brisk)
    limit_m = S.spike_slack_m + steps_of(np.full(60, 1.2)).pace_m_s
    for over_m, fast in ((0.01, True), (-0.01, False)):
        lengths = np.full(400, 1.2)
        lengths[200] = limit_m + over_m
        assert bool(steps_of(lengths).fast[200]) is fast


def test_a_step_of_just_what_the_pace_allows_is_not_fast() -> None:
    """1.6 m/s for ten seconds, and 15 m."""
    lengths = np.full(40, 12.0)
    lengths[20], lengths[30] = 31.0, 31.0625
    assert np.flatnonzero(steps_of(lengths, every_s=10.0).fast).tolist() == [30]


def test_a_silence_is_longer_than_some_intervals_and_some_seconds() -> None:
    for every_s in (1.0, 30.0):
        usual_s = np.full(50, every_s)
        longest_s = max(S.gap_s, S.gap_intervals * every_s)
        assert silence_s(usual_s, S).tolist() == [longest_s] * 49
    assert silence_s(np.array([5.0]), S).tolist() == []
