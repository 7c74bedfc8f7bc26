"""What a whole class shares is told with its doubt, asked about, and blamed on nobody."""

from __future__ import annotations

from dataclasses import replace

from classes import make_class
from classes.true_results import true_result

from audit.classroom.course_faults import course_faults
from audit.settings import Settings

SETTINGS = Settings().class_shows


def changed(walkers, change):
    """Give the walkers with each of their legs as ``change(number, leg)`` makes it."""
    return tuple(
        replace(one, legs=tuple(change(number, leg) for number, leg in enumerate(one.legs)))
        for one in walkers
    )


def test_place_that_all_walks_may_read_wrong_alike_is_told_with_that_doubt():
    """Bug: eight walks read wrong alike told a place 100 m from the true one to ±4 m."""
    made = true_result(make_class(100_301))
    (fault,) = [one for one in made.findings if one.what == "point-misplaced"]
    lane = made.lane(fault.lane)
    leg = next(n for n, one in enumerate(lane.legs) if one.name == fault.leg)
    walkers = [one for one in made.walkers if one.lane == lane.name and one.state == "graded"]
    assert "±" in fault.message  # here they ended at many places, and left from one

    def alike(confidence):
        def change(number, one):
            if number not in {leg, leg + 1} or one.miss is None:
                return one
            miss = replace(one.miss, east_m=85.0, north_m=-70.0) if number == leg else one.miss
            return replace(one, miss=miss, confidence=confidence)

        (told,) = course_faults([lane], changed(walkers, change), SETTINGS)
        return told

    assert "±" in alike(0.97).message
    unsure = alike(0.72)
    assert "±" not in unsure.message
    assert "How far off it stands is not sure: all came the same way" in unsure.message
    assert "only 72 % sure" in unsure.message
    assert unsure.leaves_out
