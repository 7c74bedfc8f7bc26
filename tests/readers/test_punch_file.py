"""Codes brought back: the key is the rows without a name."""

from __future__ import annotations

import pytest

from audit.errors import InputRefusedError
from audit.readers.punch_file import read_punches
from audit.words import Words


def punches(tmp_path, text):
    path = tmp_path / "codes.csv"
    path.write_text(text, encoding="utf-8")
    return read_punches(path)


def test_key_and_codes(tmp_path):
    read = punches(tmp_path, "name,point,code\n,Birch,KT\nAdder,Birch,kt\n")
    assert [entry.name for entry in read.entries] == ["", "Adder"]
    assert read.notes == ()


def test_without_a_key_that_is_said(tmp_path):
    note = punches(tmp_path, "name,point,code\nAdder,Birch,KT\n").notes[0]
    assert "no key" in note
    # Bug: it stood in English in a German document.
    assert "keinen Schlüssel" in Words(language="de").told(note)


def test_all_problems_at_once(tmp_path):
    with pytest.raises(InputRefusedError) as refused:
        punches(tmp_path, "name,point,code\n,Birch,KT\n,Birch,4V\nAdder,,KT\nAdder,Birch,\n")
    assert len(refused.value.problems) == 3


@pytest.mark.parametrize(
    ("written", "noted_s"),
    [
        ("17:25", 62_700.0), ("19:25+02:00", 62_700.0), ("2026-09-19T17:25:00Z", 62_700.0),
        ("5:25 PM", 62_700.0), ("", None),
    ],
)  # fmt: skip
def test_the_time_beside_a_code_is_read_where_it_is_one(tmp_path, written, noted_s):
    path = tmp_path / "codes.csv"
    path.write_text(f"name,lane,point,code,time\nAdder,,Knoll,KT,{written}\n")
    (entry,) = read_punches(path).entries
    assert (entry.time, entry.noted_s) == (written, noted_s)


@pytest.mark.parametrize("written", ["25:99", "xx", "in the evening"])
def test_a_time_that_no_clock_shows_is_refused(tmp_path, written):
    """Bug: it was handed on as the time of the code."""
    with pytest.raises(InputRefusedError) as refused:
        punches(tmp_path, f"name,point,code,time\n,Birch,KT,\nAdder,Birch,KT,{written}\n")
    (problem,) = refused.value.problems
    assert str(problem).startswith(f'codes.csv, line 3, time: "{written}" is no clock time.')
