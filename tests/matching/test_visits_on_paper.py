"""Visits in free order: their moments, the ways between them and their orders, on paper."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS

from audit.matching import free_visits
from audit.matching.orders import Visits, weigh_orders
from audit.matching.pins import PinnedLeg

S = SETTINGS.matching


class Cuts(SimpleNamespace):
    def __len__(self) -> int:
        return len(self.time_s)


TO_POINT_M = np.array([[0.0, 500.0], [300.0, 100.0], [400.0, 10.0], [450.0, 20.0], [100.0, 400.0]])
EVIDENCE = SimpleNamespace(
    settings=S, noise_m=4.0, to_point_m=TO_POINT_M, arrive=np.array([0.0, 1.0, 2.0, 3.0, 4.0]),
    cuts=Cuts(
        time_s=np.array([0.0, 100.0, 200.0, 300.0, 400.0]),
        begins_halt=np.array([True, False, False, True, False]),
        ends_halt=np.array([False, False, False, False, True]),
    ),
    route=SimpleNamespace(legs=1),
)  # fmt: skip
HERE_M = math.hypot(S.found_arrival_sd_m, 2.0 * 4.0)


def edge(first, second, cost, pinned=None, source=0, target=1):
    of = SimpleNamespace(source=source, target=target, distance_m=500.0, pinned=pinned)
    return SimpleNamespace(
        edge=of, first=np.array(first), second=np.array(second), cost=np.array(cost, float)
    )


def test_not_being_at_a_point_speaks_against_visiting_it() -> None:
    near = np.exp(-0.5 * (TO_POINT_M[:, 1] / HERE_M) ** 2)
    law = np.log(near + math.exp(-S.visit_presence))
    assert free_visits._presence(EVIDENCE, 1) == pytest.approx(law)


def test_a_way_that_ends_far_off_says_little() -> None:
    """So many metres, and a share of the way's length."""
    reach_m = S.visit_reach_m + S.visit_reach_share * 500.0
    got = free_visits._most_gain(edge([0, 0], [2, 4], [0, 0]), EVIDENCE)
    near = np.exp(-0.5 * (np.array([10.0, 400.0]) / reach_m) ** 2)
    assert got == pytest.approx(S.visit_gain_far + S.visit_gain_near * near)


def test_a_point_may_be_come_to_in_any_way_from_any_earlier_cut() -> None:
    claims = np.array([2, 3])
    got = free_visits._wandered(EVIDENCE, edge([], [], []).edge, claims)
    gain = S.visit_gain_here + free_visits._presence(EVIDENCE, 1) - EVIDENCE.arrive
    # The last but one cut begins a rest, 20 m from the point.
    gain[3] += S.visit_rested * math.exp(-0.5 * (20.0 / HERE_M) ** 2)
    weight = np.exp(gain[claims] - S.visit_wandered)
    earlier = np.array([[1, 1], [1, 1], [0, 1], [0, 0], [0, 0]])
    assert got == pytest.approx(earlier * weight)
    # A pinned visit is believed wherever it seems to be, from the cut it is pinned to.
    pinned = edge([], [], [], PinnedLeg(first=1, second=3)).edge
    only = np.zeros((5, 2))
    only[1] = math.exp(-S.visit_wandered)
    assert free_visits._wandered(EVIDENCE, pinned, claims) == pytest.approx(only)
    free = edge([], [], [], PinnedLeg(first=None, second=3)).edge
    assert free_visits._wandered(EVIDENCE, free, claims) == pytest.approx(
        earlier * math.exp(-S.visit_wandered)
    )


def test_of_cuts_near_each_other_in_time_the_best_is_a_claim() -> None:
    apart_s = S.visits_apart_s
    time_s = apart_s * np.array([0.0, 0.9, 1.0, 2.1, 3.0])
    index, cost = np.arange(5), np.array([3.0, 1.0, 2.0, 0.0, 9.0])
    assert free_visits._apart(index, cost, time_s, S).tolist() == [1, 3]
    for seconds, kept in ((apart_s, [0]), (apart_s + 1.0, [0, 1])):
        got = free_visits._apart(np.arange(2), np.zeros(2), np.array([0.0, seconds]), S)
        assert got.tolist() == kept
    many = np.arange(S.visits_most + 5)
    kept = free_visits._apart(many, -many.astype(float), 2.0 * apart_s * many, S)
    assert kept.tolist() == many[5:].tolist()


def test_claims_are_likely_or_near_their_point_or_pinned() -> None:
    dear = S.visit_most_cost
    ways = [
        edge([0, 0], [1, 2], [dear, 1.0]),
        edge([0, 0, 0], [1, 3, 4], [dear + 9.0, dear + 1.0, dear + 1.0]),
    ]
    settings = replace(S, visit_near_m=50.0, visits_apart_s=1.0)
    evidence = SimpleNamespace(**{**vars(EVIDENCE), "settings": settings})
    (claims,) = free_visits._claims(ways, evidence)
    assert claims.tolist() == [1, 2, 3]  # the third for being 20 m from it
    ways[0].edge.pinned = PinnedLeg(second=4)
    (claims,) = free_visits._claims(ways, evidence)
    assert claims.tolist() == [1, 2, 3, 4]


def test_a_cut_beside_a_point_is_a_claim_of_that_point_alone() -> None:
    """Of two points the first is passed at 20 m by the fourth cut, the second by the fifth."""
    to_point_m = np.array([[9.0, 400.0, 400.0]] * 3 + [[9.0, 20.0, 400.0], [9.0, 400.0, 20.0]])
    settings = replace(S, visit_near_m=50.0, visits_apart_s=1.0)
    evidence = SimpleNamespace(**{**vars(EVIDENCE), "settings": settings, "to_point_m": to_point_m,
                                  "route": SimpleNamespace(legs=2)})  # fmt: skip
    dear = [S.visit_most_cost + 1.0] * 4
    ways = [edge([0] * 4, [1, 2, 3, 4], dear, target=target) for target in (1, 2)]
    claims = free_visits._claims(ways, evidence)
    assert [one.tolist() for one in claims] == [[3], [4]]


def test_a_way_has_the_weight_of_its_cost() -> None:
    got = free_visits._ways(
        edge([0, 1, 0, 2], [2, 2, 3, 4], [1.0, 2.0, 3.0, 4.0]), np.array([2, 4]), 5
    )
    expected = np.zeros((5, 2))
    expected[0, 0], expected[1, 0], expected[2, 1] = math.exp(-1.0), math.exp(-2.0), math.exp(-4.0)
    assert got == pytest.approx(expected)
    none = free_visits._ways(edge([0], [2], [1.0]), np.array([], dtype=np.int64), 5)
    assert none.shape == (5, 0)


def test_where_no_order_is_possible_none_is_told() -> None:
    nothing = Visits(point=np.array([0, 1]), begun=np.zeros(2), onward=np.zeros((2, 2)))
    odds = weigh_orders(nothing, 2, np.ones(3))
    assert (odds.order, odds.probability, odds.total) == ((), 0.0, 0.0)
    assert odds.next_point.tolist() == [[0.0, 0.0]] * 3
