"""Idents cannot leave their folder, whatever stands in a roster, and never meet."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from audit.classroom.walker_idents import idents


@pytest.mark.parametrize(
    "name",
    ["../../etc/passwd", "..", ".", "/", "C:\\Windows", "a/b", "a\x00b", "CON", "", "  ", "~root",
     "a" * 400, "=cmd|'/c calc'!A1", "\u202egpx.exe"],
)  # fmt: skip
def test_no_name_leaves_the_folder(name, tmp_path):
    (ident,) = idents([(name, 1)])
    target = (tmp_path / "debriefs" / ident).resolve()
    assert target.parent == (tmp_path / "debriefs").resolve()
    target.mkdir(parents=True)
    assert ident.casefold() not in {"con", "prn", "aux", "nul"}


@given(st.lists(st.tuples(st.text(max_size=80), st.integers(1, 3)), max_size=12))
def test_idents_differ_even_where_capitals_do_not_count(names):
    made = idents(names)
    assert len({one.casefold() for one in made}) == len(names)
    for one in made:
        assert Path(one).name == one
        assert len(one.encode()) < 120


def test_letters_of_any_script_stay():
    assert idents([("Łukasz Żuraw", 1), ("鈴木", 1), ("Adder", 2)]) == [
        "Łukasz-Żuraw", "鈴木", "Adder-attempt-2"
    ]  # fmt: skip
