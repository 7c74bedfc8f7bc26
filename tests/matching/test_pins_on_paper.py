"""What pins leave open: the portions a pinned leg must have, and leaps up to it and on from it."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, card_of

from audit.matching import pinned_route as pinning
from audit.matching.pins import PINNED_GAIN, Pin, PinnedCuts, PinnedLeg
from audit.matching.route import plan_route

S = SETTINGS.matching
CARD = card_of((0, 0), (400, 0), (400, 300), (0, 300), (0, 700))
CUTS = np.array([0, 10, 20, 30, 40, 50])
SAMPLE_S = 1000.0 + 2.0 * np.arange(51)


def pinned(*ends) -> PinnedCuts:
    """Pin (leg, end, cut), each to the second after the cut."""
    pins = [Pin(leg=leg, end=end, time_s=1001.0 + 20.0 * cut - 0.1) for leg, end, cut in ends]
    return PinnedCuts(pins, CUTS, SAMPLE_S)


def test_a_pinned_leg_has_its_cuts_and_the_shortest_portion_where_one_end_is_free() -> None:
    made = pinned((0, "from", 0), (0, "claim", 2), (1, "claim", 4), (2, "from", 4))
    assert made.of_leg == {
        0: PinnedLeg(first=0, second=2), 1: PinnedLeg(first=None, second=4),
        2: PinnedLeg(first=4, second=None),
    }  # fmt: skip
    assert made.pairs().tolist() == [[0, 2], [3, 4], [4, 5]]
    assert [made.ends(leg) for leg in range(4)] == [("from", "claim"), ("claim",), ("from",), ()]
    assert (made.time_s(1, "claim"), made.time_s(1, "from")) == (pytest.approx(1080.9), None)
    assert made.time_of_cut == {0: pytest.approx(1000.9), 2: pytest.approx(1040.9),
                                4: pytest.approx(1080.9)}  # fmt: skip
    assert PinnedCuts([], CUTS, SAMPLE_S).pairs().shape == (0, 2)
    assert not PinnedCuts([], CUTS, SAMPLE_S)
    assert made


def test_who_claimed_the_end_did_not_give_up_and_who_left_began_after_the_start() -> None:
    made = pinned((0, "from", 0), (1, "claim", 4))
    kinds = ("leg", "reversed", "late-start", "given-up")
    assert [kind for kind in kinds if made.allow(0, kind)] == ["leg", "reversed", "given-up"]
    assert [kind for kind in kinds if made.allow(1, kind)] == ["leg", "reversed", "late-start"]
    assert [kind for kind in kinds if made.allow(2, kind)] == [*kinds]


def test_portions_of_a_pinned_leg_are_those_between_its_cuts() -> None:
    first, second = np.array([0, 0, 1, 2]), np.array([1, 2, 2, 3])
    for leg, places in ((PinnedLeg(first=0, second=2), [1]), (PinnedLeg(first=None, second=2), [1, 2]),
                        (PinnedLeg(first=0, second=None), [0, 1])):  # fmt: skip
        assert leg.portions(first, second).tolist() == places


def test_legs_are_leapt_over_up_to_a_pinned_one_and_on_from_it() -> None:
    """Of four legs the third is pinned: to its start from any before, from its end to any after."""
    assert pinning._jumps(4, pinned((2, "from", 1))) == [(0, 2), (1, 2), (3, 4)]
    assert pinning._jumps(4, pinned((0, "from", 1))) == [(1, 2), (1, 3), (1, 4)]
    assert pinning._jumps(4, pinned((3, "claim", 1))) == [(0, 3), (1, 3), (2, 3)]


def test_every_way_leads_over_the_pinned_leg_at_a_gain_and_leaps_have_their_price() -> None:
    plain = plan_route(CARD, S)
    pins = pinned((2, "from", 1), (2, "claim", 3))
    route = pinning.pinned_route(plain, pins, S)
    of_leg = [edge for edge in route.edges if edge.leg == 2]
    assert {edge.kind for edge in of_leg} == {"leg", "reversed"}
    for edge in of_leg:
        assert edge.pinned == PinnedLeg(first=1, second=3)
        (before,) = [
            one for one in plain.edges
            if (one.source, one.target, one.kind) == (edge.source, edge.target, edge.kind)
        ]  # fmt: skip
        assert edge.cost == pytest.approx(before.cost - PINNED_GAIN)
    others = [edge for edge in route.edges if edge.leg != 2 and edge.kind != "jump"]
    assert others == [edge for edge in plain.edges if edge.leg != 2]
    leaps = {(edge.source, edge.target): edge.cost for edge in route.edges if edge.kind == "jump"}
    left_out = S.cost_leg_left_out
    assert leaps == {
        (0, 2): pytest.approx(S.cost_jump + 2 * left_out),
        (1, 2): pytest.approx(S.cost_jump + left_out),
        (3, 4): pytest.approx(S.cost_jump + left_out),
    }
    assert (route.order, route.legs) == (plain.order, plain.legs)
    free = pinning.planned_route(CARD, S, PinnedCuts([], CUTS, SAMPLE_S))
    assert [edge.kind for edge in free.edges] == [edge.kind for edge in plain.edges]


def test_a_pin_is_put_on_the_cut_of_its_nearest_sample() -> None:
    for off_s, cut in ((-0.9, 2), (0.0, 2), (0.9, 2)):
        made = PinnedCuts([Pin(leg=0, end="from", time_s=1040.0 + off_s)], CUTS, SAMPLE_S)
        assert made.of_leg[0].first == cut


def test_pins_stand_on_cuts_that_were_seen_and_their_portions_end_at_such() -> None:
    """Bug: at either edge of a silence a pin took a reckoned cut, at which its leg could not be."""
    cuts = np.array([0, 10, 20, 20, 30, 30, 40])
    unseen = np.array([False, False, False, True, True, False, False])
    pins = [Pin(leg=0, end="from", time_s=1040.0), Pin(leg=1, end="claim", time_s=1060.0)]
    made = PinnedCuts(pins, cuts, SAMPLE_S, unseen)
    assert (made.of_leg[0].first, made.of_leg[1].second) == (2, 5)
    assert made.pairs().tolist() == [[2, 5], [2, 5]]
