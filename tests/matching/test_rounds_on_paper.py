"""Rounds by the points, where a course is begun anew, and which rounds are weighed: counted."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, clean_of

from audit.matching import rounds
from audit.matching.passing import Passing
from audit.matching.pins import Pin
from audit.matching.rounds import Round, begun_anew, find_rounds, rounds_to_weigh

S = SETTINGS.matching
A, B, C = (
    SimpleNamespace(east_m=east, north_m=north) for east, north in ((0, 0), (300, 0), (300, 400))
)
COURSE = SimpleNamespace(date=None, date_source="", points=[SimpleNamespace(longitude_deg=0.0)],
                         legs=[SimpleNamespace(start=A, end=B, distance_m=300.0),
                               SimpleNamespace(start=B, end=C, distance_m=400.0)])  # fmt: skip
"""700 m over three points, to the last digit."""
LIMIT = 0.5 * S.passing_most * 3
SHORT = replace(S, rounds_from=2.0, rounds_from_m=0.0, round_margin_m=0.0, rounds_every_m=1.0)
"""Looks for rounds from 1400 m on, in pieces of 2800 m, every 1400 m."""


def straight(metres: int, speed=1.0):
    """A way due east, a fix each metre."""
    along = np.arange(metres + 1.0)
    return clean_of(1000.0 + along / speed, np.column_stack([along, 0.0 * along]))


def passings(monkeypatch, told):
    """Let each piece be passed as told by its first and last metre; keep what was asked."""
    asked = []

    def passing(place, path_m, *_):
        asked.append((round(float(path_m[0])), round(float(path_m[-1]))))
        assert len(place) == len(path_m)
        return told(path_m)

    monkeypatch.setattr(rounds, "best_passing", passing)
    return asked


def test_a_long_recording_is_looked_at_in_pieces_that_overlap_by_half(monkeypatch) -> None:
    asked = passings(monkeypatch, lambda _: Passing(cost=LIMIT, first=10, last=20))
    found = find_rounds(straight(4200), COURSE, SHORT)
    assert asked == [(0, 2799), (1400, 4199), (2800, 4200)]
    told = [(one.first, one.last) for one in found]
    assert told == [(10, 20), (1410, 1420), (2810, 2820)]
    passings(monkeypatch, lambda _: Passing(cost=LIMIT + 0.01, first=10, last=20))
    assert find_rounds(straight(4200), COURSE, SHORT) == []


def test_a_recording_as_long_as_two_courses_may_hold_rounds(monkeypatch) -> None:
    asked = passings(monkeypatch, lambda _: Passing(cost=0.0, first=1, last=2))
    assert find_rounds(straight(1399), COURSE, SHORT) == []
    assert asked == []
    assert find_rounds(straight(1400), COURSE, SHORT) != []
    # And so many metres beside.
    assert find_rounds(straight(1400), COURSE, replace(SHORT, rounds_from_m=1.0)) == []
    margin = replace(SHORT, round_margin_m=100.0)
    asked.clear()
    find_rounds(straight(1500), COURSE, margin)
    assert asked == [(0, 1500), (1450, 1500)]


def test_over_a_leap_as_wide_as_a_piece_nobody_knows_the_way(monkeypatch) -> None:
    asked = passings(monkeypatch, lambda _: Passing(cost=0.0, first=1, last=2))
    along = np.concatenate([np.arange(100.0), 9000.0 + np.arange(100.0)])
    find_rounds(clean_of(np.arange(200.0), np.column_stack([along, 0 * along])), COURSE, SHORT)
    assert asked == [(0, 99), (9000, 9099), (9000, 9099)]


def test_of_rounds_that_share_a_fix_the_better_one_is_taken(monkeypatch) -> None:
    def told(cost_of):
        passings(monkeypatch, lambda path: cost_of[round(float(path[0]))])
        found = find_rounds(straight(4200), COURSE, SHORT)
        return [(one.first, one.last) for one in found]

    def made(cost, first, last):
        return Passing(cost=cost, first=first, last=last)

    worse = made(3.0, 0, 500)
    assert told({0: made(2.0, 0, 1400), 1400: worse, 2800: made(1.0, 5, 9)}) == [
        (2805, 2809),
        (0, 1400),
    ]
    assert told({0: made(2.0, 0, 1399), 1400: worse, 2800: made(1.0, 5, 9)}) == [
        (2805, 2809),
        (0, 1399),
        (1400, 1900),
    ]
    # Of two as good the earlier.
    assert told({0: made(1.0, 0, 2000), 1400: made(1.0, 0, 900), 2800: made(9.0, 0, 1)}) == [
        (0, 2000),
        (2800, 2801),
    ]


def begun(monkeypatch, metres, approaches, cost=lambda *_: 0.0):
    """Come by the first and the last point at so many metres of a straight way."""
    points = iter(zip(((0.0, 0.0), (300.0, 400.0)), approaches, strict=True))

    def approaching(_, point, __):
        due, told = next(points)
        assert tuple(point) == due
        return np.array(told, dtype=int)

    monkeypatch.setattr(rounds, "nearest_approaches", approaching)
    passings(monkeypatch, lambda path: Passing(cost=cost(path), first=0, last=1))
    return begun_anew(straight(metres), COURSE, replace(S, rounds_every_m=1.0))


def test_a_course_may_be_begun_anew_where_half_of_it_lies_on_either_side(monkeypatch) -> None:
    """Half of 700 m before and behind."""
    assert begun(monkeypatch, 700, [[350], []]) == 1350.0
    assert begun(monkeypatch, 700, [[349, 351], []]) is None
    assert begun(monkeypatch, 699, [[349], [349]]) is None
    assert begun(monkeypatch, 1000, [[349, 651], [600]]) == 1600.0  # by its last point
    assert begun(monkeypatch, 1000, [[400], [600]]) == 1400.0  # by its first before that


def test_it_is_begun_where_both_sides_pass_the_points_best(monkeypatch) -> None:
    """Each side by itself may cost 0.65 of passing nothing."""
    most = S.again_cost_share * S.passing_most * 3

    def cost(path):
        return {400: most, 401: 1.0, 450: 1.5}.get(round(float(path[0])), 1.0)

    assert begun(monkeypatch, 1000, [[450, 400, 401], []], cost) == 1401.0
    assert begun(monkeypatch, 1000, [[400], []], cost) == 1400.0
    assert begun(monkeypatch, 1000, [[400], []], lambda path: most + 0.01 * (path[0] > 0)) is None
    assert begun(monkeypatch, 1000, [[400], []], lambda path: most + 0.01 * (path[0] == 0)) is None


def test_too_few_places_begin_nothing(monkeypatch) -> None:
    """Of fixes on one heap one is kept."""
    heap = clean_of(np.arange(9.0), np.zeros((9, 2)))
    assert begun_anew(heap, COURSE, S) is None
    monkeypatch.setattr(rounds, "nearest_approaches", lambda *_: np.array([1]))
    passings(monkeypatch, lambda _: Passing(cost=0.0, first=0, last=1))
    leaps = 400.0 * np.arange(4.0)
    four = clean_of(np.arange(4.0), np.column_stack([leaps, 0 * leaps]))
    assert begun_anew(four, COURSE, S) == 1.0
    three = clean_of(np.arange(3.0), np.column_stack([leaps, 0 * leaps])[:3])
    assert begun_anew(three, COURSE, S) is None


def weighed(monkeypatch, told, pins=(), course=COURSE):
    monkeypatch.setattr(rounds, "find_rounds", lambda *_: told)
    clean = straight(9000)
    parts, beside = rounds_to_weigh(clean, course, replace(S, round_margin_m=100.0), pins)
    return [(part.time_s[0] - 1000.0, part.time_s[-1] - 1000.0) for part in parts], beside


def test_the_best_rounds_are_weighed_with_half_a_course_of_way_about_them(monkeypatch) -> None:
    """350 m and half of the margin before and behind, up to where another round passes."""
    a, b, c = (Round(first=at, last=at + 700, cost=cost)
               for at, cost in ((1000, 1.0), (2000, 1.0 + S.round_better_nats), (6000, 2.0)))  # fmt: skip
    assert weighed(monkeypatch, [a, c, b]) == ([(600, 2000 - 1), (5600, 7099)], (3000.0,))
    assert weighed(monkeypatch, [a, b]) == ([(600, 1999), (1701, 3099)], ())
    worse = replace(b, cost=1.01 + S.round_better_nats)
    assert weighed(monkeypatch, [a, worse]) == ([(600, 1999)], (3000.0,))
    assert weighed(monkeypatch, []) == ([], ())


def test_the_plans_day_chooses_its_rounds_before_those_that_pass_better(monkeypatch) -> None:
    """Bug: of a logger that ran for days the day of the plan was not asked for."""
    begun = {1000: 0.0, 2000: 8.0, 6000: 8.5}  # by fix: days since 1970
    monkeypatch.setattr(rounds, "of_day", lambda at_s, _: abs(int(begun[at_s - 1000.0]) - 8))
    a, b, c = (Round(first=at, last=at + 700, cost=cost)
               for at, cost in ((1000, 1.0), (2000, 5.0), (6000, 40.0)))  # fmt: skip
    assert weighed(monkeypatch, [a, b, c]) == ([(1701, 3099)], (2000.0, 7000.0))


def test_pins_choose_their_round(monkeypatch) -> None:
    a, b = Round(first=1000, last=1700, cost=1.0), Round(first=6000, last=6700, cost=20.0)
    pins = [Pin(leg=0, end="from", time_s=7000.0 + at) for at in (0.0, 500.0)]
    assert weighed(monkeypatch, [a, b], pins) == ([(5600, 7099)], (2000.0,))
    apart = [pins[0], replace(pins[1], time_s=2000.0)]
    assert weighed(monkeypatch, [a, b], apart) == ([], ())


@pytest.mark.parametrize(("every_m", "kept"), [(5.0, [0, 5, 10, 15]), (7.0, [0, 7, 14])])
def test_every_few_metres_a_fix_is_kept(every_m, kept) -> None:
    clean = straight(15)
    thin, place, path_m = rounds._thin(
        clean, np.arange(16.0), SimpleNamespace(rounds_every_m=every_m)
    )
    assert thin.tolist() == kept
    assert path_m.tolist() == place[:, 0].tolist() == kept
