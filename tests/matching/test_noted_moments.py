"""Moments at which the walker says he was at a point, written out cut by cut."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from matching.walked_square import SQUARE, square_walk
from measurement.hand_made import SETTINGS, card_of, receiver

from audit.matching.match_walk import match_walk
from audit.matching.noted_moments import NotedMoment, NotedMoments

S = SETTINGS.matching
CARD, CLEAN = card_of(*SQUARE), square_walk().clean(1, receiver(1, 3.0))
COST, WITHIN_S = S.cost_against_noted, S.noted_within_s
TIME_S = np.array([0.0, 2.0, 4.0, 6.0, 8.0]) * WITHIN_S
PLACE_OF_NODE = np.array([0, 1, 2, 1])
"""The last node stands for the first leg's point once more."""


def noted(*moments) -> NotedMoments:
    of = [NotedMoment(leg=leg, time_s=time_s) for leg, time_s in moments]
    return NotedMoments(of, TIME_S, PLACE_OF_NODE, S)


def cut(*cuts) -> np.ndarray:
    return np.array(cuts, dtype=np.int32)


NOTED = noted((1, 6.5 * WITHIN_S), (0, 3.5 * WITHIN_S))


def test_who_walked_on_over_a_moment_was_not_at_the_point() -> None:
    """A portion that begins or ends within what a watch is read to says nothing against it."""
    first, second = cut(0, 0, 1, 2, 0, 3), cut(2, 3, 3, 3, 4, 4)
    times = [0, 1, 1, 0, 2, 0]
    np.testing.assert_array_equal(NOTED.on_way(first, second), COST * np.array(times))


def test_who_stayed_at_its_point_agrees_with_it_and_at_another_does_not() -> None:
    whole = cut(0), cut(4)
    assert NOTED.stayed(1, *whole) == COST
    assert NOTED.stayed(2, *whole) == COST
    assert NOTED.stayed(0, *whole) == 2.0 * COST
    assert NOTED.stayed(3, *whole) == NOTED.stayed(1, *whole)
    assert NOTED.stayed(2, cut(2), cut(3)) == 0.0


def test_a_course_is_begun_before_and_ended_after_what_is_noted_of_it() -> None:
    np.testing.assert_array_equal(NOTED.begun(0), COST * np.array([0, 0, 0, 1, 2]))
    np.testing.assert_array_equal(NOTED.begun(1), COST * np.array([0, 0, 0, 0, 1]))
    np.testing.assert_array_equal(NOTED.ended(1), COST * np.array([1, 1, 1, 0, 0]))
    np.testing.assert_array_equal(NOTED.ended(2), COST * np.array([1, 1, 0, 0, 0]))
    np.testing.assert_array_equal(NOTED.ended(-1), COST * np.array([2, 2, 1, 0, 0]))


def test_who_counted_to_a_moment_did_not_claim_the_point_before() -> None:
    """Nor did he walk on over it, were it only half so sure by the time alone.

    And where one point is noted, no other is claimed: the fourth cut is half a minute and more
    off both of the other moments.
    """
    both = NotedMoments(
        [NotedMoment(leg=0, time_s=6.5 * WITHIN_S, counted=True)], TIME_S, PLACE_OF_NODE, S
    )
    at = S.cost_against_counted
    np.testing.assert_array_equal(both.claimed(1), at * np.array([1, 1, 1, 0, 0]))
    np.testing.assert_array_equal(both.claimed(3), both.claimed(1))
    np.testing.assert_array_equal(NOTED.claimed(1), COST * np.array([0, 0, 0, 1, 0]))
    assert both.on_way(cut(0), cut(4)) == at > COST


@pytest.mark.parametrize("node", range(4))
def test_a_long_stay_is_charged_for_what_lies_between_its_two_ends(node) -> None:
    so_far = NOTED.so_far(node)
    assert so_far[4] - so_far[0] == NOTED.stayed(node, cut(0), cut(4))[0]
    assert np.all(np.diff(so_far) >= 0.0)


def test_moments_that_agree_with_the_match_leave_it_as_it_is() -> None:
    match = match_walk(CLEAN, CARD, S)
    agreeing = [NotedMoment(leg=leg.leg, time_s=leg.claim_s + 20.0) for leg in match.legs]
    assert portions(match_walk(CLEAN, CARD, S, noted=agreeing)) == portions(match)


def test_a_moment_that_nobody_doubts_ends_its_leg_before_it() -> None:
    """Noted half way along a leg of a walk without any halt there: believed only if it must be."""
    match = match_walk(CLEAN, CARD, S)
    leg = match.legs[1]
    half_way = NotedMoment(leg=1, time_s=(leg.start_s + leg.claim_s) / 2.0)
    doubted = match_walk(CLEAN, CARD, S, noted=[half_way])
    assert doubted.legs[1].claim_s == pytest.approx(leg.claim_s, abs=5.0)
    sure = replace(S, cost_against_noted=1000.0)
    believed = match_walk(CLEAN, CARD, sure, noted=[half_way]).legs[1]
    assert believed.claim_s is None or believed.claim_s <= half_way.time_s + WITHIN_S


def portions(match) -> list:
    return [(leg.status, leg.start_s, leg.claim_s) for leg in match.legs]
