"""The walker's log in CSV: what was set, counted and believed, one row a leg."""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path

from audit.azimuths import MagneticAzimuth
from audit.readers.csv_table import CsvRow, CsvTable, csv_columns, read_csv_table
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.leg_values import azimuth
from audit.readers.plain_text import plain_text
from audit.readers.problem_list import ProblemList
from audit.walkers_log import LogEntry, WalkersLog

_AZIMUTHS = ("magnetic_azimuth_deg", "magnetic_azimuth_mil")
LOG_COLUMNS = ("leg", *_AZIMUTHS, "paces", "arrived", "note")
_CLOCK = re.compile(
    r"T?(?P<hour>\d{1,2})(?:[:.H](?P<minute>\d{2})(?:[:.](?P<second>\d{2})(?:[.,]\d+)?)?"
    r"|(?P<joined>\d{2}))(?: ?(?P<half>[AP])\.?M\.?)?(?P<utc> ?Z)?",
    re.ASCII,
)


def read_log(path: str | Path) -> WalkersLog:
    """Give the walker's log that a CSV file holds.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    path = Path(path)
    data = file_bytes(path, "a walker's log")
    problems = ProblemList(file=path.name)
    table = read_csv_table(decoded_text(data, problems), LOG_COLUMNS, problems)
    entries: dict[str, LogEntry] = {}
    for number, row in enumerate(table.rows, start=1):
        entry = _entry(table, row, number, problems)
        if entry.leg in entries:
            rule = "has two rows"
            problems.add(row.place("leg"), entry.leg, rule, "Keep one row for each leg.")
        entries[entry.leg] = entry
    problems.stop_if_any()
    if not entries:
        remedy = "Write one row for each leg under the names of the columns."
        problems.stop("", None, "holds no row", remedy)
    return WalkersLog(
        entries=tuple(entries.values()), notes=tuple(problems.notes), source=path.name
    )


def is_log(text: str) -> bool:
    """Tell whether a CSV text has the columns of a log, and none that only a plan has."""
    columns = csv_columns(text, LOG_COLUMNS)
    return "arrived" in columns or ({"leg"} < columns <= set(LOG_COLUMNS))


def _entry(table: CsvTable, row: CsvRow, number: int, problems: ProblemList) -> LogEntry:
    leg = " ".join(row.cells.get("leg", "").split())
    if not leg:
        leg = str(number)
        problems.note(f'line {row.line} names no leg; it is taken as leg "{leg}".')
    numbers = {
        column: value
        for column in _AZIMUTHS
        if (value := table.number(row, column, problems)) is not None
    }
    return LogEntry(
        leg=leg,
        magnetic_azimuth=azimuth(
            numbers, "magnetic", MagneticAzimuth, f"line {row.line}", problems
        ),
        paces=table.number(row, "paces", problems),
        arrived=_arrived(row, problems),
        note=row.cells.get("note", ""),
    )


def _arrived(row: CsvRow, problems: ProblemList) -> dt.time | dt.datetime | None:
    """Give the clock time, or day and time, of a row."""
    cell = row.cells.get("arrived")
    if cell is None:
        return None
    text = plain_text(cell).upper()
    try:
        if re.match(r"\d{4}-\d{2}-\d{2}[T ]\d{2}", text, re.ASCII):
            return dt.datetime.fromisoformat(text)
        found = _CLOCK.fullmatch(text)
        if found:
            return _time(found)
    except ValueError:
        pass
    rule = "is no clock time"
    problems.add(row.place("arrived"), cell, rule, "Write it like 10:42 or 2026-10-03T10:42:00Z.")
    return None


def _time(found: re.Match[str]) -> dt.time:
    """Give the time of a matched text.

    Raises
    ------
    ValueError
        For hours, minutes or seconds that no clock shows.
    """
    hour = int(found["hour"])
    if found["half"]:
        if not 1 <= hour <= 12:
            message = "a clock of twelve hours shows 1 to 12"
            raise ValueError(message)
        hour = hour % 12 + (12 if found["half"] == "P" else 0)
    minute = int(found["minute"] or found["joined"])
    zone = dt.UTC if found["utc"] else None
    return dt.time(hour, minute, int(found["second"] or 0), tzinfo=zone)
