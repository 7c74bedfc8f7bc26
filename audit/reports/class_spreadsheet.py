"""class.csv, one row a walker and point, and class.xlsx, with a sheet for each table."""

from __future__ import annotations

import csv
import datetime as dt
import io
from collections.abc import Mapping
from typing import TYPE_CHECKING

from audit.classroom.class_result import ClassResult
from audit.reports.cause_words import cause_words
from audit.reports.class_rows import (
    Cell,
    CellKind,
    Column,
    Sheet,
    finding_sheet,
    lane_sheet,
    leg_sheet,
    point_sheet,
    standard_sheet,
    walker_sheet,
)
from audit.reports.spreadsheet_cells import tame, tame_cell
from audit.words import say, told

if TYPE_CHECKING:
    from xlsxwriter.format import Format
    from xlsxwriter.workbook import Workbook
    from xlsxwriter.worksheet import Worksheet

_MADE = dt.datetime(1980, 1, 1, tzinfo=dt.UTC)
"""The day that the file says it was made: the same input gives the same bytes."""
_NUMBERS: Mapping[CellKind, str] = {
    "text": "@",
    "whole": "0",
    "metres": "0.0",
    "degrees": "0.0",
    "share": "0%",
    "minutes": "0.0",
    "number": "0.##",
    "moment": "yyyy-mm-dd hh:mm:ss",
}
_DIGITS = 3


def render_class_csv(result: ClassResult) -> str:
    """Give class.csv: the points of all walkers, numbers bare and texts never a formula."""
    sheet, text = point_sheet(result), io.StringIO()
    table = csv.writer(text, lineterminator="\n")
    table.writerow([column.name for column in sheet.columns])
    for row in sheet.rows:
        table.writerow([_csv_cell(cell) for cell in row])
    return text.getvalue()


def _csv_cell(cell: Cell) -> object:
    return f"{cell:.{_DIGITS}f}" if isinstance(cell, float) else tame_cell(cell)


def render_class_xlsx(result: ClassResult) -> bytes:
    """Give class.xlsx: frozen headings, filters, number formats, and no formula at all."""
    import xlsxwriter  # noqa: PLC0415 (only a class wants it)

    made = io.BytesIO()
    book = xlsxwriter.Workbook(
        made,
        {
            "in_memory": True,
            "strings_to_formulas": False,
            "strings_to_urls": False,
            "strings_to_numbers": False,
        },
    )
    book.set_properties({"title": tame(result.name), "created": _MADE.replace(tzinfo=None)})
    heading = book.add_format({"bold": True, "bottom": 1, "text_wrap": True, "valign": "top"})
    formats = {kind: book.add_format({"num_format": shown}) for kind, shown in _NUMBERS.items()}
    for sheet in (
        walker_sheet(result),
        point_sheet(result),
        leg_sheet(result),
        lane_sheet(result),
        finding_sheet(result),
        standard_sheet(result),
    ):
        _write(book, sheet, heading, formats)
    book.close()
    return made.getvalue()


def _write(
    book: Workbook, sheet: Sheet, heading: Format, formats: Mapping[CellKind, Format]
) -> None:
    page = book.add_worksheet(say(f"sheet-name-{sheet.name}"))
    page.freeze_panes(1, 1)
    page.autofilter(0, 0, len(sheet.rows), len(sheet.columns) - 1)
    page.set_landscape()
    page.fit_to_pages(1, 0)
    page.repeat_rows(0)
    for place, column in enumerate(sheet.columns):
        page.set_column(place, place, column.width)
        page.write_string(0, place, column_words(column), heading)
    for number, row in enumerate(sheet.rows, start=1):
        for place, (column, cell) in enumerate(zip(sheet.columns, row, strict=True)):
            _write_cell(page, (number, place), column, cell, formats)


def column_words(column: Column) -> str:
    """Give what a column is called."""
    return say(f"sheet-column-{column.name.replace('_', '-')}")


def _cell_words(column: Column, cell: str) -> str:
    """Tell a cell: a sentence in the words in force, a cause, and the words that a column knows."""
    if column.name == "cause":
        return cause_words(cell)
    return say(f"sheet-is-{cell}") if column.told else told(cell)


def _write_cell(
    page: Worksheet,
    where: tuple[int, int],
    column: Column,
    cell: Cell,
    formats: Mapping[CellKind, Format],
) -> None:
    shown = formats[column.kind]
    if cell is None or cell == "":
        page.write_blank(*where, None, shown)
    elif column.kind == "moment" and isinstance(cell, str):
        moment = dt.datetime.fromisoformat(cell).replace(tzinfo=None)
        page.write_datetime(*where, moment, shown)
    elif isinstance(cell, str):
        page.write_string(*where, tame(_cell_words(column, cell)), formats["text"])
    else:
        page.write_number(*where, cell, shown)
