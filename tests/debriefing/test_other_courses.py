"""A recording of another course is refused where it is far off, and asked about where it is near."""

from __future__ import annotations

import re

import numpy as np
import pytest
from debriefing.hand_walked import plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk, receiver

import audit
from audit.reports.walk_verdict import verdict


def of_walk_begun_at(east_m: float, north_m: float, points):
    """Debrief a walk of 400 m east and 300 m north from there."""
    walk = HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 300).halt(60)
    places = walk.places + np.array([east_m, north_m]) + receiver(2, 3.0)(len(walk.places))
    time_s = BEGIN + np.arange(len(places), dtype=np.float64)
    return audit.debrief(plan_of(*points), track_of(time_s, places))


COURSE = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0))


def notes(debrief) -> str:
    return " ".join(str(note) for note in debrief.quality.notes)


def test_a_walk_beside_the_course_that_is_like_it_is_asked_about() -> None:
    said = notes(of_walk_begun_at(0.0, 900.0, COURSE))
    assert "may be of another course" in said
    # The course's last point lies 600 m south of where the walk turns north.
    assert re.search(r"within (59\d|60\d) m of point", said)


def test_a_walk_in_which_no_leg_is_recognised_says_how_near_it_came() -> None:
    places = np.array([300.0, -600.0]) + receiver(2, 3.0)(1200)
    track = track_of(BEGIN + np.arange(len(places), dtype=np.float64), places)
    said = notes(audit.debrief(plan_of((0.0, 0.0), (-900.0, 0.0), (-900.0, 900.0)), track))
    assert "No leg of the plan was recognised" in said
    assert "comes within" in said


def test_a_walk_elsewhere_of_which_no_leg_is_sure_has_no_leg_walked_and_says_so_first() -> None:
    """Bug: a walk 2.5 km off was told as a leg walked that missed its point by 3.5 km."""
    walk = HandWalk().halt(60).walk(200, 400).halt(60).walk(70, 300).halt(60)
    places = walk.places + np.array([0.0, 1200.0]) + receiver(2, 3.0)(len(walk.places))
    track = track_of(BEGIN + np.arange(len(places), dtype=np.float64), places)
    away = audit.debrief(plan_of((0.0, 0.0), (-900.0, 0.0), (-900.0, -900.0)), track)
    assert all(leg.audit.measures is None for leg in away.legs)
    assert "may be of another course" in verdict(away)[0]
    assert "0 of 2 legs walked" in " ".join(verdict(away))


def test_a_sure_leg_elsewhere_stays_walked_and_the_doubt_leads() -> None:
    shifted = of_walk_begun_at(0.0, 900.0, COURSE)
    sure = [leg for leg in shifted.legs if leg.audit.confidence >= 0.7]
    walked = [leg for leg in shifted.legs if leg.audit.measures is not None]
    assert bool(sure) == bool(walked)
    assert "may be of another course" in verdict(shifted)[0]


def test_a_walk_of_the_course_is_not_asked_about() -> None:
    said = notes(of_walk_begun_at(0.0, 0.0, COURSE))
    assert "another course" not in said
    assert "comes within" not in said


def test_a_walk_far_off_is_refused_with_its_distance() -> None:
    with pytest.raises(audit.InputRefusedError, match=r"no nearer than [34]\.\d km"):
        of_walk_begun_at(0.0, 4000.0, COURSE)
