"""What the walker's own card says of each leg, as the causes are weighed by it."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from coaching.demo_walk import demo, own_card

from audit.azimuths import GridAzimuth
from audit.coaching.card_on_paper import on_paper
from audit.coaching.walkers_card import beside_course
from audit.settings import Settings
from audit.units import direction_degrees, unit_vector
from audit.words import sentence


def papers(own):
    plan, finished, _ = demo()
    return on_paper(finished.card, beside_course(finished.card, own, plan).legs, Settings())


def test_a_card_written_as_the_course_is_right_everywhere() -> None:
    for paper in papers(own_card()).values():
        assert abs(paper.turn_deg) < 1.0
        assert abs(paper.log_ratio) < 0.02
        assert paper.end_off_m == (0.0, 0.0)
        assert paper.slips == ()


def test_an_azimuth_measured_off_the_map_is_the_turn_of_that_leg() -> None:
    _, finished, _ = demo()
    right = finished.card.legs[0].azimuth.degrees
    paper = papers(own_card(grid_azimuth=GridAzimuth((right + 10.0) % 360.0)))["1"]
    assert paper.grid_turn_deg == pytest.approx(10.0, abs=1e-6)


def test_a_leg_measured_back_from_where_the_last_was_led_astray_made_no_slip() -> None:
    """Bug: the leg after a wrongly plotted point was named a wrong digit in its own reference."""
    plan, finished, _ = demo()
    first, second = finished.card.legs[:2]
    astray = first.distance_m * unit_vector(first.azimuth.degrees) + (400.0, 0.0)
    back = second.distance_m * unit_vector(second.azimuth.degrees) - (400.0, 0.0)
    legs = tuple(
        replace(
            leg,
            grid_azimuth=GridAzimuth(direction_degrees(*way)),
            magnetic_azimuth=None,
            distance_m=math.hypot(*way),
            paces=None,
        )
        for leg, way in zip(plan.legs, (astray, back), strict=False)
    )
    own = replace(plan, legs=(*legs, *plan.legs[2:]))
    found = papers(own)
    assert abs(found["1"].turn_deg) > 10.0
    assert (found["1"].from_elsewhere, found["2"].from_elsewhere) == (False, True)


def test_the_radius_that_a_card_does_not_name_is_no_note() -> None:
    """Bug: every card told that it gives no arrival radius, which nothing makes use of."""
    plan, finished, _ = demo()
    read = (sentence("plan-no-radius", radius="30"), sentence("plan-commas", column="paces"))
    notes = beside_course(finished.card, replace(plan, notes=read), plan).notes
    assert [note for note in notes if "radius" in note] == []
    assert any("Commas" in note for note in notes)
