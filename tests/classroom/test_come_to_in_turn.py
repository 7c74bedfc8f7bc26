"""Points passed on no leg of the match, and whether in their turn."""

from __future__ import annotations

from dataclasses import replace

import pytest
from classroom.hand_made import track
from classroom.test_recorded_part import LANE, WALK

from audit.classroom.approaches import approaches
from audit.classroom.come_to_in_turn import come_to_in_turn
from audit.debriefing.debrief_walk import debrief
from audit.debriefing.on_no_leg import EndPassed, OnNoLeg
from audit.diagnosis.passages import Passage, passages
from audit.settings import Settings


def passed(*times_s):
    """Ends of legs 0, 1, 2 and so on, each passed at some moments."""
    ends = tuple(
        EndPassed(leg=leg, point=f"P{leg + 1}", passages=tuple(map(at, moments_s)))
        for leg, moments_s in enumerate(times_s)
        if moments_s
    )
    return OnNoLeg(passed=ends)


def at(time_s):
    return Passage(first_s=time_s, last_s=time_s, nearest_s=time_s, away_m=5.0)


@pytest.mark.parametrize(
    ("times_s", "in_turn"),
    [
        (([10.0], [20.0], [30.0]), {0: 10.0, 1: 20.0, 2: 30.0}),
        (([20.0], [10.0], [30.0]), {1: 10.0, 2: 30.0}),
        (([10.0], [40.0], [20.0], [30.0]), {0: 10.0, 2: 20.0, 3: 30.0}),
        (([10.0], [5.0, 20.0], [], [30.0]), {0: 10.0, 1: 20.0, 3: 30.0}),
        ((), {}),
    ],
)
def test_the_longest_row_in_the_order_of_the_plan_is_in_turn(times_s, in_turn):
    found = come_to_in_turn(passed(*times_s))
    assert {leg: one.nearest_s for leg, one in found.items()} == in_turn


def test_a_point_passed_in_its_turn_on_no_leg_is_told_as_on_the_way():
    """Bug: of a point rested at in its turn, with its leg not found, it was said that this was
    not on the way there but at another time of the walk."""
    walk = debrief(LANE.plan, track(*WALK))
    skipped = replace(walk.legs[1].audit, status="skipped", measures=None)
    without = replace(walk.legs[1], audit=skipped, portion=None)
    legs = (walk.legs[0], without, *walk.legs[2:])
    end = skipped.card.end
    came_by = passages(walk.clean, end, walk.card.arrival_radius_m)
    seen = OnNoLeg(passed=(EndPassed(leg=1, point=end.name, passages=came_by),))
    told = approaches(replace(walk, legs=legs, on_no_leg=seen), Settings())[1]
    assert told is not None
    assert (told.in_turn, told.time_s) == (True, came_by[0].nearest_s)
