"""legs.csv: one row a leg, for spreadsheets (RFC 4180), every figure in full."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping, Sequence

from audit.debriefing.finished_debrief import Debrief
from audit.debriefing.frames import leg_rows

FORMULA_STARTS = tuple("=+-@\t\r\n＝＋－＠")
"""A text cell that begins so may be run as a formula (OWASP, CSV injection)."""


def render_csv(debrief: Debrief) -> str:
    """Give the text of legs.csv; columns as in `audit.debriefing.frames.legs_frame`."""
    return csv_text(leg_rows(debrief))


def csv_text(rows: Sequence[Mapping[str, object]]) -> str:
    """Give rows of one shape as a table, the names of the columns on top."""
    text = io.StringIO(newline="")
    writer = csv.DictWriter(
        text, fieldnames=list(rows[0]) if rows else ["leg"], lineterminator="\r\n"
    )
    writer.writeheader()
    for row in rows:
        writer.writerow({name: _harmless(cell) for name, cell in row.items()})
    return text.getvalue()


def _harmless(cell: object) -> object:
    return as_text(cell) if isinstance(cell, str) else cell


def as_text(cell: str) -> str:
    """Put an apostrophe before text that a spreadsheet would take for a formula.

    Text that has apostrophes there already gets one more, so that a reader can take one off.
    """
    return f"'{cell}" if cell.lstrip("'").startswith(FORMULA_STARTS) else cell
