"""The roster of a class in CSV: who walked which lane with which device, one row an attempt."""

from __future__ import annotations

import re
from pathlib import Path

from audit.readers.clock_time import CLOCK_REMEDY, clock_moment
from audit.readers.csv_table import CsvRow, csv_columns, read_csv_table
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.plain_text import writable
from audit.readers.problem_list import ProblemList
from audit.readers.shift_text import SHIFT_REMEDY, written_shift
from audit.roster import Roster, RosterEntry
from audit.settings import Settings

ROSTER_COLUMNS = ("name", "lane", "device", "file", "start", "attempt", "compass", "shift")
_SAME = {"start_time": "start", "walker": "name", "track": "file", "recording": "file"}
_SEVERAL = re.compile(r"\s*[;|]\s*")
_MOST_ATTEMPTS = 99


def read_roster(path: str | Path, *, settings: Settings | None = None) -> Roster:
    """Give the roster that a CSV file holds.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    path = Path(path)
    limits = (settings or Settings()).reading
    problems = ProblemList(file=path.name, limits=limits)
    text = decoded_text(file_bytes(path, "a roster", limits), problems)
    columns = (*ROSTER_COLUMNS, *_SAME)
    table = read_csv_table(text, columns, problems)
    if not csv_columns(text, columns) & {"name", "walker"}:
        remedy = "Give each row the name of its walker, or any other sign, under name."
        problems.stop("line 1", None, "has no column name", remedy)
    entries = tuple(_entry(row, problems) for row in table.rows)
    _check_twice(entries, problems)
    problems.stop_if_any()
    if not entries:
        problems.stop("", None, "holds no row", "Write one row for each walk.")
    return Roster(entries=entries, notes=tuple(problems.notes), source=writable(path.name))


def _entry(row: CsvRow, problems: ProblemList) -> RosterEntry:
    cells = {
        _SAME.get(column, column): problems.writable(cell, row.place(column))
        for column, cell in row.cells.items()
    }
    name = " ".join(cells.get("name", "").split())
    if not name:
        problems.add(row.place("name"), None, "is empty", "Write whose walk it is.")
    start = None
    if "start" in cells:
        start = clock_moment(cells["start"])
        if start is None:
            problems.add(row.place("start"), cells["start"], "is no clock time", CLOCK_REMEDY)
    return RosterEntry(
        name=name,
        lane=" ".join(cells.get("lane", "").split()),
        device=" ".join(cells.get("device", "").split()),
        files=tuple(one for one in _SEVERAL.split(cells.get("file", "")) if one),
        start=start,
        attempt=_attempt(row, problems),
        compass=" ".join(cells.get("compass", "").split()),
        shift_s=_shift(row, problems),
        line=row.line,
    )


def _attempt(row: CsvRow, problems: ProblemList) -> int:
    cell = row.cells.get("attempt", "1")
    if re.fullmatch(r"[0-9]{1,2}", cell) and 1 <= int(cell) <= _MOST_ATTEMPTS:
        return int(cell)
    problems.add(row.place("attempt"), cell, "is no number of an attempt", "Write 1, 2 and so on.")
    return 1


def _shift(row: CsvRow, problems: ProblemList) -> float | None:
    cell = row.cells.get("shift")
    if cell is None:
        return None
    shift_s = written_shift(cell)
    if shift_s is None:
        problems.add(
            row.place("shift"), cell, "is no shift of a clock", f"{SHIFT_REMEDY.capitalize()}."
        )
    return shift_s


def _check_twice(entries: tuple[RosterEntry, ...], problems: ProblemList) -> None:
    """Put down rows that cannot both be right."""
    rows: dict[tuple[str, str, int], RosterEntry] = {}
    for entry in entries:
        first = rows.setdefault(
            (entry.name.casefold(), entry.lane.casefold(), entry.attempt), entry
        )
        if first is not entry and entry.name:
            problems.add(
                f"line {entry.line}, name",
                entry.name,
                f"has attempt {entry.attempt} in line {first.line} already",
                "Number the attempts; files of one walk stand in one cell: a.gpx; b.gpx.",
            )
