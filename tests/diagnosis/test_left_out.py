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

COURSE = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0), (-400.0, 300.0))


def causes_without(left_out: int):
    """Walk the course but for one point, and give what is said of the legs to and from it."""
    walk, here = HandWalk().halt(90), np.zeros(2)
    for number, point in enumerate(COURSE):
        if number not in (0, left_out):
            east, north = np.array(point) - here
            walk = walk.walk(direction_degrees(east, north), round(math.hypot(east, north))).halt(
                60
            )
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
