"""The claim of a walker who saw his point: where he turned to it, not where he then stood."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import HandWalk, card_of, measure, receiver


def turned_at_the_end(turn_deg: float, metres: float = 25.0) -> HandWalk:
    """400 m east, then a turn to a point in sight, and a halt at it."""
    walk = HandWalk().halt(60).mark("start").walk(90, 400).mark("turn")
    return walk.walk(90 + turn_deg, metres).mark("claim").halt(60)


def course_to(walk: HandWalk):
    return card_of((0, 0), tuple(walk.places[-1]))


@pytest.mark.parametrize("turn", [-80.0, -40.0, 35.0, 70.0])
@pytest.mark.parametrize("every_s", [1, 5, 10])
def test_claim_is_where_he_turned(turn, every_s) -> None:
    walk = turned_at_the_end(turn)
    clean = walk.clean(every_s, receiver(4, 2.0, 60.0))
    found = measure(course_to(walk), clean, [walk.portion()], walk.halts)
    measures = found.legs[0].measures
    assert measures is not None
    assert measures.claim.time_s == pytest.approx(walk.marks["turn"], abs=8.0)
    assert measures.straight_m == pytest.approx(400.0, abs=12.0)
    assert measures.found
    assert found.match.legs[0].search_end_s == walk.marks["claim"]


@pytest.mark.parametrize("turn", [0.0, 8.0, -8.0])
def test_walking_on_to_the_point_is_no_turn(turn) -> None:
    walk = turned_at_the_end(turn)
    found = measure(course_to(walk), walk.clean(), [walk.portion()], walk.halts)
    assert found.match.legs[0].claim_s == walk.marks["claim"]


def test_a_turn_before_a_halt_elsewhere_is_not_put_down_to_sight() -> None:
    """The point lies 60 m on: he turned aside and stood, but not at it."""
    walk = turned_at_the_end(60.0)
    card = card_of((0, 0), tuple(walk.places[-1] + np.array([60.0, 0.0])))
    found = measure(card, walk.clean(), [walk.portion()], walk.halts)
    assert found.match.legs[0].claim_s == walk.marks["claim"]


def test_recording_without_times_keeps_its_claim() -> None:
    walk = turned_at_the_end(60.0)
    found = measure(course_to(walk), walk.clean(timed=False), [walk.portion()], walk.halts)
    assert found.match.legs[0].claim_s == walk.marks["claim"]


def test_claim_that_was_settled_stays() -> None:
    walk = turned_at_the_end(60.0)
    portion = replace(walk.portion(), pinned=("claim",))
    found = measure(course_to(walk), walk.clean(), [portion], walk.halts)
    assert found.match.legs[0].claim_s == walk.marks["claim"]
