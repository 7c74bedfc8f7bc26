"""Times, clocks, overlaps and loose ends of fixes that are written down one by one."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest

from audit.matching import clean_loose_ends, clean_times
from audit.matching.clean_clock import block_edges, in_blocks
from audit.matching.clean_fixes import Fixes, usual_interval_s
from audit.matching.clean_parallel import one_at_a_time
from audit.matching.clean_times import keep_timed
from audit.settings import CleaningSettings

S = CleaningSettings()
NONE = np.nan


def fixes_of(time_s, east_m=None, segment=None, north_m=None) -> Fixes:
    time_s = np.asarray(time_s, dtype=np.float64)
    number = np.arange(len(time_s))
    return Fixes(
        fix=number, time_s=time_s,
        east_m=12.0 * number if east_m is None else np.asarray(east_m, float),
        north_m=0.0 * number if north_m is None else np.asarray(north_m, float),
        segment=0 * number if segment is None else np.asarray(segment),
    )  # fmt: skip


LATE_S = 1.7e9
"""After the clocks of receivers were set: in 2023."""


def told(cleaning) -> dict[str, tuple[int, str]]:
    return {one.what: (one.count, str(one.detail)) for one in cleaning}


@pytest.mark.parametrize("parts", [3, 5, 6, 8])
def test_parts_without_times_are_named_up_to_five(parts) -> None:
    """Ten fixes with times in the first part of the file, then two without in each other."""
    segment = np.concatenate([np.zeros(10, int), np.repeat(np.arange(1, parts + 1), 2)])
    time_s = np.where(segment == 0, LATE_S + 10.0 * np.arange(len(segment)), NONE)
    # The ways of the parts without are short, so that those with times are kept.
    east_m = np.where(segment == 0, 50.0 * np.arange(len(segment)), 0.0)
    kept, timed, cleaning = keep_timed(fixes_of(time_s, east_m, segment), S)
    assert (timed, len(kept)) == (True, 10)
    count, detail = told(cleaning)["no-time"]
    assert count == 2 * parts
    for part in range(1, parts + 1):
        assert (str(part + 1) in detail.replace(str(count), "")) is (part <= 5)
    assert (f"{parts - 5} more" in detail) is (parts > 5)


def test_one_fix_with_a_time_beside_one_without() -> None:
    kept, timed, cleaning = keep_timed(fixes_of([LATE_S, NONE]), S)
    assert (timed, kept.fix.tolist()) == (False, [0])
    assert list(told(cleaning)) == ["no-time", "no-times"]


@pytest.mark.parametrize(("timed_m", "kept"), [(50.0, "timed"), (49.9, "bare")])
def test_those_with_times_are_kept_where_they_show_half_the_way_of_the_others(
    timed_m, kept
) -> None:
    """Two fixes with times so far apart, two without 100 m apart in another part."""
    fixes = fixes_of([LATE_S, LATE_S + 60.0, NONE, NONE], [0.0, timed_m, 0.0, 100.0], [0, 0, 1, 1])
    left, timed, _ = keep_timed(fixes, S)
    assert (timed, left.fix.tolist()) == ((True, [0, 1]) if kept == "timed" else (False, [2, 3]))


def test_a_clock_that_stands_is_told_with_its_times_and_that_of_one_fix_is_one() -> None:
    one = clean_times._standing_clock(fixes_of([LATE_S]), 15.0)
    several = clean_times._standing_clock(fixes_of([LATE_S] * 4, [0, 20, 40, 60]), 15.0)
    assert str(one.detail) != str(several.detail)
    two = clean_times._standing_clock(fixes_of([LATE_S] * 2, [0, 20]), 15.0)
    assert str(two.detail) == str(several.detail).replace("4", "2")
    assert (one.count, several.count) == (1, 4)
    assert "4" in str(several.detail)
    # Half of the fixes may share their time with one far off; more make it useless.
    time_s = LATE_S + np.array([0.0, 0.0, 10.0, 10.0])
    assert clean_times._standing_clock(fixes_of(time_s, [0, 20, 40, 60]), 15.0) is None
    time_s = LATE_S + np.array([0.0, 0.0, 0.0, 10.0, 10.0])
    assert clean_times._standing_clock(fixes_of(time_s, [0, 20, 40, 60, 80]), 15.0) is not None
    # Just as far as a receiver wanders is not far off.
    near = [0.0, 15.0, 0.0, 15.0, 0.0]
    assert clean_times._standing_clock(fixes_of(time_s, near), 15.0) is None


@pytest.mark.parametrize(("early", "blank"), [(2, True), (3, False)])
def test_times_before_satellites_are_blanked_unless_most_are(early, blank) -> None:
    """Of five fixes, one without a time."""
    time_s = np.array(
        [NONE, *[1000.0 + n for n in range(early)], *[LATE_S + n for n in range(4 - early)]]
    )
    cleaning: list = []
    left = clean_times._without_unset_clock(time_s, cleaning)
    assert np.isnan(left[1 : 1 + early]).all() == blank
    assert told(cleaning)["clock-not-set"][0] == early
    at = clean_times.GPS_BEGAN_S
    assert clean_times._without_unset_clock(np.array([at, LATE_S]), cleaning)[0] == at


def test_blocks_begin_and_end_where_their_number_changes() -> None:
    first, last = block_edges(np.array([0, 0, 0, 1, 2, 2]))
    assert (first.tolist(), last.tolist()) == ([0, 3, 4], [2, 3, 5])


@pytest.mark.parametrize("first", [100, 102])
def test_the_clock_is_believed_that_has_most_fixes_in_whatever_parts(first) -> None:
    """Fifty fixes in a part, fifty and more in another; there the clock goes back for 101."""
    time_s = 10.0 * np.arange(first + 101)
    segment = np.repeat([0, 1, 2], [50, first - 50, 101])
    put_back = np.where(segment == 2, time_s - 700.0, time_s)
    fixes = fixes_of(put_back, 12.5 * np.arange(len(time_s)), np.minimum(segment, 1))
    found, _, cleaning = in_blocks(fixes, S)
    assert told(cleaning)["clock-jump"][0] == (100 if first == 100 else 101)
    assert np.diff(found.time_s) == pytest.approx(np.full(first + 100, 10.0))
    assert found.time_s[0] == (-700.0 if first == 100 else 0.0)


@pytest.mark.parametrize(("east_m", "moved"), [(0.0, False), (2000.0, True)])
def test_another_part_may_begin_at_the_first_moment_of_the_one_before(east_m, moved) -> None:
    """Its clock then names a moment at which the walker was where it begins, or was not."""
    time_s = 10.0 * np.arange(100)
    there = np.concatenate([np.linspace(0.0, 2000.0, 98), [2000.0, east_m]])
    later = np.full(50, east_m)
    fixes = fixes_of(
        np.concatenate([time_s, time_s[:50]]), np.concatenate([there, later]), [0] * 100 + [1] * 50
    )
    _, _, cleaning = in_blocks(fixes, S)
    assert ("clock-jump" in told(cleaning)) is moved


def test_the_usual_interval_is_the_middle_one() -> None:
    assert usual_interval_s(np.array([0.0, 1.0, 3.0, 103.0])) == 2.0
    assert usual_interval_s(np.array([7.0])) == 0.0
    assert usual_interval_s(np.array([7.0, 9.0])) == 2.0


def merged(*blocks):
    """Which fixes are kept of blocks of times, and what is said."""
    time_s = np.concatenate([np.asarray(one, float) for one in blocks])
    block = np.repeat(np.arange(len(blocks)), [len(one) for one in blocks])
    fixes, cleaning = one_at_a_time(fixes_of(time_s), block, S)
    return fixes.fix.tolist(), told(cleaning)


def test_of_two_recordings_at_one_time_the_one_with_more_fixes_is_kept() -> None:
    long, short = list(range(0, 100, 10)), list(range(5, 45, 10))
    kept, said = merged(long, short)
    assert kept == list(range(10))
    assert said["side-by-side"][0] == 4
    kept, _ = merged(short, long)
    assert kept == list(range(4, 14))
    # What falls into its silence, or after it, is kept.
    silent = [*range(0, 100, 10), *range(400, 500, 10)]
    kept, said = merged(silent, [45, 95, 200, 455, 600])
    assert kept == [*range(10), 21, 22, *range(10, 20), 24]
    assert said["side-by-side"][0] == 2


def test_recordings_that_meet_at_one_moment_are_none_at_one_time() -> None:
    """The last second of the one is the first of the other: the same time, told as such."""
    kept, said = merged([0, 10, 20], [20, 30, 40])
    assert kept == [0, 1, 2, 4, 5]
    assert list(said) == ["same-time"]
    _, said = merged([0, 10, 20], [30, 40])
    assert said == {}
    _, said = merged([30, 40], [0, 10, 20])
    assert said["parts-out-of-order"][0] == 1


@pytest.mark.parametrize(("leap_m", "by_degrees"), [(199.0, True), (200.0, False)])
def test_a_leap_is_made_by_degrees_below_twice_the_fastest_step_beside(leap_m, by_degrees) -> None:
    """Ten seconds a step; beside the leap the fastest is 100 m."""
    length = np.array([leap_m, 10.0, 100.0, 20.0, 10.0, 10.0, 10.0, 900.0])
    steps = SimpleNamespace(neighbours=6, speed_m_s=lambda step: length[step] / 10.0)
    assert clean_loose_ends._by_degrees(steps, 0, 1, S) is by_degrees
