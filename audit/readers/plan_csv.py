"""A plan in CSV, for spreadsheets: one row a leg."""

from __future__ import annotations

from dataclasses import replace

from audit.plan import Plan
from audit.readers.course_settings import CourseOptions, settle_settings
from audit.readers.csv_table import CsvRow, CsvTable, read_csv_table
from audit.readers.leg_values import leg_values
from audit.readers.plan_draft import DraftLeg, check_count
from audit.readers.plan_finish import finished_plan
from audit.readers.point_book import PointBook
from audit.readers.problem_list import ProblemList
from audit.readers.value_limits import LEG_NUMBER_KEYS

PLAN_COLUMNS = (
    "leg", "from", "to", "from_position", "to_position", *LEG_NUMBER_KEYS, "note",
)  # fmt: skip


def read_plan_csv(text: str, options: CourseOptions, problems: ProblemList) -> Plan:
    """Give the plan of a CSV text.

    A point needs its position in one row only. An end without a position, and without
    one anywhere else, is dead reckoned where the row gives an azimuth and a distance.

    Raises
    ------
    InputRefusedError
        With every problem of the text.
    """
    table = read_csv_table(text, PLAN_COLUMNS, problems)
    settings = settle_settings({}, options, problems)
    book = PointBook(problems, options.get("points"))
    check_count(len(table.rows), problems)
    drafts = [_leg(table, row, settings.grid, book, problems) for row in table.rows]
    if drafts and drafts[0].start is None and not drafts[0].spoilt and not book.lent:
        remedy = "Give the first row a from_position."
        problems.add(f"{drafts[0].place}, from", None, "has no start", remedy)
        drafts[0] = replace(drafts[0], spoilt=True)
    plan = finished_plan(settings, book, drafts, problems)
    # A row states its places itself: one name with two of them is a disagreement.
    return replace(plan, namesakes=tuple(book.namesakes))


def _leg(
    table: CsvTable, row: CsvRow, grid: str | None, book: PointBook, problems: ProblemList
) -> DraftLeg:
    before = len(problems.problems)
    start = _point(row, "from", grid, book, problems)
    end = _point(row, "to", grid, book, problems)
    numbers = {
        column: number
        for column in LEG_NUMBER_KEYS
        if (number := table.number(row, column, problems)) is not None
    }
    place = f"line {row.line}"
    values = leg_values(numbers, place, problems)
    return DraftLeg(
        place=place,
        name=_name(row, "leg", problems),
        start=start,
        end=end,
        values=values,
        note=problems.writable(row.cells.get("note", ""), row.place("note")),
        open_end=True,
        spoilt=len(problems.problems) > before,
    )


def _name(row: CsvRow, column: str, problems: ProblemList) -> str | None:
    cell = row.cells.get(column)
    return None if cell is None else " ".join(problems.writable(cell, row.place(column)).split())


def _point(
    row: CsvRow, column: str, grid: str | None, book: PointBook, problems: ProblemList
) -> str | None:
    """Give the name of a row's start or end, entering its position in the book."""
    name = _name(row, column, problems)
    text = row.cells.get(f"{column}_position")
    if text is None:
        return name
    reading = problems.position(text, row.place(f"{column}_position"), grid)
    if reading is not None:
        return book.put(name, reading)
    if name is not None:
        book.unread.add(name)
    return name
