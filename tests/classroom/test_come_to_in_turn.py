"""Points passed on no leg of the match, and whether in their turn."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from classroom.hand_made import track
from classroom.test_recorded_part import LANE, WALK

from audit.classroom.approaches import approaches
from audit.classroom.come_to_in_turn import come_to_in_turn
from audit.classroom.nearest_fix import with_nearest_fixes
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


def without_leg(walk, number, *, last=False):
    """A walk as if nothing of a leg had been found; ``last`` as a free order puts it."""
    skipped = replace(walk.legs[number].audit, status="skipped", measures=None)
    leg = replace(walk.legs[number], audit=skipped, portion=None)
    before, after = walk.legs[:number], walk.legs[number + 1 :]
    legs = (*before, *after, leg) if last else (*before, leg, *after)
    return replace(walk, legs=legs, on_no_leg=OnNoLeg())


def nearest_second(walk, end):
    """Metres and moment of the nearest approach, second by second."""
    second = np.arange(walk.clean.time_s[0], walk.clean.time_s[-1], 1.0)
    away_m = np.hypot(*(walk.clean.places_at(second) - [end.east_m, end.north_m]).T)
    return away_m.min(), second[away_m.argmin()]


def test_a_point_that_a_free_order_leaves_out_is_looked_for_in_the_whole_recording():
    """Bug: of a point that was passed at 70 m, "no nearer than 1972 m": only what came after the
    last claim counted."""
    free = debrief(replace(LANE.plan, order="free"), track(*WALK))
    walk = without_leg(free, 0, last=True)
    told = approaches(walk, Settings())[-1]
    away_m, _ = nearest_second(walk, walk.legs[-1].audit.card.end)
    assert told.distance_m == pytest.approx(away_m, abs=0.5)
    assert not told.in_turn


def test_the_moment_of_the_nearest_approach_lies_between_two_fixes():
    """Bug: it was that of the fix before: 60 s too early where one fix a minute is logged."""
    walk = without_leg(debrief(LANE.plan, track(*WALK, step_s=60.0)), 1)
    end = walk.legs[1].audit.card.end
    told = approaches(walk, Settings())[1]
    assert told.time_s == pytest.approx(nearest_second(walk, end)[1], abs=1.0)


def test_the_nearest_fix_is_that_of_the_whole_recording():
    recorded = track(*WALK)
    walk = debrief(LANE.plan, recorded)
    told = with_nearest_fixes(approaches(walk, Settings()), walk, recorded)
    for leg, one in zip(walk.legs, told, strict=True):
        end = leg.audit.card.end
        away_m = np.hypot(walk.clean.east_m - end.east_m, walk.clean.north_m - end.north_m)
        assert one.fix_m == pytest.approx(away_m.min(), abs=0.01)
        assert one.fix_s == walk.clean.time_s[away_m.argmin()]
