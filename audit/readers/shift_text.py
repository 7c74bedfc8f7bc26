"""How far a clock is to be put, as somebody writes it."""

from __future__ import annotations

import re

from audit.readers.plain_text import plain_text

SHIFT_REMEDY = "write hours and minutes (+1:00, -0:06:40) or seconds (-400)"
_CLOCK = re.compile(
    r"(?P<sign>[+-]?)(?P<hours>\d{1,3}):(?P<minutes>[0-5]\d)(?::(?P<seconds>[0-5]\d))?", re.ASCII
)
_SECONDS = re.compile(r"[+-]?\d{1,9}(?:\.\d+)?s?", re.ASCII)


def written_shift(written: str) -> float | None:
    """Give the seconds that are to be added; None where the text is no shift."""
    text = plain_text(written).lower()
    if _SECONDS.fullmatch(text):
        return float(text.rstrip("s"))
    found = _CLOCK.fullmatch(text)
    if not found:
        return None
    seconds = int(found["hours"]) * 3600 + int(found["minutes"]) * 60 + int(found["seconds"] or 0)
    return float(-seconds if found["sign"] == "-" else seconds)
