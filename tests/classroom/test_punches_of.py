"""Codes brought back against a key: which key counts, and what there is without a recording."""

from __future__ import annotations

from dataclasses import replace

import pytest
from classroom.hand_made import lane, track

from audit.classroom.grade_class import grade
from audit.errors import InputRefusedError
from audit.readers.standard_file import read_standard
from audit.roster import PunchEntry, PunchList, Roster, RosterEntry

PLACES = ((600.0, 100.0), (900.0, -500.0))
EAST = lane("east", *PLACES)
GENERAL = PunchEntry(point="east2", code="H0", line=2)
OF_LANE = PunchEntry(point="east2", code="Z9", lane="east", line=3)
STANDARD = replace(read_standard("day-course"), points_to_find=None, time_limit_s=3600.0)


def graded(*entries):
    roster = Roster(entries=(RosterEntry(name="Adder"), RosterEntry(name="Siskin", device="t")))
    punches = PunchList(entries=entries, source="codes.csv")
    tracks = [track((0.0, 0.0), *PLACES)]
    return grade({"east": EAST.plan}, tracks, STANDARD, roster=roster, punches=punches)


@pytest.mark.parametrize("key", [(GENERAL, OF_LANE), (OF_LANE, GENERAL)])
def test_the_key_of_a_lane_goes_before_the_one_for_all_whatever_their_order(key):
    """Bug: of two keys for one point the last row won, without a word."""
    result = graded(*key, PunchEntry(point="east2", code="z9", name="Adder"))
    assert result.walkers[0].legs[1].point.punch.right is True


@pytest.mark.parametrize(
    "again",
    [
        replace(OF_LANE, code="H0", lane="Lane east", line=4),  # the same lane by its course
        replace(GENERAL, code="Z9", line=4),
    ],
)
def test_two_keys_of_one_point_at_the_same_level_are_refused(again):
    with pytest.raises(InputRefusedError) as refused:
        graded(GENERAL, OF_LANE, again)
    (problem,) = refused.value.problems
    assert "of the key for this point differs from line" in str(problem)


def test_without_a_roster_a_code_of_nobody_is_refused_with_the_names_of_the_files():
    """Bug: the code of a name that no file has was left out, without a word."""
    walks = [track((0.0, 0.0), *PLACES, source="adder.gpx")]

    def proved(name):
        brought = PunchEntry(point="east2", code="H0", name=name, line=4)
        punches = PunchList(entries=(GENERAL, brought), source="codes.csv")
        result = grade({"east": EAST.plan}, walks, STANDARD, punches=punches)
        return result.walkers[0].legs[1].point.proof

    assert proved("Adder") == "punch"
    with pytest.raises(InputRefusedError) as refused:
        proved("Zed")
    (problem,) = refused.value.problems
    assert str(problem).startswith('codes.csv, line 4, name: "Zed" is not known in this class.')
    assert problem.remedy == "Without a roster walkers are called as their files are: adder."


def test_codes_without_a_recording_are_told_as_what_there_is():
    """Bug: with all points by codes it was said that there is no evidence, and no time."""
    brought = [
        PunchEntry(point="east1", code="A1", name="Adder"),
        PunchEntry(point="east2", code="H0", name="Adder", time="12:09"),
    ]
    result = graded(GENERAL, PunchEntry(point="east1", code="A1"), *brought)
    adder = result.walkers[0]
    assert (adder.verdict.found, adder.verdict.grade) == (2, "doubtful")
    assert "noted at 12:09" in adder.verdict.reasons[-1]
    (told,) = [one.message for one in result.findings if adder.ident in one.walkers]
    assert "only the codes brought back are known" in told
    assert "no evidence" not in told


@pytest.mark.parametrize("wrong", [{"attempt": 2}, {"lane": "west"}])
def test_a_code_of_an_attempt_or_lane_that_its_walker_is_not_graded_on_is_asked_about(wrong):
    """Bug: such a code was left out without a word."""
    west = lane("west", (-600.0, 100.0), (-900.0, -500.0))
    points = {"point": "east2"} if "attempt" in wrong else {"point": "west2"}
    brought = PunchEntry(code="H0", name="Siskin", line=7, **points, **wrong)
    roster = Roster(entries=(RosterEntry(name="Siskin", device="t", lane="east"),))
    result = grade(
        {"east": EAST.plan, "west": west.plan},
        [track((0.0, 0.0), *PLACES)],
        STANDARD,
        roster=roster,
        punches=PunchList(entries=(GENERAL, brought), source="codes.csv"),
    )
    (told,) = [one for one in result.findings if one.what == "codes-left-over"]
    assert told.question
    assert told.walkers == (result.walkers[0].ident,)
    assert "the code in line 7 of the list of codes is of no attempt" in told.message
