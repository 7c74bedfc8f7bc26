"""Walkers supposed, ways through the course, and what parts walks: worked out beside the check."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, card_of, clean_of, leg_as_carded

from audit.geodesy.along_line import metres_along
from audit.matching import outings, read_legs, rounds, supposed_walkers, walk_layout
from audit.matching.leg_match import LegMatch, Match
from audit.matching.outings import split_outings
from audit.matching.pins import Pin
from audit.matching.rounds import Round
from audit.matching.route import plan_route, walked_route
from audit.matching.supposed_walkers import (
    broad_walkers,
    fan_of_walkers,
    known_better,
    prior_cost,
    walkers_of_half_or_twice,
)
from audit.matching.walk_layout import near_course
from audit.matching.walker import Walker
from audit.units import turn_degrees

S = SETTINGS.matching
LEVEL = Walker(bias_deg=0.0, pace_scale=1.0, heading_sd_deg=7.0, distance_sd=0.156, finds=0.05)


def card_with(angle_deg):
    return card_of((0, 0), (400, 0), angle_deg=angle_deg)


def test_a_habit_costs_by_its_normal_law_and_a_slip_with_the_angle_by_its_own() -> None:
    def cost(bias_deg, angle_deg):
        return prior_cost(replace(LEVEL, bias_deg=bias_deg), card_with(angle_deg), S)

    assert cost(12.0, -60.0) == pytest.approx(0.5)
    assert cost(-24.0, -60.0) == pytest.approx(2.0)
    # Left out, taken the wrong way round, or twice: each within six degrees.
    for slip_deg in (-25.0, 25.0, -50.0):
        for off_deg, nats in ((0.0, 0.0), (6.0, 0.5), (-6.0, 0.5)):
            habit = 0.5 * ((slip_deg + off_deg) / 12.0) ** 2
            assert cost(slip_deg + off_deg, -25.0) == pytest.approx(min(4.0 + nats, habit))


def test_walkers_are_supposed_turned_by_habits_and_by_slips_with_the_angle() -> None:
    def turns(walkers):
        return sorted(one.bias_deg for one in walkers)

    fan = [-20.0, -10.0, 0.0, 10.0, 20.0]
    # Of 7 degrees 7 and 14 stand apart from the fan; of 11 only what is 3 from any.
    assert turns(fan_of_walkers(card_with(-6.0), S)) == sorted([*fan, -6.0, 6.0])
    assert turns(fan_of_walkers(card_with(-7.0), S)) == sorted([*fan, -14.0])
    assert turns(fan_of_walkers(card_with(-25.0), S)) == sorted([*fan, -25.0, 25.0, -50.0])
    assert turns(fan_of_walkers(card_with(-40.0), S)) == sorted(
        [*fan, -40.0, 40.0]
    )  # 80 is too far
    assert turns(broad_walkers(card_with(-7.0), S)) == [0.0]
    assert turns(broad_walkers(card_with(-20.0), S)) == [-40.0, 0.0]
    assert turns(broad_walkers(card_with(-31.0), S)) == [-62.0, -31.0, 0.0, 31.0]
    (broad,) = broad_walkers(card_with(-7.0), S)
    assert (broad.heading_sd_deg, broad.distance_sd) == (15.0, 0.2)
    usual = fan_of_walkers(card_with(-7.0), S)[0]
    assert (usual.heading_sd_deg, usual.distance_sd, usual.pace_scale) == (7.0, 0.156, 1.0)


def legs_walked(turns, ratios, near=(), *, share=0.9):
    """Odds and evidence of legs 400 m due east, each with one portion more likely than another."""
    odds, position, to_point = [], [], []
    for leg, (turn, ratio) in enumerate(zip(turns, ratios, strict=True)):
        angle = math.radians(90.0 + turn)
        metres = 400.0 * ratio
        begun = np.array([1000.0 * leg, 50.0])
        position += [begun, begun + metres * np.array([math.sin(angle), math.cos(angle)]),
                     begun - np.array([77.0, 0.0])]  # fmt: skip
        to_point += [999.0, 10.0 if leg in near else 400.0, 999.0]
        edge = SimpleNamespace(kind="leg", leg=leg, azimuth_deg=90.0, distance_m=400.0, target=0)
        first, second = np.full(2, 3 * leg), 3 * leg + np.array([2, 1])
        odds.append(SimpleNamespace(
            edge=edge, first=first, second=second, log_odds=np.log([0.01, share])))  # fmt: skip
    evidence = SimpleNamespace(
        settings=S, noise_m=4.0, cuts=SimpleNamespace(position=np.array(position)),
        to_point_m=np.array(to_point)[:, None],
    )  # fmt: skip
    return odds, evidence


def test_a_walker_is_known_better_by_what_his_legs_share() -> None:
    """Bias and pace are their middles, drawn to none as if a leg more had none; the scatter is
    mixed with the usual one by three legs."""
    turns, ratios = [8.0, 12.0, 16.0], [0.9, 1.0, 1.2]
    found = known_better(LEVEL, *legs_walked(turns, ratios, near=[0, 2]), S)
    assert found.bias_deg == pytest.approx(12.0 * 3 / 4)
    assert found.pace_scale == pytest.approx(1.0)
    scatter = 1.4826 * 4.0
    assert found.heading_sd_deg == pytest.approx(
        math.sqrt((3 * scatter**2 + 3 * 6.0**2) / 6), rel=1e-3
    )
    spread = 1.4826 * -math.log(0.9)
    assert found.distance_sd == pytest.approx(
        min(math.sqrt((3 * spread**2 + 3 * 0.09**2) / 6), 0.156), rel=1e-3
    )
    assert found.finds == pytest.approx((2 + 8 * 0.05) / (3 + 8))
    slower = known_better(LEVEL, *legs_walked([0.0] * 3, [0.8] * 3), S)
    assert slower.pace_scale == pytest.approx(0.8 ** (3 / 4.5))
    assert slower.heading_sd_deg == pytest.approx(math.sqrt(0.5) * 6.0)
    assert slower.distance_sd == pytest.approx(math.sqrt(0.5) * 0.09)
    wild = known_better(LEVEL, *legs_walked([-40.0, 0.0, 40.0], [0.7, 1.0, 1.4]), S)
    assert (wild.heading_sd_deg, wild.distance_sd) == (10.0, 0.156)
    found = known_better(LEVEL, *legs_walked([0.0] * 40, [1.0] * 40, near=range(40)), S)
    assert (found.heading_sd_deg, found.distance_sd, found.finds) == (4.0, 0.04, 0.8)


def test_of_one_leg_or_beyond_all_habits_nothing_is_learnt() -> None:
    assert known_better(LEVEL, *legs_walked([8.0], [1.0]), S) is LEVEL
    for turns, ratios in (([100.0] * 3, [1.0] * 3), ([0.0] * 9, [0.5] * 9), ([0.0] * 9, [2.0] * 9)):
        assert known_better(LEVEL, *legs_walked(turns, ratios), S) is LEVEL
    # Nor of portions that hardly stand out, of one in fifty.
    assert known_better(LEVEL, *legs_walked([8.0] * 3, [1.0] * 3, share=0.019), S) is LEVEL
    assert known_better(LEVEL, *legs_walked([8.0] * 3, [1.0] * 3, share=0.021), S) is not LEVEL


def test_of_each_leg_the_likeliest_portion_of_all_its_ways_counts() -> None:
    odds, evidence = legs_walked([8.0, 20.0], [1.0, 1.0])
    odds[1].edge.leg = 0  # the same leg in two ways, the second less likely
    odds[1].log_odds = np.log([0.01, 0.5])
    for order in (odds, odds[::-1]):
        turns, ratios, _ = supposed_walkers._leg_errors(order, evidence)
        assert (turns, ratios) == (pytest.approx([8.0]), pytest.approx([0.0], abs=1e-9))
    odds[1].log_odds = odds[0].log_odds.copy()  # of two as likely the first
    for order, turn in ((odds, 8.0), (odds[::-1], 20.0)):
        assert supposed_walkers._leg_errors(order, evidence)[0] == pytest.approx([turn])
    odds[0].edge.kind = "link"
    assert supposed_walkers._leg_errors(odds, evidence)[0] == pytest.approx([20.0])


TRIANGLE = card_of((0, 0), (400, 0), (400, 300), (0, 300), (0, 700))


def ways(route, kind, source=None):
    return [e for e in route.edges if e.kind == kind and source in (None, e.source)]


def where(route, edge):
    return [None if node < 0 else where_is(route, node) for node in (edge.source, edge.target)]


def where_is(route, node):
    return tuple(np.round(route.position[node] - route.position[0]))


def test_each_leg_is_walked_as_planned_back_to_front_from_within_or_given_up() -> None:
    route = plan_route(TRIANGLE, S)
    corners = [(0, 0), (400, 0), (400, 300), (0, 300), (0, 700)]
    azimuths, metres = [90.0, 0.0, 270.0, 0.0], [400.0, 300.0, 400.0, 400.0]
    for leg in range(4):
        for kind, from_, to, turn, price in (
            ("leg", corners[leg], corners[leg + 1], 0.0, 0.0),
            ("reversed", corners[leg], corners[leg + 1], 180.0, S.cost_reversed),
            ("late-start", None, corners[leg + 1], 0.0,
             S.cost_unfinished + 1.5 * S.cost_leg_left_out * leg),
            ("given-up", corners[leg], None, 0.0,
             S.cost_unfinished + S.cost_given_up + S.cost_leg_left_out * (3 - leg)),
        ):  # fmt: skip
            (edge, *_) = [e for e in ways(route, kind) if e.leg == leg]
            assert where(route, edge) == [from_, to]
            assert abs(turn_degrees(edge.azimuth_deg, azimuths[leg] + turn)) < 1e-3
            assert edge.distance_m == pytest.approx(metres[leg], abs=0.5)
            assert edge.cost == pytest.approx(price)
    # Wrong points are no part of a way before slips are supposed.
    everywhere = sorted([*route.order, *route.misplotted])
    assert (route.legs, everywhere) == (4, list(range(len(route.position))))
    assert [where_is(route, node) for node in route.misplotted] == corners[1:]


def test_who_began_or_ended_under_way_comes_from_and_goes_to_nowhere() -> None:
    route = plan_route(TRIANGLE, S)
    assert {edge.source for edge in ways(route, "late-start")} == {-1}
    assert {edge.target for edge in ways(route, "given-up")} == {-1}


def test_a_leg_along_a_bent_line_leads_from_its_one_end_to_the_other() -> None:
    """By (250, 90) to (400, 300); on its back azimuth it is walked straight."""
    route = plan_route(card_of((0, 0), (400, 300), (0, 300), via=((250, 90), (300, 100))), S)
    leg, back = (ways(route, kind)[0] for kind in ("leg", "reversed"))
    assert leg.azimuth_deg == pytest.approx(math.degrees(math.atan2(400, 300)), abs=1e-3)
    assert leg.distance_m == pytest.approx(500.0, abs=0.01)
    assert len(leg.line) == 4
    assert abs(turn_degrees(leg.azimuth_deg, back.azimuth_deg)) == pytest.approx(180.0)
    assert (back.line, leg.points_azimuth_deg, leg.points_distance_m) == (None, None, None)


def test_of_points_near_each_other_the_card_alone_is_believed() -> None:
    """Sixty metres: the errors of both places turn what is between them."""
    for metres, told in ((59.0, False), (61.0, True)):
        card = card_of((0, 0), (metres, 0), legs=(leg_as_carded(70.0, metres),))
        leg = ways(plan_route(card, S), "leg")[0]
        assert (leg.points_azimuth_deg is not None) is told


def test_points_are_left_out_one_or_two_at_a_time() -> None:
    route = plan_route(TRIANGLE, S)
    skips = {
        (e.source, e.target): e for e in ways(route, "link") if e.source <= 4 and e.target <= 4
    }
    assert set(skips) == {(0, 2), (1, 3), (2, 4), (0, 3), (1, 4)}
    assert skips[0, 2].distance_m == pytest.approx(500.0, abs=0.5)
    assert skips[0, 2].azimuth_deg == pytest.approx(math.degrees(math.atan2(400, 300)), abs=0.1)
    assert (skips[0, 2].cost, skips[0, 3].cost) == (S.cost_skip, pytest.approx(1.5 * S.cost_skip))
    # Two points within 60 m have no way between them that could be told.
    near = plan_route(card_of((0, 0), (400, 0), (30, 0), (400, 300)), S)
    assert (0, 2) not in {(e.source, e.target) for e in ways(near, "link")}


def test_the_next_two_points_are_taken_in_the_other_order() -> None:
    route = plan_route(TRIANGLE, S)
    for leg, corners in ((0, [(0, 0), (400, 300), (400, 0), (0, 300)]),
                         (1, [(400, 0), (0, 300), (400, 300), (0, 700)]),
                         (2, [(400, 300), (0, 700), (0, 300), None])):  # fmt: skip
        (begun,) = [e for e in ways(route, "link", leg) if e.target > 4]
        assert (where(route, begun), begun.cost) == (corners[:2], S.cost_exchange)
        (then,) = ways(route, "link", begun.target)
        assert (where(route, then), then.cost) == (corners[1:3], 0.0)
        last = ways(route, "link", then.target)
        assert [where(route, e) for e in last] == ([corners[2:]] if corners[3] else [])
        places = [route.order.index(node) for node in (leg, begun.target, then.target, leg + 1)]
        assert places == sorted(places)
    assert not [e for e in ways(route, "link", 3) if e.target > 4]


def test_a_leg_is_walked_again_from_its_start() -> None:
    route = plan_route(TRIANGLE, S)
    corners = [(0, 0), (400, 0), (400, 300), (0, 300), (0, 700)]
    for leg in range(4):
        (out,) = ways(route, "aside", leg)
        (back,) = ways(route, "aside", out.target)
        (again,) = ways(route, "leg", back.target)
        assert [where(route, e)[1] for e in (out, back, again)] == [
            corners[leg + 1], corners[leg], corners[leg + 1],
        ]  # fmt: skip
        assert (out.cost, back.cost, again.cost) == (S.cost_repeat, 0.0, 0.0)
        assert (out.leg, back.leg, again.leg, again.target) == (None, None, leg, leg + 1)
        assert abs(turn_degrees(out.azimuth_deg, back.azimuth_deg)) == pytest.approx(180.0)


def test_who_has_walked_the_back_azimuth_comes_back_by_the_start_to_the_point() -> None:
    """Twice the leg's distance along it, from as far behind its start as its point is before."""
    route = plan_route(TRIANGLE, S)
    behind = [(-400, 0), (400, -300), (800, 300), (0, -100)]
    corners = [(0, 0), (400, 0), (400, 300), (0, 300), (0, 700)]
    for leg in range(4):
        back = next(e for e in ways(route, "reversed", leg) if e.target > 4)
        (again,) = ways(route, "aside", back.target)
        assert where(route, back) == [corners[leg], behind[leg]]
        assert where(route, again) == [behind[leg], corners[leg + 1]]
        assert (back.leg, again.leg) == (leg, None)
        assert again.distance_m == pytest.approx(2.0 * back.distance_m)
        assert abs(turn_degrees(back.azimuth_deg, again.azimuth_deg)) == pytest.approx(180.0)
        assert (back.cost, again.cost) == (S.cost_reversed + S.cost_turned_back, 0.0)
    bent = plan_route(card_of((0, 0), (400, 300), via=((250, 90),)), S)
    assert [e.target for e in ways(bent, "reversed")] == [1]


