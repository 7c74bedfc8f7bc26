"""What passing the points of a course in order says for a walk."""

from __future__ import annotations

import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, receiver

from audit.matching.passing import passing_cost
from audit.matching.walk_layout import lay_out

S = SETTINGS.matching
POINTS = ((0, 0), (400, 0), (400, 300), (0, 300))


def cost(walk: HandWalk) -> float:
    card = card_of(*POINTS)
    return passing_cost(lay_out(walk.clean(1, receiver(1, 2.0)), card, S), card, S)


def course(detour_m: float = 0.0) -> HandWalk:
    walk = HandWalk().walk(225, 50).walk(45, 50).halt(60).walk(90, 400).halt(20)
    if detour_m:
        walk.walk(180, detour_m).walk(0, detour_m)
    return walk.walk(0, 300).halt(20).walk(270, 400).halt(20).walk(225, 50)


def test_passing_all_points_without_detour_says_nothing_against_a_walk() -> None:
    assert cost(course()) == pytest.approx(0.0, abs=0.5)


def test_detours_and_points_left_out_do() -> None:
    # The first point is passed again after it: ln(1400 / 400) over a spread of 0.4, 4.9 nats.
    assert cost(course(500)) == pytest.approx(4.9, abs=0.3)
    assert cost(course(5000)) == pytest.approx(S.passing_most, abs=0.5)
    left_out = HandWalk().walk(225, 50).walk(45, 50).halt(60).walk(90, 400).halt(20).walk(90, 300)
    assert cost(left_out) == pytest.approx(2 * S.passing_most, abs=0.5)


def test_the_order_counts() -> None:
    """The points the other way round: one of them is passed, the others come too late."""
    walk = HandWalk().halt(20).walk(0, 300).halt(20).walk(90, 400).halt(20).walk(180, 300)
    walk.halt(20).walk(270, 400).halt(20)
    assert cost(walk) > 1.9 * S.passing_most
