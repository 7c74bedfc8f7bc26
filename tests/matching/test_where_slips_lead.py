"""A leg walked after a slip on paper or at the dial is found where the slip leads.

The truth is what was drawn; a cut is right within 30 s or 30 m (the project's measure). What
a slip moves is worked out by hand beside each case.
"""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.match_walk import _explains_better, _in_doubt, _is_better, match_walk
from audit.matching.route import plan_route, with_slips
from audit.matching.where_slips_lead import Slips, carried_on, slips_of

S = SETTINGS.matching
SHIFTS = ((0.0, 1000.0),)
POINTS = ((0, 0), (400, 0), (400, 500), (-200, 500))
ALIKE = replace(S, slip_reach_sd=S.slip_apart_sd)
"""Settings under which a portion is near a slip where another slip would be the same."""
NEVER = replace(S, cost_slip=60.0)
"""Settings of who holds no slip possible."""


def test_a_wrong_digit_puts_the_point_whole_hundreds_aside() -> None:
    card = card_of(*POINTS)
    end, slips = card.legs[0].end, slips_of(card, 0, S)
    digits = [int(metres // 100) % 10 for metres in (end.east_m, end.north_m)]
    moves = [(100.0 * (digit - digits[0]), 0.0) for digit in range(10)]
    moves += [(0.0, 100.0 * (digit - digits[1])) for digit in range(10)]
    moves += [(1000.0, 0.0), (-1000.0, 0.0), (0.0, 1000.0), (0.0, -1000.0)]  # the next grid line
    known = with_the_leg_itself(slips, 90.0, 400.0)
    for east, north in moves:
        to = np.array([400.0 + east, north])
        if np.hypot(*to) >= 0.4 * 400.0:
            azimuth = np.degrees(np.arctan2(*to)) % 360.0
            _, near = known.nearest(np.array([azimuth]), np.array([np.hypot(*to)]), ALIKE)
            assert near.all()


def with_the_leg_itself(slips: Slips, azimuth_deg: float, distance_m: float) -> Slips:
    return Slips(
        azimuth_deg=np.append(slips.azimuth_deg, azimuth_deg),
        distance_m=np.append(slips.distance_m, distance_m),
    )


def test_slips_that_lead_alike_are_one_and_none_is_the_leg_itself() -> None:
    card = card_of(*POINTS)
    slips = slips_of(card, 0, S)
    alone = Slips(azimuth_deg=np.array([90.0]), distance_m=np.array([400.0]))
    _, near = alone.nearest(slips.azimuth_deg, slips.distance_m, ALIKE)
    assert not near.any()
    for number in range(len(slips.distance_m)):
        others = np.arange(len(slips.distance_m)) != number
        _, near = slips.part(others).nearest(
            slips.azimuth_deg[[number]], slips.distance_m[[number]], ALIKE
        )
        assert not near.any()


def test_a_point_that_nobody_plotted_is_not_misplotted() -> None:
    card = card_of(*POINTS)
    leg = replace(card.legs[0], end=replace(card.legs[0].end, dead_reckoned=True))
    slips = slips_of(replace(card, legs=(leg, *card.legs[1:])), 0, S)
    # Only the dial, 400 m each: the next leg's azimuth, 0; the magnetic azimuth of 97 degrees
    # set as 172.4 (1724 mil) and as 185.6 (97 numerals of 5.625 degrees), which are 165.4 and
    # 178.6 on the grid; a bezel turned the wrong way, to 263, which is 256 on the grid; a quarter
    # left is the first again, a quarter right the third.
    assert slips.distance_m == pytest.approx(400.0)
    assert (slips.azimuth_deg + 1e-6) % 360.0 == pytest.approx(
        [0.0, 165.44, 178.63, 256.0], abs=0.01
    )


def test_a_leg_along_a_bent_line_has_no_slips() -> None:
    card = card_of(*POINTS)
    bent = replace(card.legs[0], line=np.array([(0.0, 0.0), (200.0, 80.0), (400.0, 0.0)]))
    assert slips_of(replace(card, legs=(bent, *card.legs[1:])), 0, S) is None


def test_the_nearest_slip_is_told_of_each_portion() -> None:
    slips = Slips(azimuth_deg=np.array([0.0, 90.0]), distance_m=np.array([300.0, 600.0]))
    # In usual errors (7 degrees, 15.6 per cent): one of each, 90 degrees off, twice as long.
    slipped, near = slips.nearest(
        np.array([7.0, 90.0, 45.0, 0.0]), np.array([300.0, 700.0, 450.0, 600.0]), S
    )
    assert slipped.distance_m[:2].tolist() == [300.0, 600.0]
    assert near.tolist() == [True, True, False, False]


def misplotted(east_m: float, north_m: float, seed: int):
    """Walk the second leg to a point so far off; he then goes on from there, as the card has it."""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    to = np.array([east_m, 500.0 + north_m])
    azimuth, length = float(np.degrees(np.arctan2(*to))) % 360.0, float(np.hypot(*to))
    speed = length / round(length / 1.25)
    walk.walk(azimuth, length, speed_m_s=speed).mark("c").halt(60).mark("c2").walk(270, 600).mark(
        "d"
    ).halt(60)
    return walk, match_args(walk, seed)


def match_args(walk: HandWalk, seed: int):
    return walk.clean(1, receiver(seed, 3.0)), card_of(*POINTS)


def is_right(leg, walk: HandWalk, first: str, second: str) -> bool:
    return (
        leg.start_s is not None
        and abs(leg.start_s - walk.marks[first]) <= 30.0
        and abs(leg.claim_s - walk.marks[second]) <= 30.0
    )


def legs_as(*told: tuple[str, float]) -> SimpleNamespace:
    """Legs as sure as this: walked ones by the odds alone, whatever was told of them."""
    legs = (
        SimpleNamespace(leg=leg, status=status, confidence=1.0 - sure, sure_by_odds=sure)
        if status == "walked"
        else SimpleNamespace(leg=leg, status=status, confidence=sure, sure_by_odds=0.0)
        for leg, (status, sure) in enumerate(told)
    )
    return SimpleNamespace(legs=tuple(legs))


def test_in_doubt_is_what_is_not_sure_before_what_is() -> None:
    walked, left_out = "walked", "skipped"
    match = legs_as((walked, 0.95), (walked, 0.8), (left_out, 0.99), (walked, 0.6), (walked, 0.5))
    # The fourth leg is known at .6: before it the second is not sure, and the third is not there.
    assert _in_doubt(match, S) == [1, 2]
    assert _in_doubt(legs_as((walked, 0.5), (left_out, 1.0), (walked, 0.59)), S) == []
    assert _in_doubt(legs_as((walked, 0.9), (walked, 0.9)), S) == []


@pytest.mark.parametrize(
    ("before", "by_slips", "gained", "better"),
    [
        # A point left out for sure is known: told as a slip, in doubt, it was lost.
        ((("skipped", 0.92), ("walked", 0.9)), (("walked", 0.59), ("walked", 0.9)), 5.2, False),
        ((("skipped", 0.75), ("walked", 0.9)), (("walked", 0.88), ("walked", 0.9)), 3.0, True),
        ((("walked", 0.87), ("walked", 0.65)), (("walked", 0.56), ("walked", 0.77)), 5.5, False),
        ((("walked", 0.83), ("walked", 0.72)), (("walked", 0.63), ("walked", 0.74)), 1.3, False),
        ((("skipped", 0.98), ("walked", 0.7)), (("walked", 0.98), ("walked", 0.7)), 13.8, True),
    ],
)
def test_slips_are_believed_for_more_legs_or_much_better_sums(before, by_slips, gained, better):
    """Bug: a reading with slips was always taken, and overturned legs that were right."""
    match, slipped = legs_as(*before), legs_as(*by_slips)
    match.cost, slipped.cost = -50.0, -50.0 - gained
    assert _is_better(slipped, match, S) is better


USUAL = (("walked", 0.9), ("walked", 0.7), ("walked", 0.5))


@pytest.mark.parametrize(
    ("by_it", "gained", "pace", "better"),
    [
        ((("walked", 0.8), ("walked", 0.8), ("walked", 0.4)), 6.0, 0.5, True),
        ((("walked", 0.8), ("walked", 0.8), ("walked", 0.4)), 4.0, 0.5, False),
        ((("walked", 0.8), ("walked", 0.8), ("walked", 0.4)), 6.0, 1.34, False),  # no ruler does it
        ((("walked", 0.99), ("walked", 0.99), ("skipped", 0.98)), 12.6, 2.0, False),
        ((("walked", 0.3), ("walked", 0.3), ("walked", 0.3)), 56.0, 2.09, False),  # a winding path
    ],
)
def test_half_or_twice_is_believed_for_all_legs_by_much_better_sums(by_it, gained, pace, better):
    match, other = legs_as(*USUAL), legs_as(*by_it)
    match.cost, other.cost, other.pace_scale = -50.0, -50.0 - gained, pace
    assert _explains_better(other, match, S) is better


def test_only_planned_legs_that_are_asked_for_are_held_against_slips() -> None:
    card = card_of(*POINTS)
    route = plan_route(card, S)
    assert with_slips(route, card, [], S) is route
    slipped = with_slips(route, card, [1], S)
    assert slipped.edges[: len(route.edges)] == route.edges
    edge, wrong, onward = slipped.edges[len(route.edges) :]
    assert (edge.source, edge.target, edge.leg, edge.kind) == (1, 2, 1, "slip")
    assert edge.cost == S.cost_slip
    assert edge.slips.distance_m.tolist() == slips_of(card, 1, S).distance_m.tolist()
    # Or the next leg too is planned from where the point was plotted: both are walked, or none.
    assert (wrong.source, wrong.leg, wrong.kind) == (1, 1, "slip")
    assert (wrong.slips, wrong.cost) == (edge.slips, S.cost_slip + S.cost_slip_carried)
    assert (onward.source, onward.target) == (wrong.target, 3)
    assert (onward.leg, onward.kind, onward.cost) == (2, "carried", 0.0)
    assert slipped.order.index(1) < slipped.order.index(wrong.target) < slipped.order.index(3)
    assert wrong.target not in route.order
    assert route.position[wrong.target].tolist() == route.position[2].tolist()
    (last,) = with_slips(route, card, [2], S).edges[len(route.edges) :]
    assert (last.source, last.target, last.kind) == (2, 3, "slip")
    pinned = replace(route, edges=tuple(replace(edge, pinned=object()) for edge in route.edges))
    assert with_slips(pinned, card, [0, 1, 2], S) is pinned


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("shift", SHIFTS)
def test_a_leg_from_the_wrong_grid_line_is_found(shift, seed) -> None:
    walk, (clean, card) = misplotted(*shift, seed)
    match = match_walk(clean, card, S)
    assert is_right(match.legs[0], walk, "a", "b")
    assert is_right(match.legs[1], walk, "b2", "c")
    assert is_right(match.legs[2], walk, "c2", "d")


@pytest.mark.parametrize("shift", SHIFTS)
def test_without_slips_it_is_not_found(shift) -> None:
    """So the case is one that asks for them."""
    walk, (clean, card) = misplotted(*shift, 1)
    assert not is_right(match_walk(clean, card, NEVER).legs[1], walk, "b2", "c")


def test_the_next_leg_leads_from_where_the_point_was_plotted_to_its_own() -> None:
    """Points at (400, 0) and (400, 500): from the next line east the third lies 1118 m off."""
    onward = carried_on(card_of(*POINTS), 1, S)
    to = np.array([400.0, 500.0]) - np.array([1400.0, 0.0])
    azimuth = np.degrees(np.arctan2(*to)) % 360.0
    _, near = onward.nearest(np.array([azimuth]), np.array([np.hypot(*to)]), ALIKE)
    assert near.all()
    # Whose start nobody plotted, and who goes along a bent line, has no such ways.
    card = card_of(*POINTS)
    first = replace(card.legs[0], end=replace(card.legs[0].end, dead_reckoned=True))
    assert carried_on(replace(card, legs=(first, *card.legs[1:])), 1, S) is None
    bent = replace(card.legs[1], line=np.array([(400.0, 0.0), (500.0, 250.0), (400.0, 500.0)]))
    assert carried_on(replace(card, legs=(card.legs[0], bent, card.legs[2])), 1, S) is None


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_who_plans_on_from_a_wrong_point_is_found_on_both_legs(seed) -> None:
    """The second point is plotted on the next grid line east, at (1400, 500): the third leg leads
    from there to its own point, 1600 m west."""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    length = float(np.hypot(1000.0, 500.0))
    azimuth = float(np.degrees(np.arctan2(1000.0, 500.0)))
    walk.walk(azimuth, length, speed_m_s=length / 900.0).mark("c").halt(60).mark("c2")
    walk.walk(270, 1600).mark("d").halt(60).mark("d2").walk(90, 600).mark("e").halt(60)
    clean, card = walk.clean(1, receiver(seed, 3.0)), card_of(*POINTS, (400, 500))
    match = match_walk(clean, card, S)
    marks = (("a", "b"), ("b2", "c"), ("c2", "d"), ("d2", "e"))
    for leg, of in zip(match.legs, marks, strict=True):
        assert is_right(leg, walk, *of)
    # The case asks for it: were the third leg planned from where its point is, it would be lost.
    alone = match_walk(clean, card, replace(S, cost_slip_carried=60.0))
    assert not is_right(alone.legs[2], walk, "c2", "d")


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_leg_on_the_next_legs_azimuth_is_found(seed) -> None:
    """Legs of 90, 0, 270 degrees; the second is walked on 270, and the third after it."""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    walk.walk(270, 500).mark("c").halt(60).mark("c2").walk(270, 600).mark("d").halt(60)
    clean, card = match_args(walk, seed)
    match = match_walk(clean, card, S)
    assert is_right(match.legs[1], walk, "b2", "c")
    assert is_right(match.legs[2], walk, "c2", "d")


def test_slips_are_not_supposed_of_the_end_of_a_walk() -> None:
    """Who goes elsewhere after the last leg that is known may not have been on the course."""
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    walk.walk(0, 1500).halt(60).walk(90, 600).halt(60)
    clean, card = match_args(walk, 1)
    with_slips, without = match_walk(clean, card, S), match_walk(clean, card, NEVER)
    assert is_right(with_slips.legs[0], walk, "a", "b")
    assert [leg.status for leg in with_slips.legs] == [leg.status for leg in without.legs]


def test_a_walk_as_planned_is_matched_as_if_no_slip_could_be() -> None:
    walk = HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 500).halt(60).walk(270, 600).halt(60)
    clean, card = match_args(walk, 1)
    with_slips, without = match_walk(clean, card, S), match_walk(clean, card, NEVER)
    for one, other in zip(with_slips.legs, without.legs, strict=True):
        assert one.start_s == pytest.approx(other.start_s, abs=1.0)
        assert one.claim_s == pytest.approx(other.claim_s, abs=1.0)
        assert one.confidence == pytest.approx(other.confidence, abs=0.02)