def test_half_and_twice_the_distance_are_supposed_and_cost() -> None:
    card = card_with(-7.0)
    others = walkers_of_half_or_twice(S)
    assert [(one.pace_scale, one.bias_deg) for one in others] == [(0.5, 0.0), (2.0, 0.0)]
    assert [prior_cost(one, card, S) for one in others] == [S.cost_distance_factor] * 2
    # A habit, however large, is none of them.
    assert prior_cost(replace(LEVEL, pace_scale=1.59), card, S) == 0.0


def test_who_walks_twice_the_distance_is_known_better_about_twice() -> None:
    """Drawn towards twice the distance as if one leg and a half more had been walked so."""
    twice = replace(LEVEL, pace_scale=2.0, distance_factor=2.0)
    found = known_better(twice, *legs_walked([0.0, 0.0, 0.0], [2.2, 2.2, 2.2]), S)
    assert found.pace_scale == pytest.approx(2.0 * 1.1 ** (3.0 / 4.5))
    assert found.distance_factor == 2.0
    # Ratios of 0.4 draw him to twice 0.2 ^ (3 / 4.5), 0.68: no longer a habit about it.
    assert known_better(twice, *legs_walked([0.0, 0.0, 0.0], [0.4, 0.4, 0.4]), S) is twice


def test_of_nodes_beside_the_plan_only_those_walked_to_are_kept() -> None:
    route = plan_route(TRIANGLE, S)
    (out,) = ways(route, "aside", 1)
    assert walked_route(route, []).order == (0, 1, 2, 3, 4)
    assert walked_route(route, [out]).order == (0, 1, out.target, 2, 3, 4)


