"""The roster: what it may leave out, and every problem at once."""

from __future__ import annotations

import datetime as dt

import pytest

from audit.errors import InputRefusedError
from audit.readers.roster_file import read_roster


def roster(tmp_path, text):
    path = tmp_path / "roster.csv"
    path.write_text(text, encoding="utf-8")
    return read_roster(path)


def test_only_a_name_is_needed(tmp_path):
    entries = roster(tmp_path, "name\nAdder\nBittern\n").entries
    assert [entry.name for entry in entries] == ["Adder", "Bittern"]
    assert (entries[0].lane, entries[0].files, entries[0].attempt) == ("", (), 1)


def test_all_columns_in_any_order_and_with_semicolons(tmp_path):
    text = (
        'Attempt;File;Name;Lane;Device;Start time;Compass\n2;"a.gpx; b.gpx";Adder;1;R01;10:42;C4\n'
    )
    entry = roster(tmp_path, text).entries[0]
    assert entry.files == ("a.gpx", "b.gpx")
    assert entry.start == dt.time(10, 42)
    assert (entry.attempt, entry.device, entry.compass, entry.lane) == (2, "R01", "C4", "1")


def test_all_problems_are_told_at_once(tmp_path):
    text = "name,start,attempt\n,10:00,1\nAdder,noon,1\nBittern,10:00,zero\nAdder,,1\n"
    with pytest.raises(InputRefusedError) as refused:
        roster(tmp_path, text)
    told = str(refused.value)
    assert len(refused.value.problems) == 4
    for piece in ("line 2, name", "line 3, start", "line 4, attempt", "line 5, name"):
        assert piece in told


def test_the_same_name_may_stand_on_two_lanes_and_in_two_attempts(tmp_path):
    text = "name,lane,attempt\nAdder,1,1\nAdder,1,2\nAdder,2,1\n"
    assert len(roster(tmp_path, text).entries) == 3
