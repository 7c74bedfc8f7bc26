"""A stretch whose clock stood or ran otherwise is put right by the clock on either side of it."""

from __future__ import annotations

import numpy as np
import pytest

from audit.matching.clean_clock import in_blocks
from audit.matching.clean_clock_stretches import mend_stretches
from audit.matching.clean_fixes import Fixes
from audit.settings import CleaningSettings

S = CleaningSettings()
PACE_M_S = 1.1


def walk_of(time_s, segment=None) -> Fixes:
    number = np.arange(len(time_s))
    return Fixes(
        fix=number,
        time_s=np.array(time_s, dtype=np.float64),
        east_m=PACE_M_S * np.array(time_s),
        north_m=np.zeros(len(number)),
        segment=0 * number if segment is None else np.asarray(segment),
    )


def shown(fixes: Fixes, between: slice, times_s) -> Fixes:
    time_s = fixes.time_s.copy()
    time_s[between] = times_s
    return fixes.at_times(time_s)


EVEN = walk_of(3.0 * np.arange(2600))
WRONG = {
    "stood an hour back": -3600.0 + np.zeros(5),
    "stood ten minutes back": 900.0 + np.zeros(5),
    "stood an hour ahead": 5100.0 + np.zeros(3),
    "stood years back": -6.3e8 + np.zeros(5),
    "ran at a third of the rate": 900.0 + np.arange(20.0),
    "ran ten times as fast": -9000.0 + 30.0 * np.arange(15.0),
    "ran backwards": 5000.0 - 3.0 * np.arange(6.0),
    "leapt about": np.array([-4000.0, 9000.0, 200.0, -7e7]),
}


@pytest.mark.parametrize("times_s", WRONG.values(), ids=WRONG)
def test_only_the_fixes_whose_clock_is_wrong_are_moved(times_s) -> None:
    """Bug: three fixes that all showed one time, 70 min back, moved 1,103 right ones by as much."""
    between = slice(500, 500 + len(times_s))
    found, block, cleaning = in_blocks(shown(EVEN, between, times_s), S)
    assert found.fix.tolist() == EVEN.fix.tolist()
    assert found.time_s == pytest.approx(EVEN.time_s)
    assert set(block.tolist()) == {0}
    assert [(did.what, did.count, did.weighs) for did in cleaning] == [
        ("clock-jump", len(times_s), True)
    ]


@pytest.mark.parametrize("seed", range(60))
def test_stretches_of_uneven_recordings_leave_the_others_where_they_are(seed) -> None:
    rng = np.random.default_rng(seed)
    true = walk_of(np.cumsum(rng.choice([1.0, 2.0, 3.0, 4.0], 1500)))
    wrong = np.zeros(len(true), dtype=np.bool_)
    time_s = true.time_s.copy()
    for first in (300, 700, 1100):
        between = slice(first, first + int(rng.integers(5, 30)))
        wrong[between] = True
        begun = time_s[first] + rng.choice([-1.0, 1.0]) * rng.uniform(700.0, 9000.0)
        time_s[between] = begun + rng.choice([0.0, 0.2, 8.0]) * np.arange(between.stop - first)
    found, _, cleaning = in_blocks(true.at_times(time_s), S)
    assert found.fix.tolist() == true.fix.tolist()
    off_s = np.abs(found.time_s - true.time_s)
    assert off_s[~wrong].max() == 0.0
    assert off_s[wrong].max() < 15.0  # evenly over the stretch, which was walked unevenly
    assert sum(did.count for did in cleaning) == wrong.sum()


def late(time_s, begin: int, size: int, later: int) -> np.ndarray:
    """Give the order in which some fixes come so many places later."""
    order = np.arange(len(time_s)).tolist()
    moved = order[begin : begin + size]
    del order[begin : begin + size]
    order[begin + later : begin + later] = moved
    return np.array(order)


@pytest.mark.parametrize(("size", "by"), [(1, 40), (5, 60), (20, 30), (5, 500), (100, 400)])
def test_fixes_that_come_late_are_no_stretch_of_a_wrong_clock(size, by) -> None:
    """The others leave no time for them where they stand in the file."""
    fixes = EVEN.take(late(EVEN.time_s, 600, size, by))
    assert mend_stretches(fixes, S)[1] == []


def test_a_rest_and_a_silence_are_no_stretches() -> None:
    time_s = EVEN.time_s.copy()
    time_s[600:] += 3600.0
    time_s[900:] += 70.0
    assert mend_stretches(walk_of(time_s), S)[1] == []


def test_of_two_halves_nobody_knows_whose_clock_is_right() -> None:
    fixes = shown(EVEN, slice(600, 2000), -9000.0 + np.arange(1400.0))
    assert mend_stretches(fixes, S)[1] == []


def test_a_part_of_the_file_is_no_stretch() -> None:
    """Parts are listed in any order, and a short one may fill its own hole by chance."""
    part = np.repeat([0, 1, 2], [500, 20, 2080])
    fixes = walk_of(EVEN.time_s, part)
    assert mend_stretches(shown(fixes, slice(500, 520), 900.0 + np.arange(20.0)), S)[1] == []
