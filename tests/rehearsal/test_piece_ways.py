"""Mistakes on a leg along a via position: by its pieces, each with its azimuth and distance.

The leg runs 500 m east and then 500 m north; the angle is 7.5 degrees west, so that the card
has 097.5 and 007.5 magnetic. Ends are told as (east, north) of the point, worked out by hand.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from forecast.legs import made_card
from rehearsal.courses import ends, only

from audit.rehearsal.finished_rehearsal import LegRehearsal, WayEnd
from audit.rehearsal.rehearse import rehearse


@cache
def bent() -> LegRehearsal:
    made = made_card((500.0, 500.0))
    line = np.array([(0.0, 0.0), (500.0, 0.0), (500.0, 500.0)]) + made.legs[0].line[0]
    # The plan has the straight distance, which the pieces of the card have not.
    leg = replace(made.legs[0], line=line, distance_m=707.0)
    return rehearse(replace(made, legs=(leg,))).legs[0]


def off(end: WayEnd) -> tuple[float, float]:
    east_m, north_m = np.array(end.way.line[-1]) - bent().leg.line[-1]
    return float(east_m), float(north_m)


def turned(turns: tuple[float, float]) -> tuple[float, float]:
    """Give where the pieces end, each turned, with sines and cosines alone."""
    first, second = (math.radians(90.0 + turns[0]), math.radians(turns[1]))
    east_m = 500.0 * (math.sin(first) + math.sin(second))
    return east_m - 500.0, 500.0 * (math.cos(first) + math.cos(second)) - 500.0


def test_what_is_done_on_a_whole_walk_is_done_on_every_piece():
    assert off(only(bent(), "gm-angle-omitted")) == pytest.approx(turned((-7.5, -7.5)))
    assert only(bent(), "gm-angle-omitted").way.words == "7.5° left"
    long = {round(end.way.size, 2): off(end) for end in ends(bent(), "pace-long")}
    assert long[1.16] == pytest.approx((80.0, 80.0), abs=3.0)


def test_a_turn_that_depends_on_the_azimuth_is_that_of_each_piece():
    """Bug: the bezel was turned the wrong way on both pieces by the azimuth straight across."""
    wrong = only(bent(), "bezel-wrong-way")  # r = -2 M: -195, which is 165 right, and -15
    assert off(wrong) == pytest.approx(turned((165.0, -15.0)))
    assert wrong.way.words == "piece by piece 165.0° right and 15.0° left"


def test_a_slip_of_one_number_is_made_on_one_piece():
    """Bug: a hundred lost was taken off all pieces together, each in its share."""
    lost = {end.way.words: off(end) for end in ends(bent(), "hundred-miscounted")}
    assert lost["100 m short on piece 1 of 2"] == pytest.approx((-100.0, 0.0))
    assert lost["100 m short on piece 2 of 2"] == pytest.approx((0.0, -100.0))
    assert sum(end.way.share for end in ends(bent(), "hundred-miscounted")) == pytest.approx(1.0)
    other = {end.way.words: off(end) for end in ends(bent(), "neighbour-azimuth")}
    assert other["90.0° left on piece 1 of 2"] == pytest.approx((-500.0, 500.0))


def test_a_place_made_for_is_gone_to_over_the_via_position():
    """Bug: who plotted the point wrongly walked there straight from the start."""
    for end in ends(bent(), "wrong-grid-line"):
        assert end.way.line[:-1] == pytest.approx(bent().leg.line[:-1])
        assert math.hypot(*off(end)) == pytest.approx(1000.0)


def test_beyond_and_right_of_the_point_are_told_along_the_last_piece():
    """Bug: they were told along the straight way from start to end, unlike the forecast."""
    told = {end.way.words: end for end in ends(bent(), "hundred-miscounted")}
    far = told["100 m too far on piece 2 of 2"]
    assert (far.along_m, far.across_m) == (pytest.approx(100.0), pytest.approx(0.0, abs=1e-6))
