"""A clock of one walker that is put by the roster, and one that is off by a zone."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest
from classroom.hand_made import lane, track

from audit.classroom.grade_class import grade
from audit.errors import InputRefusedError
from audit.readers.roster_file import read_roster
from audit.readers.standard_file import read_standard
from audit.roster import Roster, RosterEntry

PLACES = ((600.0, 100.0), (900.0, -500.0))
LANE = lane("east", *PLACES)


def graded(*shifts_s):
    """Three walks begun together, the second by a clock that is an hour ahead."""
    first = track((0.0, 0.0), *PLACES, source="a.gpx")
    ahead = replace(first, time_s=first.time_s + 3600.0, source="b.gpx")
    start = dt.datetime.fromtimestamp(float(first.time_s[0]), dt.UTC)
    entries = tuple(
        RosterEntry(name=name, files=(f"{name}.gpx",), start=start, shift_s=shift_s)
        for name, shift_s in zip("abc", (*shifts_s, None), strict=True)
    )
    standard = replace(read_standard("day-course"), points_to_find=2)
    return grade(
        {"east": LANE.plan},
        [first, ahead, replace(first, source="c.gpx")],
        standard,
        roster=Roster(entries=entries),
    )


def test_one_clock_is_put_by_the_roster_and_the_others_stay():
    """Bug: there was no shift for one team, and all clocks had to be put for it."""
    made = graded(None, -3600.0)
    first, second, _ = made.walkers
    assert second.time == first.time
    assert (first.shift_s, second.shift_s) == (0.0, -3600.0)
    assert not [one for one in made.findings if one.what == "clock"]
    assert any("60 min 0 s back" in str(note) for note in second.notes)


def test_a_start_near_whole_hours_off_is_asked_about_as_another_zone():
    (asked,) = [one for one in graded(None, None).findings if one.what == "clock"]
    assert "-1:00 under shift" in asked.message


@pytest.mark.parametrize(
    ("written", "shift_s"), [("-1:00", -3600.0), ("+0:06:40", 400.0), ("-400", -400.0), ("", None)]
)
def test_the_roster_writes_a_shift_as_the_option_does(tmp_path, written, shift_s):
    path = tmp_path / "roster.csv"
    path.write_text(f"name,shift\nAda,{written}\n", encoding="utf-8")
    assert read_roster(path).entries[0].shift_s == shift_s


def test_a_shift_that_is_none_is_refused(tmp_path):
    path = tmp_path / "roster.csv"
    path.write_text("name,shift\nAda,start\n", encoding="utf-8")
    with pytest.raises(InputRefusedError, match="is no shift of a clock"):
        read_roster(path)