def test_where_card_and_points_differ_both_are_known() -> None:
    """By three degrees, or by a twentieth."""
    for said, told in (((94.0, 400.0), (True, False)), ((92.0, 410.0), (False, False)),
                       ((90.0, 450.0), (False, True)), ((86.0, 350.0), (True, True))):  # fmt: skip
        card = card_of((0, 0), (400, 0), legs=(leg_as_carded(*said),))
        leg, back = (ways(plan_route(card, S), kind)[0] for kind in ("leg", "reversed"))
        assert (leg.points_azimuth_deg is not None, leg.points_distance_m is not None) == told
        assert back.points_azimuth_deg is None
        if told[0]:
            assert leg.points_azimuth_deg == pytest.approx(90.0, abs=0.01)
        if told[1]:
            assert leg.points_distance_m == pytest.approx(400.0, abs=0.5)


def matched(legs, of=4, cost=-10.0, halts=()):
    made = tuple(
        LegMatch(leg=n, status="walked", start_s=100.0 * n, claim_s=100.0 * n + 60.0)
        if n in legs else LegMatch(leg=n, status="skipped") for n in range(of)
    )  # fmt: skip
    match = Match(legs=made, noise_m=3.0, halts=np.array(halts, float).reshape(-1, 2), bias_deg=0.0,
                  pace_scale=1.0, cost=cost)  # fmt: skip
    time_s = np.arange(0.0, 1001.0)
    sampled = SimpleNamespace(
        samples=SimpleNamespace(time_s=time_s), movement=SimpleNamespace(path_m=2.0 * time_s),
        clean=SimpleNamespace(time_s=time_s),
    )  # fmt: skip
    return outings._Walk(sampled=sampled, match=match)


