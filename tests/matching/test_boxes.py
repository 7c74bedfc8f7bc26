"""Obstacles boxed: out, on, and back in on the other hand."""

from __future__ import annotations

import numpy as np
import pytest
from measurement.hand_made import SETTINGS

from audit.matching.boxes import find_boxes

S = SETTINGS.matching


def steps(*pieces):
    """Turns off the leg and lengths of steps of 5 m, from (turn, metres)."""
    turn = np.concatenate([np.full(round(metres / 5), float(deg)) for deg, metres in pieces])
    return turn, np.full(len(turn), 5.0)


@pytest.mark.parametrize("hand", [1.0, -1.0])
def test_box_on_either_hand(hand) -> None:
    turn, length = steps((0, 100), (hand * 90, 40), (0, 60), (-hand * 90, 40), (0, 100))
    assert find_boxes(turn, length, 3.0, S) == [(20, 40, 48)]


def test_two_boxes_in_a_row() -> None:
    box = ((90, 40), (0, 60), (-90, 40), (0, 60))
    turn, length = steps((0, 100), *box, *box)
    assert len(find_boxes(turn, length, 3.0, S)) == 2


@pytest.mark.parametrize(
    "pieces",
    [
        ((0, 400),),
        ((0, 100), (90, 40), (0, 200)),  # out and never back
        ((0, 100), (90, 40), (0, 60), (90, 40), (0, 100)),  # the same hand twice
        ((0, 100), (90, 5), (0, 60), (-90, 5), (0, 100)),  # nobody leaves the line by 5 m
        ((0, 100), (90, 200), (0, 60), (-90, 40), (0, 100)),  # back in a fifth of it
        ((0, 100), (90, 40), (0, 900), (-90, 40)),  # something else, much later
    ],
)
def test_what_is_no_box(pieces) -> None:
    assert find_boxes(*steps(*pieces), 3.0, S) == []


@pytest.mark.parametrize(("back_m", "boxes"), [(25, 1), (30, 0)])
def test_between_its_sides_a_box_leads_on(back_m, boxes) -> None:
    """Six tenths of what is walked there, from one step in: 115 m less those back."""
    pieces = ((0, 100), (90, 40), (0, 120), (180, back_m), (-90, 40), (0, 100))
    assert len(find_boxes(*steps(*pieces), 3.0, S)) == boxes


def test_restless_receiver_needs_a_wider_box() -> None:
    pieces = ((0, 100), (90, 25), (0, 60), (-90, 25), (0, 100))
    assert len(find_boxes(*steps(*pieces), 3.0, S)) == 1
    assert find_boxes(*steps(*pieces), 20.0, S) == []


def test_no_steps_have_no_boxes() -> None:
    assert find_boxes(np.empty(0), np.empty(0), 3.0, S) == []
