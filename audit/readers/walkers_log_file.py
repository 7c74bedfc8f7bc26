"""The walker's log in CSV: what was set, counted and believed, one row a leg."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from audit.azimuths import GridAzimuth, MagneticAzimuth, TrueAzimuth
from audit.readers.clock_time import CLOCK_REMEDY, clock_moment
from audit.readers.csv_table import CsvRow, CsvTable, csv_columns, read_csv_table
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.leg_values import azimuth
from audit.readers.plain_text import writable
from audit.readers.plan_draft import check_count
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import AZIMUTH_KEYS, NORTHS
from audit.settings import Settings
from audit.walkers_log import LogEntry, WalkersLog
from audit.words import sentence

LOG_COLUMNS = ("leg", *AZIMUTH_KEYS, "paces", "arrived", "note")
_OF_LOGS = {"leg", "magnetic_azimuth_deg", "magnetic_azimuth_mil", "paces", "arrived", "note"}
"""Columns that a plan may have as well; with any other it is a plan, unless it says "arrived"."""


def read_log(path: str | Path, *, settings: Settings | None = None) -> WalkersLog:
    """Give the walker's log that a CSV file holds.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    path = Path(path)
    limits = (settings or Settings()).reading
    data = file_bytes(path, "a walker's log", limits)
    problems = ProblemList(file=path.name, limits=limits)
    table = read_csv_table(decoded_text(data, problems), LOG_COLUMNS, problems)
    check_count(len(table.rows), problems)
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
        entries=tuple(entries.values()), notes=tuple(problems.notes), source=writable(path.name)
    )


def is_log(text: str) -> bool:
    """Tell whether a CSV text has the columns of a log, and none that only a plan has."""
    columns = csv_columns(text, LOG_COLUMNS)
    return "arrived" in columns or ({"leg"} < columns <= _OF_LOGS)


def _entry(table: CsvTable, row: CsvRow, number: int, problems: ProblemList) -> LogEntry:
    leg = " ".join(problems.writable(row.cells.get("leg", ""), row.place("leg")).split())
    if not leg:
        leg = str(number)
        problems.note(sentence("plan-log-no-leg", line=str(row.line), leg=leg))
    numbers = {
        column: value
        for column in AZIMUTH_KEYS
        if (value := table.number(row, column, problems)) is not None
    }
    place = f"line {row.line}"
    norths = [north for north in NORTHS if any(key.startswith(north) for key in numbers)]
    if len(norths) > 1:
        rule = f"gives what was set from {' and '.join(norths)} north"
        problems.add(place, None, rule, "Keep the one that the compass shows.")
    return LogEntry(
        leg=leg,
        magnetic_azimuth=azimuth(numbers, "magnetic", MagneticAzimuth, place, problems),
        grid_azimuth=azimuth(numbers, "grid", GridAzimuth, place, problems),
        true_azimuth=azimuth(numbers, "true", TrueAzimuth, place, problems),
        paces=table.number(row, "paces", problems),
        arrived=_arrived(row, problems),
        note=problems.writable(row.cells.get("note", ""), row.place("note")),
    )


def _arrived(row: CsvRow, problems: ProblemList) -> dt.time | dt.datetime | None:
    """Give the clock time, or day and time, of a row."""
    cell = row.cells.get("arrived")
    if cell is None:
        return None
    moment = clock_moment(cell)
    if moment is None:
        problems.add(row.place("arrived"), cell, "is no clock time", CLOCK_REMEDY)
    return moment