def test_a_walk_of_the_course_has_half_its_legs_and_speaks_for_it() -> None:
    assert [matched(legs).is_of_course for legs in ([0], [0, 1], [0, 1, 2])] == [False, True, True]
    assert not matched([0, 1, 2], cost=0.0).is_of_course
    assert (matched(range(4)).is_whole, matched(range(3)).is_whole) == (True, False)


@pytest.mark.parametrize(
    ("legs", "costs", "whole", "apart"),
    [
        # One side alone fits better than both together, by three nats.
        (([0], [3]), (-103.1, -1.0), -100.0, True), (([0], [3]), (-102.9, -1.0), -100.0, False),
        # All legs on either side: half as well is enough; half of them: three quarters.
        ((range(4), range(4)), (-50.1, -9.0), -100.0, True),
        ((range(4), range(4)), (-49.9, -9.0), -100.0, False),
        (([0, 1], [0, 1]), (-75.1, -9.0), -100.0, True),
        (([0, 1], [0, 1]), (-74.9, -9.0), -100.0, False),
        (([0, 1, 2], [0, 1, 2]), (-69.0, -9.0), -100.0, True),  # 0.75 less a quarter of 0.25
        (([0, 1, 2], [0, 1, 2]), (-68.0, -9.0), -100.0, False),
        # Fewer legs on both sides: a rest on the way.
        (([0, 1], [1, 2]), (-99.0, -98.0), -100.0, False),
        ((range(4), range(4)), (1.0, 2.0), 3.0, False),
    ],
)  # fmt: skip
def test_walks_are_apart_where_both_sides_are_walks(legs, costs, whole, apart) -> None:
    sides = [matched(of, cost=cost) for of, cost in zip(legs, costs, strict=True)]
    assert outings._apart(sides, matched([0], cost=whole), S) is apart


