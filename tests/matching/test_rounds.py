"""Recordings many times as long as the course: the best round by the points is weighed."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, clean_of, receiver

from audit.matching.outings import match_outings
from audit.matching.pins import Pin
from audit.matching.rounds import find_rounds

# The rounds here are short, so that they are quickly made.
S = replace(SETTINGS.matching, rounds_from_m=5_000.0)
POINTS = ((0, 0), (400, 0), (400, 300), (0, 300))


def one_round(skips: bool = False) -> HandWalk:
    """Walk the course and come back to its start."""
    walk = HandWalk().halt(60).walk(90, 400).halt(60)
    if skips:
        walk.walk(270, 400).halt(60).walk(0, 300)
    else:
        walk.walk(0, 300).halt(60).walk(270, 400)
    return walk.halt(60).walk(180, 300)


def logger(rounds: int, best: int, away_m: float = 2000.0):
    """Many rounds in one recording, with a long way out and back between; one is whole."""
    times, places, begun = [], [], []
    time_s = 0.0
    for number in range(rounds):
        walk = one_round(skips=number != best).walk(200, away_m).walk(20, away_m)
        clean = walk.clean(1, receiver(number, 2.0))
        begun.append(time_s)
        times.append(clean.time_s - clean.time_s[0] + time_s)
        places.append(np.column_stack([clean.east_m, clean.north_m]))
        time_s = float(times[-1][-1]) + 60.0
    return clean_of(np.concatenate(times), np.concatenate(places), every_s=1.0), [*begun, time_s]


@pytest.mark.parametrize("best", [0, 3, 5])
def test_the_round_that_passes_all_points_is_the_walk(best) -> None:
    clean, begun = logger(6, best)
    found = match_outings(clean, card_of(*POINTS), S)
    assert [leg.status for leg in found.match.legs] == ["walked"] * 3
    offset = begun[0] - clean.time_s[0]
    for leg in found.match.legs:
        assert begun[best] <= leg.start_s + offset <= begun[best + 1]
    assert found.rounds  # the others are told
    assert all(not begun[best] <= t + offset < begun[best + 1] for t in found.rounds)


def test_rounds_do_not_overlap_and_come_best_first() -> None:
    clean, _ = logger(6, 2)
    rounds = find_rounds(clean, card_of(*POINTS), S)
    assert [one.cost for one in rounds] == sorted(one.cost for one in rounds)
    in_time = sorted(rounds, key=lambda one: one.first)
    assert len(rounds) >= 3
    assert all(one.last < other.first for one, other in pairwise(in_time))


def test_a_pin_takes_the_round_that_holds_it() -> None:
    clean, begun = logger(6, 3)
    at = begun[1] + 60.0 + float(clean.time_s[0])
    found = match_outings(clean, card_of(*POINTS), S, [Pin(leg=0, end="from", time_s=at)])
    assert abs(found.match.legs[0].start_s - at) < 1.0


def test_a_walk_of_usual_length_is_weighed_whole() -> None:
    clean = one_round().clean(1, receiver(1, 2.0))
    assert find_rounds(clean, card_of(*POINTS), S) == []
    assert match_outings(clean, card_of(*POINTS), S).rounds == ()
