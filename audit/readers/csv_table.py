"""A table in CSV, whatever separates its cells, with the line of each row."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass

from audit.readers.number_text import NumberReading, number_readings
from audit.readers.plain_text import plain_text
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import limits_by
from audit.words import sentence

_SHIELDED = re.compile(r"^'(?='*[=+\-@\t\r\n＝＋－＠])")
"""The apostrophe by which spreadsheets keep text from being run as a formula; not of the text."""
_LONGEST_HEADER = 10_000
_SEPARATORS = {",": "comma", ";": "semicolon", "\t": "tab"}
_UNITS = (
    (re.compile(r" ?(?:°|deg(?:rees?)?)$"), "_deg"),
    (re.compile(r" ?mils?$"), "_mil"),
    (re.compile(r" ?m(?:et(?:re|er)s?)?$"), "_m"),
    (re.compile(r" ?paces?$"), "paces"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CsvRow:
    """One row: the line where it begins, and its cells that hold something, by column."""

    line: int
    cells: dict[str, str]

    def place(self, column: str) -> str:
        """Give the words for a cell of the row."""
        return f"line {self.line}, {column}"


@dataclass(frozen=True, slots=True, kw_only=True)
class CsvTable:
    """The rows that hold anything, and the separator between cells."""

    rows: tuple[CsvRow, ...]
    separator: str

    def number(self, row: CsvRow, column: str, problems: ProblemList) -> float | None:
        """Give a cell as a number inside its limits; None where it is empty or a problem."""
        cell = row.cells.get(column)
        if cell is None:
            return None
        limits = limits_by(problems.limits)[column]
        readings = self._readings(cell, column)
        if not readings:
            problems.add(row.place(column), cell, "is not a number", limits.remedy)
            return None
        inside = [reading for reading in readings if limits.hold(reading.value)]
        if not inside:
            rule = f"is out of range ({limits})"
            problems.add(row.place(column), cell, rule, limits.remedy)
            return None
        if len(inside) > 1:
            one, other = sorted(reading.value for reading in inside)[:2]
            rule = f"can be read as {one:.10g} or as {other:.10g}"
            remedy = f"Write {one:.10g} with a decimal point, or {other:.10g} without a mark."
            problems.add(row.place(column), cell, rule, remedy)
            return None
        if inside[0].decimal_mark == ",":
            problems.note(sentence("plan-commas", column=column))
        if inside[0].group_mark:
            problems.note(sentence("plan-thousands", column=column))
        return inside[0].value

    def _readings(self, cell: str, column: str) -> list[NumberReading]:
        """Give the readings that the separator leaves: beside ";" a comma is a decimal one."""
        text = plain_text(cell).lower()
        for unit, ending in _UNITS:
            if column.endswith(ending):
                text = unit.sub("", text)
        readings = list(number_readings(text))
        if self.separator == ";":
            return [reading for reading in readings if reading.group_mark != ","]
        if any(reading.decimal_mark == "." for reading in readings):
            return [reading for reading in readings if reading.group_mark != "."]
        return readings


def read_csv_table(text: str, columns: tuple[str, ...], problems: ProblemList) -> CsvTable:
    """Give the rows of a CSV text under the columns that are known.

    Capitals, spaces and hyphens in column names do not matter. A column that is not
    known and a row with more cells than columns are problems.

    Raises
    ------
    InputRefusedError
        Where there is no line of column names, or the text is no CSV.
    """
    if len(_first_line(text)) > _LONGEST_HEADER:
        remedy = f"Begin the file with the names of its columns: {', '.join(columns)}."
        problems.stop("line 1", None, "is too long for the names of columns", remedy)
    separator = _separator(text, columns)
    if separator is None:
        problems.stop(
            "line 1",
            None,
            "names no known column",
            f"Begin the file with the names of its columns: {', '.join(columns)}.",
        )
    lines = _lines(text, separator, problems)
    _, header = next(lines)
    names = [_column(cell) for cell in header]
    _check_columns(names, columns, problems)
    rows = []
    for line, cells in lines:
        filled = [_SHIELDED.sub("", cell.strip()) for cell in cells]
        if any(filled[len(names) :]) or any(
            cell and not name for cell, name in zip(filled, names, strict=False)
        ):
            rule = f"has more cells than the {len(names)} columns of the first line"
            remedy = 'Put cells that hold a comma in quotation marks: "36.512, -84.231".'
            problems.add(f"line {line}", None, rule, remedy)
            continue
        named = {name: cell for name, cell in zip(names, filled, strict=False) if name and cell}
        if named:
            rows.append(CsvRow(line=line, cells=named))
    return CsvTable(rows=tuple(rows), separator=separator)


def csv_columns(text: str, columns: tuple[str, ...]) -> set[str]:
    """Give the names of the columns of a CSV text, as they are compared with known ones."""
    separator = _separator(text, columns)
    if separator is None:
        return set()
    return {_column(cell) for cell in _first_line(text).split(separator)} - {""}


def _separator(text: str, columns: tuple[str, ...]) -> str | None:
    """Give the separator that splits the first line into the most known names."""
    first = _first_line(text)
    known = {
        separator: sum(_column(cell) in columns for cell in first.split(separator))
        for separator in _SEPARATORS
    }
    best = max(known, key=lambda separator: known[separator])
    return best if known[best] else None


def _first_line(text: str) -> str:
    """Give the line of column names: the first that holds anything but a spreadsheet's "sep="."""
    lines = (line for line in text.splitlines() if line.strip())
    first = next(lines, "")
    first = next(lines, "") if first.lower().startswith("sep=") else first
    return first[: _LONGEST_HEADER + 1]


def _lines(text: str, separator: str, problems: ProblemList) -> Iterator[tuple[int, list[str]]]:
    """Give (line where the row begins, cells) of each row with cells, from the header on."""
    reader = csv.reader(
        io.StringIO(text, newline=""), delimiter=separator, strict=True, skipinitialspace=True
    )
    begin = 1
    try:
        for cells in reader:
            directive = begin == 1 and cells[:1] and cells[0].lower().startswith("sep=")
            if any(cell.strip() for cell in cells) and not directive:
                yield begin, cells
            begin = reader.line_num + 1
    except csv.Error as error:
        remedy = "Close every quotation mark, and write one inside a cell twice."
        problems.stop(f"line {begin}", None, f"is not CSV: {error}", remedy)


def _column(cell: str) -> str:
    return re.sub(r"[^a-z0-9]+", "_", plain_text(cell).lower()).strip("_")


def _check_columns(names: list[str], columns: tuple[str, ...], problems: ProblemList) -> None:
    seen = set()
    for name in names:
        if name in seen:
            problems.add("line 1", name, "names two columns", "Keep one of them.")
        elif name and name not in columns:
            problems.unknown("line 1", "column", name, columns)
        if name:
            seen.add(name)
