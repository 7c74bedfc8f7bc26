"""Boundaries settled by hand: kept to the second, and the rest matched around them."""

from __future__ import annotations

import numpy as np
import pytest
from matching.test_outings import joined
from matching.walked_square import SQUARE, square_walk
from measurement.hand_made import SETTINGS, HandWalk, card_of, clean_of, receiver

from audit.matching.match_walk import match_walk
from audit.matching.outings import match_outings
from audit.matching.pins import Pin, nearest_samples

S = SETTINGS.matching


def matched(walk: HandWalk, *points, pins=(), every_s=1):
    clean = walk.clean(every_s, receiver(1, 3.0))
    return match_walk(clean, card_of(*points), S, pins)


def in_order(match) -> bool:
    """Tell whether the portions follow each other without overlap."""
    ends = [(leg.start_s, leg.claim_s) for leg in match.legs if leg.start_s is not None]
    flat = [moment for pair in ends for moment in pair]
    return flat == sorted(flat)


@pytest.mark.parametrize("every_s", [1, 5, 30])
@pytest.mark.parametrize("leg", range(4))
@pytest.mark.parametrize("off_s", [-61.0, 37.0])
def test_a_pin_is_kept_to_the_second(every_s, leg, off_s) -> None:
    walk = square_walk()
    claim_s = walk.marks["bcde"[leg]] + off_s
    match = matched(
        walk, *SQUARE, pins=[Pin(leg=leg, end="claim", time_s=claim_s)], every_s=every_s
    )
    assert match.legs[leg].claim_s == claim_s
    assert match.legs[leg].pinned == ("claim",)
    assert in_order(match)
    # The legs that do not touch the pin are found as without it.
    free = matched(walk, *SQUARE, every_s=every_s)
    for other in set(range(4)) - {leg, leg + 1}:
        assert match.legs[other].start_s == pytest.approx(free.legs[other].start_s, abs=30.0)
        assert match.legs[other].claim_s == pytest.approx(free.legs[other].claim_s, abs=30.0)


def test_several_pins_together() -> None:
    walk = square_walk()
    pins = [
        Pin(leg=0, end="claim", time_s=walk.marks["b"] - 40.0),
        Pin(leg=2, end="from", time_s=walk.marks["c2"] + 20.0),
        Pin(leg=2, end="claim", time_s=walk.marks["d"] - 50.0),
    ]
    match = matched(walk, *SQUARE, pins=pins)
    assert match.legs[0].claim_s == pins[0].time_s
    assert (match.legs[2].start_s, match.legs[2].claim_s) == (pins[1].time_s, pins[2].time_s)
    assert match.legs[2].confidence == 1.0
    assert match.legs[2].pinned == ("from", "claim")
    assert in_order(match)


def test_a_pin_makes_a_skipped_leg_walked() -> None:
    walk = HandWalk().halt(60).mark("a").walk(90, 400).mark("b").halt(60).mark("b2")
    walk.walk(306.8698976458440, 500).mark("d").halt(60).mark("d2").walk(180, 300).halt(60)
    assert matched(walk, *SQUARE).legs[1].status == "skipped"
    claim = Pin(leg=1, end="claim", time_s=walk.marks["b2"] + 180.0)
    match = matched(walk, *SQUARE, pins=[claim])
    assert match.legs[1].status == "walked"
    assert match.legs[1].claim_s == claim.time_s
    assert in_order(match)


def test_legs_that_pins_leave_no_room_for_are_skipped() -> None:
    walk = square_walk()
    moment = walk.marks["b"]
    pins = [Pin(leg=0, end="claim", time_s=moment), Pin(leg=3, end="from", time_s=moment)]
    match = matched(walk, *SQUARE, pins=pins)
    assert [leg.status for leg in match.legs] == ["walked", "skipped", "skipped", "walked"]
    assert match.legs[3].start_s == moment


def test_a_pinned_leg_may_be_longer_than_any_that_would_be_looked_at() -> None:
    """Nine times the planned way, most of it in the wrong direction."""
    walk = HandWalk().halt(60).mark("a").walk(270, 1500).halt(30).walk(90, 2000).mark("b").halt(60)
    pins = [
        Pin(leg=0, end=end, time_s=walk.marks[mark])
        for end, mark in (("from", "a"), ("claim", "b"))
    ]
    (leg,) = matched(walk, (0, 0), (400, 0), pins=pins).legs
    assert (leg.status, leg.start_s, leg.claim_s) == ("walked", walk.marks["a"], walk.marks["b"])


def test_pins_choose_the_outing() -> None:
    """The course is walked well on the second day; the instructor wants the first."""
    first = HandWalk().halt(60).mark("a").walk(110, 400).mark("b").halt(60)
    second = HandWalk().halt(60).walk(90, 400).halt(60)
    one, two = first.clean(1, receiver(1, 3.0)), second.clean(1, receiver(2, 3.0))
    clean, _ = joined(one, two, 20 * 3600.0)
    card = card_of((0, 0), (400, 0))
    assert match_outings(clean, card, S).match.legs[0].start_s > one.time_s[-1]
    pin = Pin(leg=0, end="claim", time_s=first.marks["b"])
    found = match_outings(clean, card, S, [pin])
    assert found.match.legs[0].claim_s == pin.time_s
    assert found.match.legs[0].start_s == pytest.approx(first.marks["a"], abs=30.0)


def test_the_nearest_sample_is_before_or_after_a_pin() -> None:
    sample_s = 100.0 + 2.0 * np.arange(10)
    moments = 90.0, 100.4, 110.4, 111.0, 111.6, 117.9, 130.0
    pins = [Pin(leg=number, end="claim", time_s=time_s) for number, time_s in enumerate(moments)]
    assert nearest_samples(sample_s, pins).tolist() == [0, 0, 5, 5, 6, 9, 9]


def test_a_leg_claimed_at_the_first_fix_after_a_long_silence_is_walked() -> None:
    """Bug: it was skipped, and its pin told as midnight."""
    walk = HandWalk().halt(60).walk(90, 100).mark("q").walk(90, 1250).mark("r").walk(90, 100)
    walk = walk.halt(60).walk(270, 1350).walk(0, 200).halt(30)
    clean = walk.clean(1, receiver(1, 3.0))
    seen = (clean.time_s <= walk.marks["q"]) | (clean.time_s >= walk.marks["r"])
    place = np.column_stack([clean.east_m, clean.north_m])[seen]
    silent = clean_of(clean.time_s[seen], place)
    card = card_of((0, 0), (200, 0), (200, 200))
    match = match_walk(silent, card, S, [Pin(leg=0, end="claim", time_s=walk.marks["r"])])
    assert (match.legs[0].status, match.legs[0].claim_s) == ("walked", walk.marks["r"])
