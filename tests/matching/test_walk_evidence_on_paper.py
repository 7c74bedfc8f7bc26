"""What portions are worth as a leg: laws that the likelihoods keep, and sums on paper."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace
from unittest.mock import Mock

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of
from scipy.integrate import trapezoid
from scipy.special import expit
from scipy.stats import norm

from audit.matching import edge_evidence, walk_evidence
from audit.matching.chord_likelihood import (
    distance_likelihood,
    going_on_so_far,
    heading_likelihood,
    length_likelihood,
)
from audit.matching.cut_costs import cost_at_cuts
from audit.matching.route import Edge
from audit.matching.walk_evidence import Evidence
from audit.matching.walk_layout import lay_out
from audit.matching.walker import Walker
from audit.matching.where_slips_lead import Slips

S = SETTINGS.matching
WALKER = Walker(bias_deg=4.0, pace_scale=1.1, heading_sd_deg=6.0, distance_sd=0.12, finds=0.2)


def edge(kind="leg", **known) -> Edge:
    known = {"azimuth_deg": 350.0, "distance_m": 500.0, "cost": 0.0} | known
    return Edge(source=0, target=1, leg=0, kind=kind, **known)


def seen_of(count=3, **looks):
    """Portions that look alike, unless it is said what they look like."""
    usual = {"chord_deg": 350.0, "log_chord": math.log(500.0), "chord_sd_deg": 1.0,
             "directly": 1.0, "bent_cost": 0.0}  # fmt: skip
    full = {name: np.broadcast_to(value, count) for name, value in (usual | looks).items()}
    return SimpleNamespace(
        looks=SimpleNamespace(**full), length=np.full(count, 2.0), found=np.full(count, 0.5)
    )


def evidence_of(**known):
    """Evidence of nothing, to ask for one likelihood alone."""
    made = Evidence.__new__(Evidence)
    made.settings, made.place_sd_m, made.learnt = S, 8.0, None
    for name, value in known.items():
        setattr(made, name, value)
    return made


def test_the_likelihood_of_a_direction_is_one_on_the_mean_over_the_circle() -> None:
    """It is set against an even one."""
    degrees = np.linspace(0.0, 360.0, 7201)
    looks = SimpleNamespace(chord_deg=degrees, chord_sd_deg=np.full(7201, 8.0))
    got = heading_likelihood(looks, 350.0, WALKER, S)
    assert trapezoid(got, degrees) / 360.0 == pytest.approx(1.0, abs=1e-6)
    # A normal law of both errors together, 10 degrees, beside a stray share.
    off = (degrees - 350.0 + 180.0) % 360.0 - 180.0
    law = S.stray_heading_share + (1.0 - S.stray_heading_share) * 360.0 * norm.pdf(off, 0.0, 10.0)
    assert got == pytest.approx(law)


@pytest.mark.parametrize("planned_m", [500.0, 150.0, 140.0, 125.0, 100.0])
def test_the_likelihood_of_a_length_knows_lost_hundreds_and_single_for_double_paces(
    planned_m,
) -> None:
    """Its shares add up over the logarithm of the length; each is where its slip leads."""
    log_m = np.linspace(math.log(1.0), math.log(20_000.0), 200_001)
    got = length_likelihood(log_m, planned_m, WALKER, 8.0, S)
    sd = math.hypot(0.12, 8.0 / planned_m)
    shares = {1.1 * planned_m: 1.0 - S.stray_distance_share}
    shares |= {1.1 * planned_m * factor: S.factor_two_share for factor in (0.5, 2.0)}
    for hundred in (-100.0, 100.0):
        if 1.1 * planned_m + hundred > S.shortest_partial_m:
            shares[1.1 * planned_m + hundred] = S.hundred_share
    law = sum(share * norm.pdf(log_m, math.log(m), sd) for m, share in shares.items())
    assert got == pytest.approx(3.0 * law + S.stray_distance_share)
    above = trapezoid(got - S.stray_distance_share, log_m)
    assert above == pytest.approx(3.0 * sum(shares.values()), rel=1e-3)


@pytest.mark.parametrize(("planned_m", "other"), [(200.0, 100.0), (100.0, -100.0), (140.0, 100.0)])
def test_a_hundred_that_is_half_or_twice_the_distance_is_told_once(planned_m, other) -> None:
    """Of 200 m a hundred lost is half of them; of 100 m a hundred more is twice.

    One that leaves no more than the shortest stretch is no lost hundred.
    """
    even = replace(WALKER, pace_scale=1.0)
    log_m = np.log(np.linspace(30.0, 900.0, 50))
    sd = math.hypot(0.12, 8.0 / planned_m)
    shares = {planned_m: 1.0 - S.stray_distance_share, planned_m + other: S.hundred_share}
    shares |= {planned_m * factor: S.factor_two_share for factor in (0.5, 2.0)}
    if planned_m + other <= S.shortest_partial_m:
        del shares[planned_m + other]
    law = sum(share * norm.pdf(log_m, math.log(m), sd) for m, share in shares.items())
    got = length_likelihood(log_m, planned_m, even, 8.0, S)
    assert got == pytest.approx(3.0 * law + S.stray_distance_share)


def test_where_card_and_points_differ_he_may_have_gone_by_either() -> None:
    looks = SimpleNamespace(log_chord=np.log(np.array([400.0, 500.0, 600.0])))
    both = distance_likelihood(edge(points_distance_m=600.0), looks, WALKER, 8.0, S)
    one, other = (length_likelihood(looks.log_chord, m, WALKER, 8.0, S) for m in (500.0, 600.0))
    assert both == pytest.approx((one + other) / 2.0)
    assert distance_likelihood(edge(), looks, WALKER, 8.0, S) == pytest.approx(one)


def test_a_length_that_is_not_likely_speaks_against_a_leg() -> None:
    """Its sign is what it costs: minus the logarithm of its likelihood."""
    asked = Mock(return_value="told")
    made = evidence_of(seen=SimpleNamespace(of_walker=asked))
    seen = SimpleNamespace(length=np.array([1.0, 0.5, 20.0]), log_ratio="ratio", directions="ways")
    assert made._walker_signs("an edge", seen) == "told"
    of, ratio, cost, ways = asked.call_args.args
    assert (of, ratio, ways) == ("an edge", "ratio", "ways")
    assert cost == pytest.approx([0.0, math.log(2.0), -math.log(20.0)])


def test_edges_share_what_they_cost_only_where_they_begin_and_end_alike() -> None:
    """Nodes 0 and 2 are one place; none is nowhere, whatever place comes first."""
    made = evidence_of(_place_of=np.array([0, 1, 0]), _keys={})

    def key(source, target, **known):
        of = Edge(source=source, target=target, azimuth_deg=0.0, distance_m=1.0, leg=3,
                  kind="leg", cost=0.0, **known)  # fmt: skip
        return made.key(of)

    assert key(0, 1) == key(2, 1) != key(1, 0)
    assert key(0, 1) != key(-1, 1)
    assert key(1, 0) != key(1, -1)
    assert (key(0, 1).leg, key(0, 1, line=np.zeros((3, 2))).leg) == (None, 3)
    assert key(0, 1, points_distance_m=4.0).by_points == (None, 4.0)


def cuts_of(turn_deg, rest_s=0.0):
    turn_deg = np.asarray(turn_deg, dtype=np.float64)
    count = len(turn_deg)
    return SimpleNamespace(
        turn_deg=turn_deg, rest_s=np.full(count, rest_s), unseen=np.zeros(count, dtype=bool)
    )


def test_arriving_in_mid_stride_is_dear_and_at_a_sharp_bend_cheap() -> None:
    """Both go over by a logistic curve, at 24 degrees and at 90."""
    turn = np.array([0.0, 18.0, 24.0, 30.0, 60.0, 90.0, 105.0, 180.0])
    got = cost_at_cuts(cuts_of(turn), np.zeros(8, dtype=bool), 1.0, S)
    mid_stride = expit(-(turn - S.bend_deg) / S.bend_soft_deg)
    sharp = expit((turn - S.sharp_bend_deg) / S.sharp_bend_soft_deg)
    assert got == pytest.approx(S.cost_mid_stride * mid_stride - S.gain_sharp_bend * sharp)


def test_a_bend_or_a_rest_that_a_silence_hides_is_as_good_as_seen() -> None:
    cuts = cuts_of(np.array([0.0, 40.0, 180.0]))
    cuts.unseen = np.ones(3, dtype=bool)
    got = cost_at_cuts(cuts, np.zeros(3, dtype=bool), 1.0, S)
    assert got[0] == pytest.approx(S.cost_mid_stride, abs=0.05)
    assert got[1:].tolist() == [-S.gain_unseen, -S.gain_unseen]


def test_who_rests_long_has_reached_a_point() -> None:
    for rest_s, longer in ((S.rest_usual_s, 0.0), (S.rest_usual_s + S.rest_range_s, math.tanh(1.0)),
                           (1e5, 1.0)):  # fmt: skip
        got = cost_at_cuts(cuts_of([0.0, 180.0], rest_s), np.array([True, True]), 1.5, S)
        resting = -S.gain_halt - 1.5 * longer
        assert got == pytest.approx([resting, min(resting, -S.gain_sharp_bend)], abs=0.02)


def turned_cost(made, at, seen, turn_deg=0.0, walker=WALKER):
    return made._cost_turned(at, seen, walker, turn_deg, np.array([7.0, 0.0, 0.0]))


def test_a_leg_ends_where_it_was_reckoned_or_where_its_point_was_found() -> None:
    """Direction times length, or the point seen; directions and the price of chance beside."""
    made = evidence_of(_chance_price=Mock(return_value=3.0))
    for turn_deg in (0.0, 9.0, -9.0):
        seen = seen_of(chord_deg=np.array([354.0, 0.0, 340.0]))
        towards = heading_likelihood(seen.looks, 350.0 + 4.0 + turn_deg, WALKER, S)
        expected = -np.log(towards * 2.0 + 0.5) + np.array([7.0, 0.0, 0.0]) + 3.0
        assert turned_cost(made, edge(), seen, turn_deg) == pytest.approx(expected)
        points = heading_likelihood(seen.looks, 10.0 + 4.0 + turn_deg, WALKER, S)
        expected = -np.log((towards + points) / 2.0 * 2.0 + 0.5) + np.array([7.0, 0.0, 0.0]) + 3.0
        by_points = edge(points_azimuth_deg=10.0)
        assert turned_cost(made, by_points, seen, turn_deg) == pytest.approx(expected)


@pytest.mark.parametrize("kind", ["late-start", "given-up"])
def test_part_of_a_leg_is_shorter_than_the_leg(kind) -> None:
    """By a twentieth at least of what this walker makes of it, 550 m."""
    made = evidence_of(_chance_price=Mock(return_value=0.0))
    seen = seen_of(log_chord=np.log(np.array([300.0, 520.0, 525.0])))
    towards = heading_likelihood(seen.looks, 354.0, WALKER, S)
    extra = np.array([S.cost_partial_distance + 7.0, S.cost_partial_distance, S.cost_impossible])
    assert turned_cost(made, edge(kind), seen) == pytest.approx(-np.log(towards) + extra)


def test_who_went_astray_walked_straight_and_as_far() -> None:
    seen = seen_of(bent_cost=np.array([0.0, 1.0, 3.0]))
    got = evidence_of()._astray_cost(seen)
    assert got == pytest.approx(np.array([0.0, 1.0, 3.0]) - math.log(S.astray_share * 2.0))


def test_the_price_of_chance_goes_with_what_directions_can_bring_up_to_a_limit() -> None:
    directions = SimpleNamespace(most_gain=lambda metres: metres / 100.0)
    made = evidence_of(directions=directions)
    assert made._chance_price(edge(), WALKER) == pytest.approx(S.chance_price_share * 5.5)
    assert made._chance_price(edge(distance_m=1e5), WALKER) == S.chance_price_most


def test_all_that_may_have_happened_on_a_leg_adds_up(monkeypatch) -> None:
    """As usual, turned a third of a right angle either way, or astray: odds are summed."""
    share, seen = S.turned_leg_share, seen_of()
    at = SimpleNamespace(
        index=np.arange(3),
        at_target=np.array([1.0, 2.0, 0.0]),
        standing_cost=np.array([0.3, 0.0, 1.0]),
        slipped=None,
    )
    costs = {0.0: np.array([1.0, 9.0, 2.0]), -S.turned_leg_deg: np.array([2.0, 8.0, 9.0]),
             S.turned_leg_deg: np.array([9.0, 1.0, 9.0])}  # fmt: skip
    found = []

    def turned(_edge, seen, _walker, turn_deg, directions):
        found.append(seen.found)
        assert directions == ("directions", turn_deg)
        return costs[turn_deg]

    monkeypatch.setattr(walk_evidence, "look_at_portions", lambda *_: seen.looks)
    made = evidence_of(
        of_edge=Mock(return_value=at), portions=None, noise_m=5.0,
        _cost_turned=turned, _astray_cost=Mock(return_value=np.array([4.0, 4.0, 4.0])),
        _direction_cost=lambda *asked: ("directions", asked[3]),
    )  # fmt: skip
    odds = (1.0 - 2.0 * share) * np.exp(-costs[0.0]) + math.exp(-4.0)
    odds += share * (np.exp(-costs[S.turned_leg_deg]) + np.exp(-costs[-S.turned_leg_deg]))
    got = made.portion_costs(edge(), WALKER)
    assert got == pytest.approx(at.standing_cost - np.log(odds))
    so_far = going_on_so_far(seen.looks.log_chord - math.log(edge().distance_m * 1.1), S)
    assert found[0] == pytest.approx((S.found_share + 0.2) * at.at_target * so_far)
    # No other kind is turned, nor goes astray.
    link = made.portion_costs(edge("link"), WALKER)
    assert link == pytest.approx(costs[0.0] + at.standing_cost)


def test_directions_are_expected_as_this_walker_turns() -> None:
    asked = Mock()
    made = evidence_of(
        directions=SimpleNamespace(cost=asked, most_gain=lambda metres: metres / 100.0),
        _reach={20.0: (3, 9)},
    )
    at = SimpleNamespace(reach=(1, 5))
    made._direction_cost(edge(azimuth_deg=20.0), at, WALKER, -30.0)
    assert asked.call_args.args[2:] == (
        pytest.approx(20.0 + 4.0 - 30.0),
        pytest.approx(5.5),
        (3, 9),
    )
    made._direction_cost(edge(azimuth_deg=21.0), at, WALKER, 0.0)
    assert asked.call_args.args[2:] == (pytest.approx(25.0), pytest.approx(5.5), (1, 5))


def test_edges_of_one_direction_share_the_cuts_from_first_to_last() -> None:
    def touched(first, second):
        return SimpleNamespace(
            index=np.arange(len(first)), first=np.array(first), second=np.array(second)
        )

    parts = [touched([4, 3], [6, 8]), touched([5], [12]), touched([], []), touched([7, 2], [9, 11])]
    reaches = edge_evidence.reaches(zip([20.0, 20.0, 30.0, 40.0], parts, strict=True))
    assert reaches == {20.0: (3, 12), 40.0: (2, 11)}


CARD = card_of((0, 0), (300, 0), (300, 400))


def two_legs() -> HandWalk:
    """With halts at both ends of each."""
    return HandWalk().halt(60).walk(90, 300).halt(60).walk(0, 400).halt(60)


@pytest.fixture
def ready():
    """Another 100 m on to where the recorder stops."""
    return lay_out(two_legs().walk(45, 100).clean(), CARD, S)


def test_coming_to_a_point_is_dear_away_from_it(ready) -> None:
    of = ready.evidence
    near = np.exp(-0.5 * (of.to_point_m / S.arrival_sd_m) ** 2)
    law = -np.log(near + math.exp(-S.cost_arrive_elsewhere))
    assert of.at_point[:-1] == pytest.approx(law[:-1])
    # Who was recorded no further than in mid-stride claimed nothing there, nor gave up.
    last = law[-1] + S.cost_recording_ends * (1.0 - near[-1])
    assert of.at_point[-1] == pytest.approx(last)
    assert (of.give_up[-1], of.give_up[0]) == (-S.cost_given_up, of.arrive[0])


def test_a_recording_that_ends_in_a_halt_ends_at_a_claim() -> None:
    of = lay_out(two_legs().clean(), CARD, S).evidence
    near = np.exp(-0.5 * (of.to_point_m / S.arrival_sd_m) ** 2)
    assert of.at_point == pytest.approx(-np.log(near + math.exp(-S.cost_arrive_elsewhere)))
    assert of.give_up.tolist() == of.arrive.tolist()


def test_how_far_cuts_are_from_points_and_where_ends_are_expected(ready) -> None:
    of = ready.evidence
    for node, point in enumerate(of.route.position):
        away = np.hypot(*(of.cuts.position - point).T)
        assert of.to_point_m[:, node] == pytest.approx(away)
    noise_m = ready.movement.noise_m
    assert of.place_sd_m == pytest.approx(math.hypot(1.4 * noise_m, S.place_sd_m))
    cut = np.array([2, 3, 5])
    towards = next(one for one in of.route.edges if one.kind == "leg" and one.target == 2)
    assert of.ending(towards, cut) == pytest.approx(of.arrive[cut] + of.at_point[cut, 2])
    given_up = next(one for one in of.route.edges if one.kind == "given-up")
    assert of.ending(given_up, cut) == pytest.approx(of.give_up[cut])


def test_nodes_of_one_place_share_what_is_known_of_their_edges(ready) -> None:
    of = ready.evidence
    again = [one for one in of.route.edges if one.kind == "aside"]
    out = next(one for one in again if one.source == 0)
    leg = next(
        one for one in of.route.edges if one.kind == "leg" and one.source == 0 and one.target == 1
    )
    assert of.key(out)[3:5] == of.key(leg)[3:5]
    late = next(one for one in of.route.edges if one.kind == "late-start" and one.target == 1)
    assert of.key(late).source == -1
    bent = replace(leg, line=np.zeros((3, 2)))
    assert (of.key(leg).leg, of.key(bent).leg) == (None, 0)


def slipped_of(azimuth_deg: float, *distance_m: float) -> Slips:
    return Slips(azimuth_deg=np.full(len(distance_m), azimuth_deg), distance_m=np.array(distance_m))


def test_a_slip_is_held_against_its_own_length_and_straightness() -> None:
    """A metre brings a hundredth of a nat at most here; usual legs half of it, less a price."""
    seen = seen_of(log_chord=np.log([500.0, 4000.0, 600.0]), bent_cost=[0.0, 0.0, 1.0])
    made = evidence_of(directions=SimpleNamespace(most_gain=lambda metres: metres / 100.0))
    got = made._seen_slipped(
        SimpleNamespace(index=np.arange(3)),
        slipped_of(0.0, 500.0, 4000.0, 500.0),
        seen.looks,
        WALKER,
    )
    share = S.slip_direction_share
    # The price of chance is a share of what can be brought: 2 of 5, and no more than 8 of 40.
    assert S.chance_price_share * 5.0 == pytest.approx(2.0)
    assert got.directions == pytest.approx(
        [2.0 - 5.0 * share, 8.0 - 40.0 * share, 1.0 + 2.0 - 5.0 * share / math.e]
    )
    assert got.log_ratio == pytest.approx(
        np.log([1.0, 1.0, 1.2]) - math.log(WALKER.pace_scale), abs=1e-12
    )
    sd = np.hypot(WALKER.distance_sd, 8.0 / np.array([500.0, 4000.0, 500.0]))
    normal = np.exp(-0.5 * (got.log_ratio / sd) ** 2) / (sd * math.sqrt(2.0 * math.pi))
    assert got.length == pytest.approx(3.0 * normal + S.stray_distance_share)
    assert not got.found.any()  # nobody sees his point where he does not go


def test_a_slip_is_held_against_its_own_azimuth_as_this_walker_turns() -> None:
    seen = seen_of(chord_deg=[20.0 + WALKER.bias_deg, 60.0, 350.0])
    seen.directions = np.array([-3.0, 0.0, 2.0])
    made, slipped = evidence_of(), slipped_of(20.0, 500.0, 500.0, 500.0)
    likely = heading_likelihood(seen.looks, 20.0 + WALKER.bias_deg, WALKER, S)
    assert np.argmax(likely) == 0
    cost = made._slipped_cost(seen, slipped, WALKER)
    assert cost == pytest.approx(seen.directions - np.log(likely * 2.0))


def test_another_route_over_the_same_walk_keeps_its_edges_to_itself() -> None:
    made = evidence_of(_edges={"known": 1}, _runs={}, route="this")
    other = made.on("that")
    other._edges["new"] = 2
    assert (made.route, other.route) == ("this", "that")
    assert made._edges == {"known": 1}
    assert other._edges == {"known": 1, "new": 2}
