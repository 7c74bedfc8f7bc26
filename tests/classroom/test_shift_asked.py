"""A shift of all clocks is asked about where little bears it out."""

from __future__ import annotations

from dataclasses import replace

import pytest
from classes import make_class
from classes.true_results import true_result

from audit.classroom.batch_clock import BatchClock
from audit.classroom.shift_asked import shift_asked
from audit.grading.verdicts import Approach, Punch
from audit.settings import GradingSettings

REACHED_S = 1_790_000_000.0
OF_DAY_S = REACHED_S % 86_400.0


def asked(clock: BatchClock, walkers=()) -> list[str]:
    return [one.message for one in shift_asked(clock, walkers, GradingSettings())]


@pytest.mark.parametrize(
    ("shift_s", "pairs", "questions"),
    [(-1036.0, 1, 1), (-1036.0, 2, 0), (-16.0, 1, 0), (3600.0, 0, 0)],
)
def test_one_start_alone_that_moves_all_clocks_is_asked_about(shift_s, pairs, questions):
    """Bug: one roster time moved a right clock by 17 min, and nobody was asked."""
    said = asked(BatchClock(shift_s=shift_s, pairs=pairs))
    assert len(said) == questions
    assert all("17 min back by the start of one walker alone" in one for one in said)


@pytest.fixture(scope="module")
def walker():
    return true_result(make_class(100_301, walkers=16, legs=4)).walkers[0]


def noted(walker, after_s: float, right: bool | None = True):
    """Give a walker who noted a code so long after the recording has him at its point."""
    first, *rest = walker.legs
    noted_s = (OF_DAY_S + after_s) % 86_400.0
    point = replace(
        first.point,
        approach=Approach(distance_m=2.0, sd_m=3.0, time_s=REACHED_S),
        punch=Punch(code="KT", right=right, time="17:25", noted_s=noted_s),
    )
    return replace(walker, legs=(replace(first, point=point), *rest))


@pytest.mark.parametrize(
    ("shift_s", "after_s", "said"),
    [
        (-1036.0, 1036.0, "17 min later than the recordings, with their clocks shifted"),
        (1036.0, -1036.0, "with the clocks as they were they agree"),
        (3600.0, 1036.0, "17 min later"),
        (3600.0, -86_300.0, ""),  # a day on the wall shows no date: 100 s apart
        (-1036.0, 20.0, ""),
        (0.0, 1036.0, ""),
    ],
)
def test_times_noted_with_codes_are_held_against_a_shift(walker, shift_s, after_s, said):
    messages = asked(BatchClock(shift_s=shift_s, pairs=3), [noted(walker, after_s)])
    assert len(messages) == (1 if said else 0)
    assert said in "".join(messages)


def test_a_wrong_code_shows_no_place(walker):
    clock = BatchClock(shift_s=-1036.0, pairs=3)
    assert asked(clock, [noted(walker, 1036.0, right=False)]) == []