def test_path_beside_the_legs() -> None:
    """Two metres a second for 1000 s, less 60 s of each leg."""
    assert outings._beside_legs_m(matched([0, 2])) == 2000.0 - 2 * 120.0


def test_pauses_are_the_longest_silences_and_halts_of_five_minutes() -> None:
    walk = matched([0], halts=[(100.0, 399.0), (500.0, 900.0), (2000.0, 2300.0)])
    time_s = np.array([0.0, 10.0, 1000.0, 1010.0, 1400.0, 1410.0])
    walk.sampled.clean.time_s = time_s
    assert outings._pauses(walk, S) == [1000.0, 700.0, 1400.0, 2150.0]
    long = matched([0], halts=[(100.0, 500.0)])
    long.sampled.clean.time_s = time_s
    assert outings._pauses(long, S) == [1000.0, 300.0, 1400.0]
    more = matched([0], halts=[(1000.0 * n, 1000.0 * n + 400.0 + n) for n in range(6)])
    assert outings._pauses(more, S) == [1000.0 * n + 200.0 + n / 2.0 for n in (5, 4, 3, 2)]


@pytest.mark.parametrize(("away_m", "by"), [(199.0, True), (201.0, False)])
def test_a_stretch_comes_by_the_course_within_200_m_of_most_of_its_points(away_m, by) -> None:
    """Of five points three must be near."""
    start = TRIANGLE.legs[0].start
    near = np.array([(0, 0), (400, 0), (400 + away_m, 300)], dtype=np.float64)
    place = near + np.array([start.east_m, start.north_m])
    card = card_of((0, 0), (400, 0), (400, 300), (-9000, 300), (-9000, 9000))
    assert outings._comes_by(clean_of(np.arange(3.0), place), card, S) is by
    assert not outings._comes_by(clean_of(np.arange(1.0), place[:1], every_s=1.0), card, S)
    two = card_of((0, 0), (400, 0), (410, 9))
    assert outings._comes_by(clean_of(np.arange(2.0), place[:2]), two, S)


