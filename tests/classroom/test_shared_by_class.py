"""What a whole class shares is told with its doubt, asked about, and blamed on nobody."""

from __future__ import annotations

from dataclasses import replace

import pytest
from classes import Plants, make_class
from classes.true_results import true_result

from audit.classroom.class_shows import class_shows
from audit.classroom.course_faults import course_faults
from audit.settings import Settings

SETTINGS = Settings().class_shows
LEG = 2


@pytest.fixture(scope="module")
def clean():
    result = true_result(make_class(100_403, walkers=14, lanes=1, plants=Plants()))
    return result.lanes, tuple(one for one in result.walkers if one.state == "graded")


def changed(walkers, change):
    """Give the walkers with each of their legs as ``change(number, leg)`` makes it."""
    return tuple(
        replace(one, legs=tuple(change(number, leg) for number, leg in enumerate(one.legs)))
        for one in walkers
    )


def of(shows, what):
    return [one for one in shows.findings if one.what == what]


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


def missed_by(walkers, how_many):
    """Give the walkers, so many of whom went past the point of one leg."""

    def change(number, leg, *, missed):
        if number == LEG and missed:
            return replace(leg, status="skipped", miss=None, point=replace(
                leg.point, grade="missed", approach=replace(leg.point.approach, distance_m=82.0)
            ))  # fmt: skip
        if number == LEG + 1 and missed:
            return replace(leg, status="skipped", miss=None)
        return replace(leg, point=replace(leg.point, grade="found"))

    return tuple(
        replace(one, legs=tuple(change(n, leg, missed=count < how_many)
                                for n, leg in enumerate(one.legs)))
        for count, one in enumerate(walkers)
    )  # fmt: skip


def test_point_that_everybody_missed_is_asked_about(clean):
    """Bug: a point that 8 of 8 missed, and nobody claimed, was nothing that a class shows."""
    lanes, walkers = clean
    walkers = [one for one in walkers if all(leg.point.approach for leg in one.legs)]
    (asked,) = of(
        class_shows(lanes, missed_by(walkers, len(walkers)), (), SETTINGS), "point-missed-by-all"
    )
    assert (asked.leg, asked.question, asked.leaves_out) == (lanes[0].legs[LEG].name, True, False)
    assert "none of the" in asked.message
    assert "came within 82 m" in asked.message
    one_found_it = missed_by(walkers, len(walkers) - 1)
    assert of(class_shows(lanes, one_found_it, (), SETTINGS), "point-missed-by-all") == []
