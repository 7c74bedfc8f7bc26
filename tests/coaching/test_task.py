"""In which order things are put before a walker: common sense, no source."""

from __future__ import annotations

import pytest

from audit.coaching.ordinary_metres import ordinary_m
from audit.coaching.task import Task, in_order, work_on

RADIUS_M = 30.0


def task(cause: str, kind: int, metres: float, ordinary: float, worst: float = 0.0) -> Task:
    work = work_on(cause, "", [cause], certain=kind == 0)
    return Task(kind=kind, metres=metres, ordinary_m=ordinary, worst_m=worst, work=work)


def causes(*tasks: Task) -> list[str]:
    return [one.work.cause for one in in_order(tasks, RADIUS_M)]


def test_nothing_ordinary_stands_beside_a_mistake() -> None:
    """Bug: 48 m of ordinary scatter were to be worked on beside a mistake of 200 m."""
    named, scatter = task("reciprocal", 0, 200.0, 0.0), task("veer", 2, 96.0, 90.0)
    assert causes(scatter, named) == ["reciprocal"]


def test_what_cost_most_beyond_scatter_comes_first() -> None:
    """Bug: 10 degrees and 156 m were left out for 4 degrees that a mistake left over."""
    named, part = task("hundred-miscounted", 0, 143.0, 0.0), task("veer", 2, 154.0, 120.0)
    assert causes(part, named) == ["hundred-miscounted", "veer"]
    assert causes(task("veer", 2, 1433.0, 60.0), named) == ["veer", "hundred-miscounted"]


def test_where_all_is_ordinary_the_worst_leg_comes_first() -> None:
    """Bug: the head named a leg that missed by 71 m, and two of 51 m were to be worked on."""
    worst, two = task("veer", 2, 68.0, 90.0, 71.0), task("within-skill", 2, 102.0, 127.0, 55.0)
    assert causes(two, worst) == ["veer", "within-skill"]


@pytest.mark.parametrize("legs", [1, 2, 4])
def test_ordinary_errors_of_one_side_add_up(legs: int) -> None:
    """Of one leg 1.98 standard deviations; of several by their sizes, 0.80 each and more."""
    known = {1: 1.98, 2: 3.27, 4: 5.56}[legs]
    assert ordinary_m([10.0] * legs) == pytest.approx(10.0 * known, abs=0.1)


def test_what_is_not_named_has_one_name() -> None:
    """Bug: "what remains", "To look at next" and "a line that bends" of one part of the misses."""
    assert str(work_on("veer", "", ["1"], certain=False).what) == "To look at next"
    assert work_on("veer", "", ["1"], certain=True).what == "a line that bends as it is walked"
