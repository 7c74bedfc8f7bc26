"""Recordings of several days: the outing that fits the course is the walk."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS, HandWalk, card_of, clean_of, receiver
from walks import make_walk
from walks.two_rounds import make_two_rounds

from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.outings import match_outings, split_outings
from audit.matching.pins import Pin
from audit.matching.rounds import begun_anew

S = SETTINGS.matching
HOUR_S = 3600.0


def two_days(first: HandWalk, second: HandWalk, apart_s: float):
    """Record two walks and join them with a silence between."""
    return joined(first.clean(1, receiver(1, 3.0)), second.clean(1, receiver(2, 3.0)), apart_s)


def joined(one, two, apart_s: float):
    """Join two recordings with a silence between them; also when the second begins."""
    begun = float(one.time_s[-1]) + apart_s
    time_s = np.concatenate([one.time_s, two.time_s - two.time_s[0] + begun])
    east = np.concatenate([one.east_m, two.east_m])
    north = np.concatenate([one.north_m, two.north_m])
    return clean_of(time_s, np.column_stack([east, north]), every_s=1.0), begun


def course() -> HandWalk:
    walk = HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 300).halt(60)
    return walk


def elsewhere() -> HandWalk:
    return HandWalk().halt(60).walk(200, 350).halt(30).walk(130, 500).halt(60)


@pytest.mark.parametrize(("hours", "outings"), [(1, 1), (7, 2)])
def test_a_night_parts_outings_and_a_long_rest_does_not(hours, outings) -> None:
    clean, _ = two_days(course(), elsewhere(), hours * HOUR_S)
    parts = split_outings(clean, S)
    assert len(parts) == outings
    assert sum(len(part) for part in parts) == len(clean)


@pytest.mark.parametrize("course_is_second", [False, True])
def test_the_outing_that_fits_is_taken(course_is_second) -> None:
    days = (elsewhere(), course()) if course_is_second else (course(), elsewhere())
    clean, begun = two_days(*days, 20 * HOUR_S)
    found = match_outings(clean, card_of((0, 0), (400, 0), (400, 300)), S)
    assert found.outings == 2
    assert [leg.status for leg in found.match.legs] == ["walked", "walked"]
    assert all((leg.start_s >= begun) is course_is_second for leg in found.match.legs)


DAY = dt.date(2026, 10, 3)


def on(card, date: dt.date | None):
    return replace(card, date=date)


@pytest.mark.parametrize("is_second", [False, True])
@pytest.mark.parametrize("days", [-7, 7])
def test_of_two_days_the_walk_of_the_plans_day_is_taken(is_second, days) -> None:
    """Bug: a walk of the week before was taken, which passed the points a little nearer."""
    astray = HandWalk().halt(60).walk(90, 450).halt(60).walk(3, 350).halt(60)
    pair = (course(), astray) if is_second else (astray, course())
    clean, begun = two_days(*pair, abs(days) * 24 * HOUR_S)
    card = card_of((0, 0), (400, 0), (400, 300))
    at = on(card, DAY + dt.timedelta(days=abs(days) if is_second else 0))
    found = match_outings(clean, at, S)
    assert found.by_day
    assert all((leg.start_s >= begun) is is_second for leg in found.match.legs)
    # Where the plan gives neither day, or the recording said it, the walk that fits best is.
    for free in (on(card, DAY + dt.timedelta(days=99)), replace(at, date_source="track")):
        found = match_outings(clean, free, S)
        assert not found.by_day
        assert all((leg.start_s >= begun) is not is_second for leg in found.match.legs)


def test_a_walk_of_the_plans_day_that_is_none_of_the_course_is_not_taken() -> None:
    clean, begun = two_days(elsewhere(), course(), 7 * 24 * HOUR_S)
    found = match_outings(clean, card_of((0, 0), (400, 0), (400, 300)), S)
    assert all(leg.start_s >= begun for leg in found.match.legs)


@pytest.mark.parametrize(("later_h", "is_second"), [(-1.0, False), (-5.0, True)])
def test_of_two_nights_the_one_begun_on_the_plans_day_is_taken(later_h, is_second) -> None:
    """By the sun at 87 degrees west both are begun within six hours of the 3rd of October."""
    clean, begun = two_days(course(), course(), 24.0 * HOUR_S)
    clean = replace(clean, time_s=clean.time_s + later_h * HOUR_S)
    begun += later_h * HOUR_S
    found = match_outings(clean, card_of((0, 0), (400, 0), (400, 300)), S)
    late = {leg.start_s >= begun for leg in found.match.legs}
    assert late == {is_second}


def made_twice(seed: int, family: str, apart_s: float, pause: str):
    """Two walkers of one made course, one after the other in one recording."""
    first, second = make_walk(seed, family, 0), make_walk(seed, family, 1)
    card = work_out_card(first.plan)
    one, two = (clean_track(w.track, card.grid, SETTINGS.cleaning) for w in (first, second))
    if pause == "standing":
        still = np.arange(1.0, apart_s, 2.0)
        place = np.array([[one.east_m[-1], one.north_m[-1]]]) + receiver(5, 2.0)(len(still))
        time_s = np.concatenate([one.time_s, one.time_s[-1] + still])
        places = np.vstack([np.column_stack([one.east_m, one.north_m]), place])
        one = clean_of(time_s, places, every_s=one.median_interval_s)
        apart_s = 2.0
    clean, begun = joined(one, two, apart_s)
    return first, second, card, clean, begun


@pytest.mark.parametrize(("seed", "pause"), [(100_003, "silence"), (100_005, "standing")])
def test_two_walks_of_one_course_on_one_day_are_not_mixed(seed, pause) -> None:
    _, second, card, clean, begun = made_twice(seed, "trained", 900.0, pause)
    found = match_outings(clean, card, S)
    late = {leg.start_s >= begun for leg in found.match.legs if leg.start_s is not None}
    assert len(late) == 1
    (other,) = found.others
    others_late = {leg.start_s >= begun for leg in other.legs if leg.start_s is not None}
    assert others_late == {not late.pop()}
    # A pin takes whichever it is on.
    truth = second.truth.legs[0]
    start_s = truth.start_s + begun - second.track.time_s[0]
    chosen = match_outings(clean, card, S, [Pin(leg=0, end="from", time_s=start_s)])
    assert all(leg.start_s >= begun for leg in chosen.match.legs if leg.start_s is not None)


def test_a_rest_on_the_way_does_not_part_a_walk() -> None:
    """Out and back, with an hour's rest at the turn: the same points on either side of it."""
    walk = HandWalk().halt(60).walk(90, 400).halt(30).walk(0, 300).halt(3600)
    walk.walk(180, 300).halt(30).walk(270, 400).halt(60)
    points = ((0, 0), (400, 0), (400, 300), (400, 0), (0, 0))
    found = match_outings(walk.clean(1, receiver(1, 3.0)), card_of(*points), S)
    assert [leg.status for leg in found.match.legs] == ["walked"] * 4
    assert found.others == ()


