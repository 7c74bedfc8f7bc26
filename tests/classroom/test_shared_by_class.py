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


def left_out_by(walkers, how_many):
    by = {one.ident for one in walkers[:how_many]}
    return tuple(
        changed([one], lambda _, leg: replace(leg, cause="gm-angle-omitted"))[0]
        if one.ident in by
        else changed([one], lambda _, leg: replace(leg, cause="within-skill"))[0]
        for one in walkers
    )


def test_angle_left_out_by_all_is_a_finding_of_the_class(clean):
    """Bug: eight who left the angle out were told of the drift on the last legs alone."""
    lanes, walkers = clean
    shows = class_shows(lanes, left_out_by(walkers, len(walkers)), (), SETTINGS)
    (told,) = of(shows, "angle-treated-alike")
    assert not told.question
    assert set(told.walkers) == {one.ident for one in walkers}
    assert "the grid-magnetic angle left out" in told.message
    assert "Nobody is to blame" in told.message
    assert of(shows, "harder-leg") == []
    assert any("legs are not compared" in note for note in shows.notes)
    half = class_shows(lanes, left_out_by(walkers, len(walkers) // 2), (), SETTINGS)
    assert of(half, "angle-treated-alike") == []


def test_leg_is_no_harder_for_where_it_began(clean):
    """Bug: what legs before had put out was called the hardness of the last one."""
    lanes, walkers = clean

    def brought(number, leg):
        if leg.miss is None or number < len(lanes[0].legs) - 2:
            return leg
        return replace(
            leg,
            miss=replace(leg.miss, east_m=leg.miss.east_m + 600.0),
            began_off=(leg.began_off[0] + 600.0, leg.began_off[1]),
        )

    before = of(class_shows(lanes, walkers, (), SETTINGS), "harder-leg")
    after = of(class_shows(lanes, changed(walkers, brought), (), SETTINGS), "harder-leg")
    assert [one.message for one in after] == [one.message for one in before]


def test_leg_whose_part_is_unsure_is_not_compared(clean):
    """Bug: misses of parts that may be another leg's made a leg harder."""
    lanes, walkers = clean

    def unsure(number, leg):
        if number != 1 or leg.miss is None:
            return leg
        return replace(leg, confidence=0.6, miss=replace(leg.miss, east_m=900.0))

    shows = class_shows(lanes, changed(walkers, unsure), (), SETTINGS)
    assert lanes[0].legs[1].name not in [one.leg for one in of(shows, "harder-leg")]
