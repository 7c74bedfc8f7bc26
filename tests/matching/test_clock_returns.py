"""A clock that leaps and comes back is put right; a rest, and late fixes, stay what they are."""

from __future__ import annotations

import numpy as np
import pytest

from audit.matching.clean_clock import in_blocks
from audit.matching.clean_clock_returns import mend_returns
from audit.matching.clean_fixes import Fixes
from audit.settings import CleaningSettings

S = CleaningSettings()
PACE_M_S = 1.25


def fixes_of(time_s, east_m, segment=None) -> Fixes:
    number = np.arange(len(time_s))
    return Fixes(
        fix=number,
        time_s=np.asarray(time_s, dtype=np.float64),
        east_m=np.asarray(east_m, dtype=np.float64),
        north_m=np.zeros(len(number)),
        segment=0 * number if segment is None else np.asarray(segment),
    )


def leapt(between: slice, by_s: float, *, fixes: int = 900, segment=None) -> Fixes:
    """A walk east with a fix every second, some of them by another clock."""
    time_s = np.arange(float(fixes))
    east_m = PACE_M_S * time_s
    time_s[between] += by_s
    return fixes_of(time_s, east_m, segment)


@pytest.mark.parametrize("by_s", [-86_400.0, -3600.0, 3600.0, 200.0, -200.0])
@pytest.mark.parametrize("between", [slice(300, 310), slice(300, 400)])
def test_a_clock_that_comes_back_moves_only_the_fixes_between(by_s, between) -> None:
    """Bug: the fixes before the leap back were moved, and the leap forward stayed as a rest."""
    found, block, cleaning = in_blocks(leapt(between, by_s), S)
    assert found.fix.tolist() == list(range(900))
    assert found.time_s == pytest.approx(np.arange(900.0))
    assert set(block.tolist()) == {0}
    count = between.stop - between.start
    assert [(did.what, did.count, did.weighs) for did in cleaning] == [("clock-jump", count, True)]


def test_the_clock_that_most_fixes_have_is_believed() -> None:
    found, cleaning = mend_returns(leapt(slice(100, 800), 3600.0), S)
    assert found.time_s == pytest.approx(np.arange(900.0) + 3600.0)
    assert cleaning[0].count == 200


def test_parts_of_the_file_may_begin_where_the_clock_leaps() -> None:
    found, _ = mend_returns(leapt(slice(300, 400), -3600.0, segment=np.repeat(range(9), 100)), S)
    assert found.time_s == pytest.approx(np.arange(900.0))


@pytest.mark.parametrize("gap_s", [5.0, 20.0])
@pytest.mark.parametrize("lasts_s", [135.0, 400.0])
@pytest.mark.parametrize(
    "order", [(1, 0, 3, 2), (1, 0, 3, 2, 5, 4), (0, 3, 4, 2, 1), (1, 5, 4, 2, 0, 3)]
)
def test_equally_long_parts_in_any_order_keep_their_clocks(order, lasts_s, gap_s) -> None:
    """Bug: of loops listed as second, first, fourth, third one was laid on another, and dropped.

    The leaps between parts that are equally long cancel, and no other speaks at their times.
    """
    time_s = np.arange(0.0, lasts_s, 5.0)
    loop_m = PACE_M_S * np.minimum(time_s, lasts_s - time_s)
    begin_s = np.array(order) * (time_s[-1] + gap_s)
    fixes = fixes_of(
        (begin_s[:, None] + time_s).ravel(),
        np.tile(loop_m, len(order)),
        np.repeat(range(len(order)), len(time_s)),
    )
    found, cleaning = mend_returns(fixes, S)
    assert cleaning == []
    assert found.time_s.tolist() == fixes.time_s.tolist()


def test_two_leaps_away_are_paired_each_with_its_own_return() -> None:
    fixes = leapt(slice(300, 400), -3600.0)
    twice = np.where(np.isin(np.arange(900), np.arange(600, 640)), 3600.0, 0.0)
    found, cleaning = mend_returns(fixes.at_times(fixes.time_s + twice), S)
    assert found.time_s == pytest.approx(np.arange(900.0))
    assert cleaning[0].count == 140


