"""Which walks of a recording are matched, and which one is taken: with matches that are given."""

from __future__ import annotations

from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, clean_of

from audit.matching import outings
from audit.matching.outings import match_outings
from audit.matching.pins import Pin

S = SETTINGS.matching
NIGHT_S = 50_000.0
CARD = SimpleNamespace(date=None, date_source="", points=[SimpleNamespace(longitude_deg=0.0)])


def days(count: int, fixes: int = 5):
    """Recordings of so many days, ten seconds a fix."""
    time_s = np.concatenate([NIGHT_S * day + 10.0 * np.arange(fixes) for day in range(count)])
    return clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]))


class Walk(SimpleNamespace):
    """A walk with its cost, how it passes the points, and what it is."""


def walk(cost, passing=0.0, *, whole=False, of_course=True):
    return Walk(match=SimpleNamespace(cost=cost), sampled=passing, is_whole=whole,
                is_of_course=of_course, legs=set())  # fmt: skip


def given(monkeypatch, walks, rounds=((), ())):
    """Let each part of a recording hold the walks given for it; keep which parts were asked."""
    asked, left = [], iter(walks)
    monkeypatch.setattr(outings, "near_course", lambda clean, *_: clean)
    monkeypatch.setattr(outings, "rounds_to_weigh", lambda *_: rounds)
    monkeypatch.setattr(outings, "passing_cost", lambda sampled, *_: sampled)
    monkeypatch.setattr(outings, "looked_at_again", lambda match, *_: match)

    def walks_of(part, *_):
        asked.append((float(part.time_s[0]), len(part)))
        return next(left)

    monkeypatch.setattr(outings, "_walks_of", walks_of)
    return asked


def test_each_day_is_matched_and_the_best_by_match_and_passing_is_taken(monkeypatch) -> None:
    first, second, third = walk(-50.0, 30.0), walk(-40.0, 5.0), walk(-45.0, 15.0, of_course=False)
    asked = given(monkeypatch, [[first], [second, third]])
    found = match_outings(days(2), CARD, S)
    assert asked == [(0.0, 5), (NIGHT_S, 5)]
    assert found.match is second.match
    assert (found.outings, found.rounds) == (2, ())
    assert found.others == (first.match,)  # what is no walk of the course is not told


def test_a_day_of_one_fix_is_none_unless_there_is_no_other(monkeypatch) -> None:
    time_s = np.array([0.0, NIGHT_S, NIGHT_S + 10.0, 2.0 * NIGHT_S + 20.0])
    clean = clean_of(time_s, np.column_stack([time_s, 0.0 * time_s]))
    asked = given(monkeypatch, [[walk(-1.0)]])
    assert match_outings(clean, CARD, S).outings == 1
    assert asked == [(NIGHT_S, 2)]
    asked = given(monkeypatch, [[walk(-1.0)]])
    apart = clean_of(time_s[[0, 1]], np.zeros((2, 2)))
    assert match_outings(apart, CARD, S).outings == 1
    assert asked == [(0.0, 2)]


def test_pins_leave_the_day_that_holds_them(monkeypatch) -> None:
    asked = given(monkeypatch, [[walk(-1.0)]])
    pins = [Pin(leg=0, end="from", time_s=NIGHT_S + at) for at in (0.0, 40.0)]
    found = match_outings(days(3), CARD, S, pins)
    assert asked == [(NIGHT_S, 5)]
    assert found.outings == 1


def test_rounds_are_weighed_in_place_of_days_until_one_is_whole(monkeypatch) -> None:
    parts = [days(1, fixes) for fixes in (4, 3, 2)]
    half, whole, more = walk(-9.0), walk(-5.0, whole=True), walk(-99.0)
    asked = given(monkeypatch, [[half], [whole], [more]], (parts, (7.0, 8.0)))
    found = match_outings(days(2), CARD, S)
    assert [size for _, size in asked] == [4, 3]
    assert (found.match, found.outings, found.rounds) == (half.match, 1, (7.0, 8.0))
    # Days are all weighed, whole or not.
    asked = given(monkeypatch, [[whole], [more]])
    assert match_outings(days(2), CARD, S).match is more.match
    assert len(asked) == 2


def halves(monkeypatch, by, walks, apart, pauses=(1020.0,)):
    """Part a stretch of nine fixes at its pauses; ``by`` tells whether a side passes the points."""
    monkeypatch.setattr(outings, "_partings", lambda part, *_: pauses if len(part) == 9 else ())
    monkeypatch.setattr(outings, "_comes_by", lambda side, *_: by(len(side)))
    made = []

    def matched(part, *_):
        made.append(len(part))
        return walks[len(part)]

    monkeypatch.setattr(outings, "_matched", matched)
    monkeypatch.setattr(outings, "_apart", lambda *_: apart)
    return made


NINE = clean_of(1000.0 + 10.0 * np.arange(9), np.zeros((9, 2)))
WALKS = {9: "all", 2: "before", 7: "after"}


def test_a_stretch_is_parted_where_both_sides_pass_the_points_and_fit_apart(monkeypatch) -> None:
    made = halves(monkeypatch, lambda _: True, WALKS, apart=True)
    assert outings._walks_of(NINE, None, S, ()) == ["before", "after"]
    assert made == [9, 2, 7]  # each side is matched once
    made = halves(monkeypatch, lambda _: True, WALKS, apart=False)
    assert outings._walks_of(NINE, None, S, ()) == ["all"]
    made = halves(monkeypatch, lambda size: size != 2, WALKS, apart=True)
    assert outings._walks_of(NINE, None, S, ()) == ["all"]
    assert made == [9]


@pytest.mark.parametrize(("at", "side"), [(1010.0, "before"), (1020.0, "after")])
def test_of_a_parted_stretch_pins_leave_one_side(monkeypatch, at, side) -> None:
    halves(monkeypatch, lambda _: True, WALKS, apart=True)
    pins = [Pin(leg=0, end="from", time_s=at)]
    assert outings._walks_of(NINE, None, S, pins) == [side]
    halves(monkeypatch, lambda _: True, WALKS, apart=True)
    both = [*pins, Pin(leg=0, end="claim", time_s=1010.0 if at == 1020.0 else 1020.0)]
    assert outings._walks_of(NINE, None, S, both) == ["all"]


def test_the_next_pause_is_tried_where_one_does_not_part(monkeypatch) -> None:
    walks = {**WALKS, 4: "four", 5: "five"}
    made = halves(monkeypatch, lambda size: size not in (2, 7), walks, True, (1020.0, 1040.0))
    assert outings._walks_of(NINE, None, S, ()) == ["four", "five"]
    assert made == [9, 4, 5]