def test_a_silence_of_six_hours_parts_outings_but_not_between_pins() -> None:
    time_s = np.array([0.0, 10.0, 21_610.0, 21_620.0, 43_221.0, 43_230.0])
    clean = clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]))

    def parts(*pinned_s):
        pins = [Pin(leg=n, end="claim", time_s=s) for n, s in enumerate(pinned_s)]
        return [len(part) for part in split_outings(clean, S, pins)]

    assert parts() == [4, 2]  # the first silence is six hours sharp
    assert parts(10.0, 21_620.0) == [4, 2]
    assert parts(10.0, 43_230.0) == parts(21_620.0, 43_221.0) == [6]
    assert parts(43_221.0, 43_230.0) == [4, 2]


def test_only_what_lies_near_the_course_or_is_pinned_is_kept() -> None:
    """The course reaches 350 m from its middle; 2500 m further is too far."""
    card = card_of((0, 0), (0, 700))
    start = card.legs[0].start
    off = np.array([5000.0, 2851.0, 2849.0, 0.0, 4000.0, 2849.0, 2851.0, 6000.0])
    clean = clean_of(10.0 * np.arange(8), np.column_stack([start.east_m + off,
                                                           np.full(8, start.north_m + 350.0)]))  # fmt: skip
    assert near_course(clean, card, S).time_s.tolist() == [20.0, 30.0, 40.0, 50.0]
    pinned = near_course(clean, card, S, [Pin(leg=0, end="claim", time_s=70.0)])
    assert pinned.time_s.tolist() == [20.0, 30.0, 40.0, 50.0, 60.0, 70.0]
    far = replace(clean, east_m=clean.east_m + 90_000.0)
    assert near_course(far, card, S) is far