@pytest.mark.parametrize("rest_s", [3600.0, 3500.0, 3700.0])
def test_a_rest_with_the_recorder_off_stays_one(rest_s) -> None:
    """Alone, or where a clock that was put back before or after it does not cancel it."""
    rest, cleaning = mend_returns(leapt(slice(600, None), rest_s), S)
    assert cleaning == []
    for put_back_at in (200, 800):
        clock = np.where(np.arange(900) < put_back_at, 0.0, -7200.0)
        _, cleaning = mend_returns(rest.at_times(rest.time_s + clock), S)
        assert cleaning == []


@pytest.mark.parametrize(("rest_at", "put_back_at"), [(600, 200), (200, 600)])
@pytest.mark.parametrize(("off_s", "went_m", "taken_back"), [
    (0.0, 0.0, True),  # to the second as long: by chance only
    (20.0, 0.0, False), (20.0, 11.9, False),
    (20.0, 12.0, True),  # with 1.25 m across the other, 13.2 m in 22 s
])  # fmt: skip
def test_a_rest_about_as_long_as_the_clock_was_put_back_is_none_of_the_clock(
    rest_at, put_back_at, off_s, went_m, taken_back
) -> None:
    """Bug: a rest of 720 s and a clock put back by 700 s were taken for one glitch.

    Where the two hide more than the two steps that they replace, only a walker who went on
    across them tells that it was no rest.
    """
    fixes = leapt(slice(rest_at, None), 700.0 + off_s)
    clock = np.where(np.arange(900) < put_back_at, 0.0, -700.0)
    east_m = fixes.east_m + np.where(np.arange(900) < rest_at, 0.0, went_m - PACE_M_S)
    rest = fixes_of(fixes.time_s, east_m)
    _, cleaning = mend_returns(rest.at_times(rest.time_s + clock), S)
    assert bool(cleaning) is taken_back


def test_leaps_that_the_walker_makes_too_are_none_of_the_clock() -> None:
    """Two recordings, one inside the other: the place leaps where the time does."""
    fixes = leapt(slice(300, 400), -3600.0)
    away = np.where(np.isin(np.arange(900), np.arange(300, 400)), 60.0, 0.0)
    _, cleaning = mend_returns(fixes_of(fixes.time_s, fixes.east_m + away), S)
    assert cleaning == []


@pytest.mark.parametrize(("pace_m_s", "moved"), [(0.0, False), (0.2, False), (0.4, True)])
def test_late_fixes_that_lie_where_their_times_say_are_not_moved(pace_m_s, moved) -> None:
    """By a clock off by 200 s the walker is 40 or 80 m from where the others have him."""
    time_s = np.arange(900.0)
    east_m = pace_m_s * time_s
    time_s[300:400] -= 200.0
    _, cleaning = mend_returns(fixes_of(time_s, east_m), S)
    assert bool(cleaning) is moved


def test_in_a_part_whose_order_is_lost_no_leap_is_one_of_the_clock() -> None:
    fixes = leapt(slice(300, 400), -3600.0)
    time_s = fixes.time_s.copy()
    time_s[500:700:2], time_s[501:700:2] = fixes.time_s[501:700:2], fixes.time_s[500:700:2]
    _, cleaning = mend_returns(fixes.at_times(time_s), S)
    assert cleaning == []


def test_fixes_swapped_beside_a_silence_are_late_whatever_silence_follows() -> None:
    """The fixes on both sides of one silence, in which he went 45 m, are written swapped.

    The leap back between them and a silence that follows cancel, and are none of a clock.
    """
    time_s, east_m = 10.0 * np.arange(900), 20.0 * np.arange(900)
    time_s[300:] += 200.0
    east_m[300:] += 25.0
    time_s[400:] += 220.0
    order = np.arange(900)
    order[[299, 300]] = [300, 299]
    found, _, cleaning = in_blocks(fixes_of(time_s[order], east_m[order]), S)
    assert [(did.what, did.count) for did in cleaning] == [("out-of-order", 1)]
    assert found.time_s.tolist() == time_s.tolist()
