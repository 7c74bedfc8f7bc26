"""What walkers brought back from the points, in CSV: codes, and the key to them."""

from __future__ import annotations

import datetime as dt
import re
from pathlib import Path

from audit.moments import DAY_S
from audit.readers.clock_time import CLOCK_REMEDY, clock_moment
from audit.readers.csv_table import CsvRow, read_csv_table
from audit.readers.file_bytes import decoded_text, file_bytes
from audit.readers.plain_text import writable
from audit.readers.problem_list import ProblemList
from audit.roster import PunchEntry, PunchList
from audit.settings import Settings
from audit.words import sentence

_ANY_DAY = dt.date(2000, 1, 1)
PUNCH_COLUMNS = ("name", "lane", "point", "code", "time", "attempt")


def read_punches(path: str | Path, *, settings: Settings | None = None) -> PunchList:
    """Give the codes that a CSV file holds; a row without a name is the key of its point.

    Raises
    ------
    InputRefusedError
        With every problem of the file.
    """
    path = Path(path)
    limits = (settings or Settings()).reading
    problems = ProblemList(file=path.name, limits=limits)
    table = read_csv_table(
        decoded_text(file_bytes(path, "a list of codes", limits), problems), PUNCH_COLUMNS, problems
    )
    entries = tuple(_entry(row, problems) for row in table.rows)
    _check_twice(entries, problems)
    problems.stop_if_any()
    if not entries:
        problems.stop("", None, "holds no row", "Write one row for each code brought back.")
    if not any(not entry.name for entry in entries):
        problems.note(sentence("plan-no-key"))
    return PunchList(entries=entries, notes=tuple(problems.notes), source=writable(path.name))


def _entry(row: CsvRow, problems: ProblemList) -> PunchEntry:
    told = {
        column: problems.writable(" ".join(row.cells.get(column, "").split()), row.place(column))
        for column in ("point", "code", "name", "lane", "time")
    }
    point, code = told["point"], told["code"]
    if not point:
        problems.add(row.place("point"), None, "is empty", "Write the name of the point.")
    if not code:
        rule = "is empty"
        problems.add(row.place("code"), None, rule, "Write the code, or leave the row out.")
    attempt = row.cells.get("attempt", "1")
    if not re.fullmatch(r"[1-9][0-9]?", attempt):
        rule = "is no number of an attempt"
        problems.add(row.place("attempt"), attempt, rule, "Write 1, 2 and so on.")
        attempt = "1"
    if told["time"] and clock_moment(told["time"]) is None:
        problems.add(row.place("time"), told["time"], "is no clock time", CLOCK_REMEDY)
    return PunchEntry(
        point=point,
        code=code,
        name=told["name"],
        lane=told["lane"],
        attempt=int(attempt),
        time=told["time"],
        noted_s=_of_day_s(told["time"]),
        line=row.line,
    )


def _of_day_s(written: str) -> float | None:
    """Give seconds after midnight UTC, or None where no time is written; UTC where no zone is."""
    moment = clock_moment(written)
    if isinstance(moment, dt.time):
        moment = dt.datetime.combine(_ANY_DAY, moment)
    if moment is None:
        return None
    aware = moment if moment.tzinfo else moment.replace(tzinfo=dt.UTC)
    return aware.timestamp() % DAY_S


def _check_twice(entries: tuple[PunchEntry, ...], problems: ProblemList) -> None:
    """Put down rows that say two things of one point."""
    rows: dict[tuple[str, str, str, int], PunchEntry] = {}
    for entry in entries:
        key = (entry.name.casefold(), entry.lane.casefold(), entry.point.casefold(), entry.attempt)
        first = rows.setdefault(key, entry)
        if first is not entry and first.code.casefold() != entry.code.casefold():
            whose = f"of {entry.name}" if entry.name else "of the key"
            rule = f"{whose} for this point differs from line {first.line}"
            problems.add(f"line {entry.line}, code", entry.code, rule, "Keep one of the two.")