def test_a_halt_on_the_way_is_charged_by_how_often_this_walker_stops() -> None:
    """Two halts a leg belong to points: of 20 on a course of 3 legs, 12, and 2 that all make."""

    def fitted(halts, path_m, legs=3, interval_s=1.0):
        movement = SimpleNamespace(halts=np.zeros((halts, 2)), path_m=np.array([0.0, path_m]))
        return walk_layout._fitted_to_halts(S, movement, legs, interval_s)

    assert fitted(20, 8000.0).cost_halt == pytest.approx(-math.log(14.0 / 8000.0 * 100.0))
    assert fitted(5, 4000.0).cost_halt == pytest.approx(-math.log(2.0 / 4000.0 * 100.0))
    assert fitted(5, 200.0).cost_halt == pytest.approx(-math.log(2.0 / 1000.0 * 100.0))
    assert (fitted(90, 3000.0).cost_halt, fitted(1, 90_000.0).cost_halt) == S.cost_halt_range
    # Fixes every 12 s show half of the bends.
    for interval_s, seen in ((1.0, 1.0), (6.0, 1.0), (12.0, 0.5)):
        assert fitted(5, 4000.0, 3, interval_s).cost_mid_stride == S.cost_mid_stride * seen


def test_smoothing_and_speed_are_fitted_to_the_noise() -> None:
    for noise_m, smoothing_s, window_s in ((2.0, 5.0, 15.0), (6.0, 9.0, 30.0), (20.0, 11.0, 36.0)):
        fitted = walk_layout._fitted_to_noise(S, noise_m)
        assert (fitted.smoothing_s, fitted.speed_window_s) == (smoothing_s, window_s)


def test_odds_are_turned_into_how_often_they_are_right() -> None:
    """A line in log odds, of legs walked and of others."""
    for walked, slope, offset in (
        (True, S.confidence_slope, S.confidence_offset),
        (False, S.confidence_slope_else, S.confidence_offset_else),
    ):
        for share in (0.1, 0.5, 0.97):
            log_odds = slope * math.log(share / (1.0 - share)) + offset
            told = read_legs._calibrated(share, S, walked=walked)
            assert told == pytest.approx(1.0 / (1.0 + math.exp(-log_odds)))
        for sure, nearly in ((0.0, 1e-6), (1.0, 1.0 - 1e-6)):
            one, other = (
                read_legs._calibrated(share, S, walked=walked) for share in (sure, nearly)
            )
            assert one == other


def test_a_round_is_weighed_with_half_a_course_before_and_behind_it() -> None:
    """A course of 1500 m and a margin of 5 km: 3250 m of way, up to where another round passes."""
    time_s = np.arange(0.0, 20_001.0, 10.0)
    clean = clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]))
    path_m = metres_along(clean.places())
    assert path_m.tolist() == time_s.tolist()

    def part(one, *others):
        every = [Round(first=a, last=b, cost=0.0) for a, b in (one, *others)]
        got = rounds._with_way_there(clean, path_m, every[0], every, TRIANGLE, S)
        return got.time_s[0], got.time_s[-1]

    assert part((800, 1000)) == pytest.approx((4750.0, 13_250.0), abs=10.0)  # a fix
    assert part((800, 1000), (500, 600), (100, 200), (1200, 1300), (1700, 1800)) == (
        6010.0,
        11_990.0,
    )
    assert part((100, 200)) == pytest.approx((0.0, 5250.0), abs=10.0)
