"""Two parts of a file whose clocks disagree: a clock put back, or a second recording of the walk."""

from __future__ import annotations

import numpy as np
import pytest

from audit.matching.clean_clock import in_blocks
from audit.matching.clean_fixes import Fixes
from audit.settings import CleaningSettings

S = CleaningSettings()
EVERY_S, PACE_M_S = 10.0, 1.25


def fixes_of(time_s, east_m, segment) -> Fixes:
    time_s = np.asarray(time_s, dtype=np.float64)
    return Fixes(
        fix=np.arange(len(time_s)),
        time_s=time_s,
        east_m=700_000.0 + np.asarray(east_m, dtype=np.float64),
        north_m=np.full(len(time_s), 3.58e6),
        segment=np.asarray(segment, dtype=np.int64),
    )


def walked_on(back_s: float, *, parts: int = 2, second: int = 150) -> Fixes:
    """Walk east for 300 fixes; from the 200th on the clock is ``back_s`` seconds back."""
    time_s = EVERY_S * np.arange(200 + second)
    east_m = PACE_M_S * time_s
    segment = np.repeat([0, parts - 1], [200, second])
    return fixes_of(
        np.where(np.arange(len(time_s)) < 200, time_s, time_s - back_s), east_m, segment
    )


@pytest.mark.parametrize("parts", [1, 2])
@pytest.mark.parametrize("second", [150, 250])
def test_a_clock_put_back_runs_on_by_the_clock_that_has_most_fixes(parts, second) -> None:
    found, block, cleaning = in_blocks(walked_on(1000.0, parts=parts, second=second), S)
    assert np.diff(found.time_s) == pytest.approx(np.full(199 + second, EVERY_S))
    assert found.fix.tolist() == list(range(200 + second))
    assert set(block.tolist()) == {0}  # one clock, so one block
    ((what, count),) = [(did.what, did.count) for did in cleaning]
    assert (what, count) == ("clock-jump", min(200, second))
    assert found.time_s[0 if second < 200 else -1] == (
        0.0 if second < 200 else EVERY_S * (199 + second) - 1000.0
    )


@pytest.mark.parametrize(
    ("back_s", "put_back"), [(700.0, True), (200.0, True), (60.0, True), (50.0, False)]
)
@pytest.mark.parametrize("parts", [1, 2])
def test_a_clock_put_back_a_little_is_known_by_the_place(back_s, put_back, parts) -> None:
    """Bug: fixes after a clock went back by 200 s were mixed with those before, half dropped.

    By the clock the walker is 250 m from where he was then, which late fixes are not. A clock
    put back by 50 s has him 62 m off, but steps back by no more than four usual intervals.
    """
    found, _, cleaning = in_blocks(walked_on(back_s, parts=parts), S)
    assert ("clock-jump" in {did.what for did in cleaning}) is put_back
    if put_back:
        assert found.fix.tolist() == list(range(350))
        assert np.diff(found.time_s) == pytest.approx(np.full(349, EVERY_S))


def test_fixes_late_by_minutes_go_where_their_times_say() -> None:
    """They follow fixes 40 m away, and lie on the way of the others at their times."""
    time_s = EVERY_S * np.arange(100)
    east_m = 0.4 * time_s
    order = np.r_[0:40, 50:60, 40:50, 60:100]
    found, _, cleaning = in_blocks(fixes_of(time_s[order], east_m[order], 0 * order), S)
    assert [(did.what, did.count) for did in cleaning] == [("out-of-order", 1)]
    assert found.time_s.tolist() == time_s.tolist()


@pytest.mark.parametrize(("off_m", "put_back"), [(99.0, False), (101.0, True), (150.0, True)])
@pytest.mark.parametrize("side", [1.0, -1.0])
def test_a_second_recording_is_where_the_walker_was_by_its_clock(off_m, put_back, side) -> None:
    """Within twice 50 m of where the first had him then: back to where he stood, or not."""
    time_s = EVERY_S * np.arange(200)
    east_m = np.where(time_s < 500.0, 0.0, side * off_m)
    again_s = 100.0 + EVERY_S * np.arange(60)
    fixes = fixes_of(
        np.concatenate([time_s, again_s]),
        np.concatenate([east_m, np.full(60, side * off_m)]),
        np.repeat([0, 1], [200, 60]),
    )
    _, block, cleaning = in_blocks(fixes, S)
    assert ("clock-jump" in {did.what for did in cleaning}) is put_back
    assert len(set(block.tolist())) == (1 if put_back else 2)


@pytest.mark.parametrize(("away_m", "put_back"), [(49.0, True), (51.0, False)])
def test_a_clock_that_was_put_back_goes_on_where_the_walker_is(away_m, put_back) -> None:
    fixes = walked_on(1000.0)
    moved = fixes.east_m + np.where(np.arange(len(fixes)) < 200, 0.0, away_m - PACE_M_S * EVERY_S)
    shifted = fixes_of(fixes.time_s, moved - 700_000.0, fixes.segment)
    _, _, cleaning = in_blocks(shifted, S)
    assert ("clock-jump" in {did.what for did in cleaning}) is put_back


@pytest.mark.parametrize(("parts", "put_back"), [(1, True), (2, False)])
def test_of_a_time_before_all_others_only_a_jump_inside_a_part_tells(parts, put_back) -> None:
    """Another part of the file may be of an earlier day."""
    _, block, cleaning = in_blocks(walked_on(90_000.0, parts=parts), S)
    assert ("clock-jump" in {did.what for did in cleaning}) is put_back
    assert len(set(block.tolist())) == (1 if put_back else 2)


@pytest.mark.parametrize(("late", "blocks"), [(17, 2), (18, 1)])
def test_where_the_order_is_lost_altogether_no_clock_is_suspected(late, blocks) -> None:
    """Of 350 fixes 17 steps back and the jump are just over 5 in 100."""
    fixes = walked_on(90_000.0, parts=2)
    order = np.arange(len(fixes))
    for pair in range(late - 1):
        order[[10 * pair, 10 * pair + 1]] = order[[10 * pair + 1, 10 * pair]]
    one_part = fixes_of(fixes.time_s[order], fixes.east_m[order] - 700_000.0, 0 * order)
    found, block, cleaning = in_blocks(one_part, S)
    assert ("clock-jump" in {did.what for did in cleaning}) is (blocks == 2)
    assert "out-of-order" in {did.what for did in cleaning}
    assert np.all(np.diff(found.time_s) >= 0.0)
    assert set(block.tolist()) == {0}
