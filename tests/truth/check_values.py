"""Reads check-values.csv: one published value a row, with its tolerance and its source.

``standing`` says what a value is worth: "printed" was read in the source named or in a
copy of it; "computed" came from a general-purpose library named in the source;
"from memory" was not read again; "by rule" follows from a rule of the source.
"""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

TABLE = Path(__file__).with_name("check-values.csv")


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckValue:
    topic: str
    inputs: str
    expected: str
    unit: str
    tolerance: str
    source: str
    standing: str

    def given(self, name: str) -> str:
        """Give one of the inputs, written as "name=value;name=value"."""
        return _field(self.inputs, name)

    def wanted(self, name: str) -> str:
        """Give one of the expected values."""
        return _field(self.expected, name)


def _field(text: str, name: str) -> str:
    for part in text.split(";"):
        key, equals, value = part.partition("=")
        if equals and key.strip() == name:
            return value.strip()
    raise KeyError(f"{name} is not in {text}")


@cache
def check_values(topic: str) -> tuple[CheckValue, ...]:
    with TABLE.open(encoding="utf-8", newline="") as table:
        rows = tuple(CheckValue(**row) for row in csv.DictReader(table) if row["topic"] == topic)
    if not rows:
        raise KeyError(topic)
    return rows


def each(topic: str, name: str = "value") -> pytest.MarkDecorator:
    """Run a test once for each row of a topic."""
    rows = check_values(topic)
    return pytest.mark.parametrize(name, rows, ids=[row.inputs for row in rows])


def degrees(text: str) -> float:
    """Read "34 15 34.742 N" or "-37 57 03.72030"; a plain number is degrees."""
    found = re.match(r"(-?)(\d+) (\d+) ([\d.]+) ?([NSEW]?)", text)
    if not found:
        return float(text)
    size = int(found[2]) + int(found[3]) / 60.0 + float(found[4]) / 3600.0
    return -size if found[1] or found[5] in {"S", "W"} else size
