"""legs.csv: one row a leg, for spreadsheets (RFC 4180), every figure in full."""

from __future__ import annotations

from audit.debriefing.records import Debrief

FORMULA_STARTS = tuple("=+-@\t\r\n＝＋－＠")
"""A text cell that begins so may be run as a formula (OWASP, CSV injection)."""


def render_csv(debrief: Debrief) -> str:
    """Give the text of legs.csv; columns as in `audit.debriefing.frames.legs_frame`."""
    frame = debrief.legs_frame()
    for name in frame.columns:
        if name.endswith("_time"):
            frame[name] = frame[name].dt.strftime("%Y-%m-%dT%H:%M:%S.%fZ")
            frame[name] = frame[name].str.replace(".000000Z", "Z", regex=False)
        else:
            frame[name] = frame[name].map(_harmless, na_action="ignore")
    text: str = frame.to_csv(index=False, lineterminator="\r\n")
    return text


def _harmless(cell: object) -> object:
    """Put an apostrophe before text that a spreadsheet would take for a formula."""
    if isinstance(cell, str) and cell.startswith(FORMULA_STARTS):
        return f"'{cell}"
    return cell
