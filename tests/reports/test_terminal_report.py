"""The short debrief on the terminal: columns stand below each other."""

from __future__ import annotations

from dataclasses import replace

import pytest
from reports.sample_debrief import sample_debrief

from audit.reports.terminal_report import render_terminal
from audit.words import Words


def rows(debrief) -> list[str]:
    lines = render_terminal(debrief).splitlines()
    begin = lines.index("") + 1
    return lines[begin : begin + len(debrief.legs)]


def starts_of_words(line: str) -> set[int]:
    """Where something begins after two blanks or more."""
    return {i for i in range(2, len(line)) if line[i] != " " and line[i - 2 : i] == "  "}


def test_columns_are_aligned():
    legs = rows(sample_debrief())
    assert legs[0].startswith("1  walked")
    shared = set.intersection(*(starts_of_words(line) for line in legs[:3]))
    # Status, two errors, arrival and cause.
    assert len(shared) >= 5


def test_leg_not_walked_ends_its_line():
    debrief = sample_debrief()
    fourth = replace(debrief.legs[3], causes=())
    line = rows(replace(debrief, legs=(*debrief.legs[:3], fourth)))[3]
    assert line == "4  skipped"


@pytest.mark.parametrize(
    ("language", "said"), [("en", ("training aid", "count heads", "a human signs the grade")),
                           ("de", ("Ausbildungsmittel", "Leute zählen", "ein Mensch"))],
)  # fmt: skip
def test_the_cautions_end_the_debrief_in_one_line(language, said):
    """Bug: the short debrief had no word of caution."""
    text = render_terminal(sample_debrief(), Words(language=language))
    last = text.splitlines()[-1]
    assert all(words in last for words in said)