def test_two_rounds_that_are_planned_are_one_walk() -> None:
    square = ((400, 0), (400, 300), (0, 300), (0, 0))
    walk = HandWalk().halt(60)
    for _ in range(2):
        for azimuth, metres in ((90, 400), (0, 300), (270, 400), (180, 300)):
            walk.walk(azimuth, metres).halt(30)
        walk.halt(1200)
    found = match_outings(walk.clean(1, receiver(1, 3.0)), card_of((0, 0), *square, *square), S)
    assert [leg.status for leg in found.match.legs] == ["walked"] * 8
    assert found.others == ()


@pytest.mark.parametrize(("family", "seed"), [("trained", 110_002), ("ordinary", 110_000)])
def test_a_course_begun_anew_without_a_pause_is_two_walks(family, seed) -> None:
    rounds = make_two_rounds(seed, family)
    card = work_out_card(rounds.first.plan)
    clean = clean_track(rounds.track, card.grid, SETTINGS.cleaning)
    begun = float(rounds.second.track.time_s[0]) + rounds.later_s
    found = match_outings(clean, card, S)
    (other,) = found.others
    late = [
        {leg.start_s >= begun for leg in match.legs if leg.start_s is not None}
        for match in (found.match, other)
    ]
    assert sorted(late, key=str) == [{False}, {True}]
    # Taken alone each walk gives the legs that it gives here.
    walk, later_s = (rounds.second, rounds.later_s) if late[0] == {True} else (rounds.first, 0.0)
    alone = match_outings(clean_track(walk.track, card.grid, SETTINGS.cleaning), card, S).match
    for one, other_leg in zip(found.match.legs, alone.legs, strict=True):
        assert one.claim_s - later_s == pytest.approx(other_leg.claim_s, abs=30.0)


def test_coming_by_the_start_on_the_way_home_begins_nothing_anew() -> None:
    walk = HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 300).halt(60).walk(270, 400)
    walk.halt(60).walk(180, 300).walk(200, 900).halt(60)
    points = ((0, 0), (400, 0), (400, 300), (0, 300), (0, 0))
    clean = walk.clean(1, receiver(1, 3.0))
    assert begun_anew(clean, card_of(*points), S) is None
    assert match_outings(clean, card_of(*points), S).others == ()


def test_a_course_that_comes_by_its_start_and_is_walked_once_is_matched_once(monkeypatch) -> None:
    """Matching both sides of every coming-by made a walk take three times as long."""
    from audit.matching import outings

    corners = [(0, 0), (400, 0), (400, 300), (0, 300), (0, 0), (-400, 0), (-400, -300), (0, 0)]
    walk = HandWalk().halt(60)
    for azimuth, metres in ((90, 400), (0, 300), (270, 400), (180, 300), (270, 400), (180, 300)):
        walk.walk(azimuth, metres).halt(45)
    walk.walk(53.13, 500).halt(60)
    matched = []
    once = outings.match_laid_out

    def counted(*given):
        matched.append(given)
        return once(*given)

    monkeypatch.setattr(outings, "match_laid_out", counted)
    found = match_outings(walk.clean(1, receiver(3, 3.0)), card_of(*corners), SETTINGS.matching)
    assert [leg.status for leg in found.match.legs] == ["walked"] * 7
    assert len(matched) == 1
