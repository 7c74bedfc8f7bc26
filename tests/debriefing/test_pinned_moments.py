"""Starts and claims settled by an instructor: what is taken, and what is told of the rest."""

from __future__ import annotations

import datetime as dt

import pytest
from debriefing.hand_walked import COURSE, NO_TIMES, TIME_S, WALK, plan_of, track_of
from measurement.hand_made import BEGIN

import audit

# The walk begins 2026-10-03T08:00:00Z; it leaves at 08:01:00, claims at 08:06:20.
PLAN = plan_of(*COURSE)


def found(track=None, **pins):
    return audit.debrief(PLAN, track or track_of(TIME_S, WALK), **pins)


@pytest.mark.parametrize(
    "moment",
    [
        "08:05",
        "08:05:00",
        " 8:05:00.0z ",
        "2026-10-03T08:05:00Z",
        "2026-10-03T10:05:00+02:00",
        "2026-10-03 08:05",
        "10:05+02:00",
        "3:35-0430",
        dt.datetime(2026, 10, 3, 8, 5, tzinfo=dt.UTC),
    ],
)
def test_forms_of_one_moment(moment) -> None:
    debrief = found(claims={"1": moment})
    entry = debrief.to_dict()["legs"][0]
    assert entry["end"]["time"] == "2026-10-03T08:05:00Z"
    assert entry["pinned"] == ["claim"]
    assert "Leg 1: its claim at 08:05:00Z settled by hand." in debrief.quality.notes


def test_both_ends_are_taken_and_the_next_leg_is_found_around_them() -> None:
    legs = found(starts={"1": "08:01:10"}, claims={"1": "08:06:00"}).to_dict()["legs"]
    assert legs[0]["start"]["time"] == "2026-10-03T08:01:10Z"
    assert legs[0]["end"]["time"] == "2026-10-03T08:06:00Z"
    assert legs[0]["confidence"] == 1.0
    assert legs[1]["status"] == "walked"
    assert legs[1]["pinned"] == []


def test_a_clock_time_is_written_as_a_log_may_have_it() -> None:
    """Bug: 0806 was a time in the log and none for a claim."""
    for written in ("08:06", "0806", "0806Z", "1006+02:00"):
        (leg, _) = found(claims={"1": written}).to_dict()["legs"]
        assert leg["end"]["time"] == "2026-10-03T08:06:00Z"


@pytest.mark.parametrize(
    ("pins", "words"),
    [
        ({"claims": {"9": "08:05"}}, r'"9=08:05" is for leg "9", which .* legs are 1, 2\.'),
        ({"claims": {"1": "noon"}}, r'"1=noon" is no moment\. Write a clock time .* in UTC, like'),
        ({"claims": {"1": "25:00"}}, r'"1=25:00" is no moment'),
        ({"claims": {"1": "08:05+31:00"}}, r'"1=08:05\+31:00" is no moment'),
        ({"claims": {"1": "2026-02-30T08:05Z"}}, "is no moment"),
        ({"starts": {"1": "07:05"}}, "lies outside the recording, which runs from 2026-10-03T08:"),
        ({"claims": {"1": "08:00"}}, "leaves nothing of the recording before it"),
        (
            {"claims": {"1": "08:06"}, "starts": {"1": "08:07"}},
            "too early: leg 1 is pinned to begin",
        ),
        ({"claims": {"1": "08:06"}, "starts": {"2": "08:05"}}, "too early: leg 1 is claimed at"),
        ({"claims": {"2": "08:03", "1": "08:06"}}, "too early: leg 1 is claimed at"),
        ({"starts": {"1": "08:02:00"}, "claims": {"1": "08:02:03"}}, "comes too early"),
    ],
)
def test_a_wrong_pin_is_one_clear_sentence(pins, words) -> None:
    with pytest.raises(audit.InputRefusedError, match=words) as refused:
        found(**pins)
    assert len(refused.value.problems) == 1


def test_all_wrong_pins_are_told_at_once() -> None:
    with pytest.raises(audit.InputRefusedError) as refused:
        found(starts={"7": "08:02"}, claims={"1": "soon"})
    assert len(refused.value.problems) == 2


def test_a_recording_without_times_takes_no_pins() -> None:
    with pytest.raises(audit.InputRefusedError, match="in a recording without times"):
        found(track_of(NO_TIMES, WALK), claims={"1": "08:05"})


def test_a_clock_time_of_two_days_asks_for_the_day() -> None:
    time_s = TIME_S.copy()
    time_s[-30:] += 86_400.0
    track = track_of(time_s, WALK)
    with pytest.raises(audit.InputRefusedError, match=r"comes on 2 days .* like 2026-10-03T08:05"):
        found(track, claims={"1": "08:05"})
    assert found(track, claims={"1": "2026-10-03T08:05"}).match.legs[0].claim_s == BEGIN + 300.0
