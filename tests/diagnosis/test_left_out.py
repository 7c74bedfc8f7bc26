"""Points left out: the recording shows it from the first point on, and says so."""

from __future__ import annotations

import datetime as dt
import math

import numpy as np
import pytest
from debriefing.test_debrief_walk import BEGIN, plan_of, track_of
from measurement.hand_made import HandWalk, receiver

import audit
from audit.units import direction_degrees

COURSE = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0), (100.0, -100.0))


def causes_without(left_out: int):
    """Walk the course but for one point, and give what is said of the legs to and from it."""
    walk, here = HandWalk().halt(90), np.zeros(2)
    for number, point in enumerate(COURSE):
        if number not in (0, left_out):
            east, north = np.array(point) - here
            metres = 1.25 * round(math.hypot(east, north) / 1.25)
            walk = walk.walk(direction_degrees(east, north), metres).halt(60)
            here = np.array(point)
    place = np.array(walk.places) + receiver(3, 3.0)(len(walk.places))
    plan = plan_of(*COURSE, date=dt.datetime.fromtimestamp(BEGIN, dt.UTC).date())
    debrief = audit.debrief(plan, track_of(BEGIN + np.arange(len(place)), place))
    return [
        (leg.audit.status, leg.causes[0].cause if leg.causes else None)
        for leg in debrief.legs[left_out - 1 : left_out + 1]
    ]


@pytest.mark.parametrize("left_out", [1, 2])
def test_a_point_left_out_is_named_whether_or_not_a_leg_was_walked_before_it(left_out) -> None:
    """Bug: of the first point it was said that the recording might not show it."""
    assert causes_without(left_out) == [("skipped", "point-skipped")] * 2


def test_the_last_point_but_one_is_left_out_by_who_rests_at_the_last() -> None:
    """Bug: both its legs were "not started", as if the walker had gone home."""
    assert causes_without(3) == [("skipped", "point-skipped")] * 2


def test_who_goes_home_after_three_points_has_left_out_none() -> None:
    walk = HandWalk().halt(90).walk(90, 400).halt(60).walk(0, 300).halt(60).walk(200, 500).halt(60)
    place = np.array(walk.places) + receiver(3, 3.0)(len(walk.places))
    plan = plan_of(*COURSE, date=dt.datetime.fromtimestamp(BEGIN, dt.UTC).date())
    debrief = audit.debrief(plan, track_of(BEGIN + np.arange(len(place)), place))
    assert [leg.audit.status for leg in debrief.legs] == ["walked"] * 2 + ["not-started"] * 2


def test_who_breaks_off_a_loop_comes_home_to_its_last_point() -> None:
    """A place where the course began says nothing of the points before it."""
    walk = HandWalk().halt(90).walk(90, 400).halt(60).walk(0, 300).halt(60)
    walk = walk.walk(direction_degrees(-400.0, -300.0), 500).halt(60)
    place = np.array(walk.places) + receiver(3, 3.0)(len(walk.places))
    course = (*COURSE[:4], COURSE[0])
    plan = plan_of(*course, date=dt.datetime.fromtimestamp(BEGIN, dt.UTC).date())
    debrief = audit.debrief(plan, track_of(BEGIN + np.arange(len(place)), place))
    assert [leg.audit.status for leg in debrief.legs] == ["walked"] * 2 + ["not-started"] * 2
