"""Codes brought back: the key is the rows without a name."""

from __future__ import annotations

import pytest

from audit.errors import InputRefusedError
from audit.readers.punch_file import read_punches


def punches(tmp_path, text):
    path = tmp_path / "codes.csv"
    path.write_text(text, encoding="utf-8")
    return read_punches(path)


def test_key_and_codes(tmp_path):
    read = punches(tmp_path, "name,point,code\n,Birch,KT\nAdder,Birch,kt\n")
    assert [entry.name for entry in read.entries] == ["", "Adder"]
    assert read.notes == ()


def test_without_a_key_that_is_said(tmp_path):
    assert "no key" in punches(tmp_path, "name,point,code\nAdder,Birch,KT\n").notes[0]


def test_all_problems_at_once(tmp_path):
    with pytest.raises(InputRefusedError) as refused:
        punches(tmp_path, "name,point,code\n,Birch,KT\n,Birch,4V\nAdder,,KT\nAdder,Birch,\n")
    assert len(refused.value.problems) == 3
