"""Which walks of a class the school's records keep."""

from __future__ import annotations

import datetime as dt

from classroom.hand_made import BEGIN_S, lane, track
from classroom.test_handed_in import DATED, EAST_WALK, WEST, WEST_WALK, drafted

from audit.classroom.assemble import assemble
from audit.classroom.attempt_of_walker import attempts_of_class, whose_walk_is_asked
from audit.classroom.walker_task import grade_walker
from audit.roster import RosterEntry


def test_nothing_is_kept_of_a_walk_of_which_it_is_asked_whose_it_is():
    """Bug: a walk of another lane or day was kept as the walker's, and the question with nobody."""
    day_s = 86_400.0
    tracks = [
        track(*EAST_WALK, source="adder.gpx"),
        track(*WEST_WALK, source="bittern.gpx"),
        track(*EAST_WALK, source="curlew.gpx", begin_s=BEGIN_S - 2.0 * day_s),
    ]
    rows = [
        RosterEntry(name=name, lane="east", files=(f"{name}.gpx",))
        for name in ("adder", "bittern", "curlew")
    ]
    draft = drafted(tracks, *rows, lanes=(DATED, WEST))
    lanes = {one.name: one for one in draft.inputs.lanes}
    result = assemble(draft, [grade_walker(task, lanes[task.lane])[0] for task in draft.tasks])
    assert whose_walk_is_asked(result) == {"bittern", "curlew"}
    assert [one.walker for one in attempts_of_class(result, draft, str)] == ["adder"]


def test_a_class_that_uses_a_plan_on_another_day_is_kept_under_its_own():
    day = dt.datetime.fromtimestamp(BEGIN_S, dt.UTC).date()
    before = lane("east", *EAST_WALK[1:], date=day - dt.timedelta(days=7))
    draft = drafted([track(*EAST_WALK, source=f"{n}.gpx") for n in range(2)], lanes=(before,))
    result = assemble(draft, [grade_walker(task, before)[0] for task in draft.tasks])
    kept = attempts_of_class(result, draft, str)
    assert [one.walked_on for one in kept] == [day, day]
