"""What was walked on no leg: points passed there, and minutes that nothing accounts for."""

from __future__ import annotations

import datetime as dt
from types import SimpleNamespace

import numpy as np
from debriefing.hand_walked import plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk

from audit.debriefing.on_no_leg import on_no_leg
from audit.diagnosis.order_of_passing import OrdersOfPassing
from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.leg_match import LegMatch
from audit.measurement.leg_measures import LegAudit, Span
from audit.settings import Settings

COURSE = ((0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0))
LEFT, FIRST, SECOND, THIRD = 60, 60 + 320, 60 + 320 + 60 + 240, 60 + 320 + 60 + 240 + 60 + 320


def found(walked: int, *, status="skipped", missed=()):
    """Walk the whole course, of which the match has the first legs only."""
    walk = HandWalk().halt(60).walk(90, 400).halt(60).walk(0, 300).halt(60).walk(270, 400).halt(60)
    day = dt.datetime.fromtimestamp(BEGIN, dt.UTC).date()
    card = work_out_card(plan_of(*COURSE, date=day))
    places = np.array(walk.places)
    track = track_of(BEGIN + np.arange(len(places)), places)
    clean = clean_track(track, card.grid, Settings().cleaning)
    ends = ((LEFT, FIRST), (FIRST + 60, SECOND), (SECOND + 60, THIRD))[:walked]
    legs = [
        LegAudit(
            card=leg,
            status="walked" if number < walked else status,
            confidence=1.0,
            measures=SimpleNamespace(
                start=SimpleNamespace(fix=ends[number][0]),
                claim=SimpleNamespace(fix=ends[number][1]),
                found=number not in missed,
            )
            if number < walked
            else None,
        )
        for number, leg in enumerate(card.legs)
    ]
    portions = [
        LegMatch(leg=number, status="walked", start_s=BEGIN + begin, claim_s=BEGIN + end)
        for number, (begin, end) in enumerate(ends)
    ]
    since_s = BEGIN + ends[-1][1]
    spans = tuple(
        Span(start_s=begin_s, end_s=end_s, first=0, last=0, leg=None, kind=kind)
        for begin_s, end_s, kind in (
            (since_s, since_s + 60, "at-point"),
            (since_s + 60, float(clean.time_s[-1]), "walk-off"),
        )
    )
    rests = np.array([[FIRST, FIRST + 60], [SECOND, SECOND + 60], [THIRD, THIRD + 60]]) + BEGIN
    match = SimpleNamespace(legs=portions, halts=rests)
    measured = SimpleNamespace(legs=legs, match=match, spans=spans)
    orders = OrdersOfPassing(legs, card, clean)
    return on_no_leg(measured, card, clean, orders, Settings().quality)


def test_points_rested_at_on_no_leg_are_told_with_the_minutes_and_what_settles_them() -> None:
    """Bug: "1 of 3 points reached" of a walker who rested at all of them, and not a word of the
    ten minutes that belonged to no leg."""
    told = found(1)
    assert [one.point for one in told.passed] == ["P2", "P3"]
    assert told.doubt == (
        "Of the 16 minutes between the ends of the course 10 belong to no leg that was found: "
        "take what is said of skipped legs with care. If the walker came to the points "
        "then, settle it: --claim 2=08:11:20Z --claim 3=08:17:40Z."
    )


def test_who_gave_up_was_on_no_leg_and_nothing_is_asked() -> None:
    told = found(1, status="not-started")
    assert (told.passed, told.doubt) == ((), "")


def test_points_passed_at_another_time_than_on_their_legs_are_named() -> None:
    """Bug: a class found points that the debrief did not count, and the debrief named none."""
    assert found(3).elsewhere == ()
    assert found(3, missed=(1,)).elsewhere == ("P2",)
    # Who is told to have passed a point in its turn is not told so again.
    assert found(1).elsewhere == ()
    assert found(1, status="not-started").elsewhere == ("P2", "P3")


def test_few_minutes_on_no_leg_are_not_told() -> None:
    told = found(2)
    assert ([one.point for one in told.passed], told.doubt) == (["P3"], "")
