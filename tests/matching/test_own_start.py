"""Who missed a point and then came to it set out from there, whatever line his way back took."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.chord_likelihood import going_on_so_far
from audit.matching.match_walk import match_walk
from audit.matching.point_to_point import _any_between, cost_of_rest_at_left_out
from audit.matching.route import plan_route

S = SETTINGS.matching


def test_the_way_back_to_a_missed_point_is_no_part_of_the_next_leg() -> None:
    """Bug: leg 2 began where leg 1 was claimed, and rested at its own start on the way.

    The way from the claim to the point lies nearly in line with the next leg.
    """
    walk = HandWalk().halt(120).mark("0").walk(90, 720).halt(60).mark("stopped").walk(336.4, 100)
    points = [np.array([0.0, 0.0]), walk.places[-1]]
    walk.halt(60).mark("1").walk(344, 665).mark("2")
    points.append(walk.places[-1])
    clean = walk.halt(90).clean(5, receiver(1, 3.0))
    # The second look would mend it, too, of this walk.
    blind = replace(S, cost_rest_at_own_start=0.0, second_look_weight=0.0)
    before = match_walk(clean, card_of(*points), blind).legs[1]
    assert before.start_s == pytest.approx(walk.marks["stopped"] - 60.0, abs=75.0)
    legs = match_walk(clean, card_of(*points), S).legs
    assert [leg.status for leg in legs] == ["walked", "walked"]
    assert legs[1].start_s == pytest.approx(walk.marks["1"], abs=15.0)
    assert legs[1].claim_s == pytest.approx(walk.marks["2"], abs=15.0)


def test_who_comes_to_a_missed_point_from_far_off_has_not_walked_the_next_leg() -> None:
    """Bug: 550 m straight back to a point were "the back azimuth walked", though the leg followed.

    The next leg is due north, the point lies due south of where the walker thought it was.
    """
    walk = HandWalk().halt(120).walk(47, 800).halt(60).walk(137, 50).walk(227, 50).halt(30)
    walk.walk(180, 550)
    points = [np.zeros(2), walk.places[-1], walk.places[-1] + np.array([10.0, 500.0])]
    walk.halt(25).mark("1").walk(0, 500).mark("2").halt(60).walk(0, 10).halt(60)
    clean, card = walk.clean(5, receiver(1, 3.0)), card_of(*points)
    before = match_walk(clean, card, replace(S, cost_end_at_own_start=0.0)).legs[1]
    assert before.confidence < 0.7
    leg = match_walk(clean, card, S).legs[1]
    assert leg.start_s == pytest.approx(walk.marks["1"], abs=15.0)
    assert leg.claim_s == pytest.approx(walk.marks["2"], abs=15.0)
    assert leg.confidence > 0.9


def test_cuts_that_lie_strictly_between_two_others_on_paper() -> None:
    marked = np.array([True, False, True, False, False])
    first, second = np.array([0, 0, 1, 2, 3]), np.array([2, 3, 3, 4, 4])
    assert _any_between(marked, first, second).tolist() == [False, True, True, False, False]


@pytest.mark.parametrize(
    ("leaves_out", "rests", "nats"),
    [
        ((1,), True, S.cost_rest_at_left_out),
        ((1,), False, 0.0),  # who only passes by may not have seen it
        ((), True, 0.0),
        ((2,), True, 0.0),  # 50 m from the other
    ],
)
def test_a_point_rested_at_on_the_way_was_not_left_out(leaves_out, rests, nats):
    """Bug: two points in turn with a rest at each were skipped, 98 % sure."""
    edge = SimpleNamespace(leaves_out=leaves_out)
    to_point_m = np.array([[0.0, 300.0, 300.0], [300.0, 10.0, 60.0], [600.0, 300.0, 300.0]])
    cuts = SimpleNamespace(begins_halt=np.array([True, rests, True]))
    ends = np.array([0], dtype=np.int32), np.array([2], dtype=np.int32)
    assert cost_of_rest_at_left_out(edge, ends, cuts, to_point_m, 3.0, S).tolist() == [nats]


@pytest.mark.parametrize(("leg", "over"), [(0, {3: (1, 2), 2: (1,)}), (1, {3: (2,)})])
def test_ways_know_which_points_they_leave_out(leg, over):
    route = plan_route(card_of((0, 0), (400, 0), (800, 0), (1200, 0)), S)
    skips = {
        edge.target: edge.leaves_out
        for edge in route.edges
        if edge.kind == "link" and edge.source == leg and edge.target <= route.legs
    }
    assert skips == over
    (later,) = [e for e in route.edges if e.source == leg and e.target > 3 and e.kind == "link"]
    assert later.leaves_out == (leg + 1,)


def test_hardly_anybody_goes_on_for_twice_his_distance() -> None:
    shares = going_on_so_far(np.log([0.8, 1.0, S.going_on_most, 2.0]), S)
    middle = (1.0 + S.going_on_share) / 2.0
    assert shares[2] == pytest.approx(middle)
    assert shares[0] > shares[1] > 0.9 > shares[3] > S.going_on_share
    assert shares[3] < 0.1
