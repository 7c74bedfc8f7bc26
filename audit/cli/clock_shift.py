"""How far the clocks of a batch are to be put, as somebody writes it."""

from __future__ import annotations

import re

_BY_START = "start"
_CLOCK = re.compile(
    r"(?P<sign>[+-]?)(?P<hours>\d{1,3}):(?P<minutes>[0-5]\d)(?::(?P<seconds>[0-5]\d))?"
)
_SECONDS = re.compile(r"[+-]?\d{1,9}(?:\.\d+)?s?")


def clock_shift(written: str) -> float | None:
    """Give seconds to be added; None for "start": by the first crossing of the start.

    Raises
    ------
    ValueError
        For anything else.
    """
    text = written.strip().lower().replace("\u2212", "-")
    if text == _BY_START:
        return None
    if _SECONDS.fullmatch(text):
        return float(text.rstrip("s"))
    found = _CLOCK.fullmatch(text)
    if not found:
        message = (
            f'"{written}" is no shift of a clock: write hours and minutes (+1:00), seconds '
            "(-3600), or start, for the first crossing of the start against the roster"
        )
        raise ValueError(message)
    seconds = int(found["hours"]) * 3600 + int(found["minutes"]) * 60 + int(found["seconds"] or 0)
    return float(-seconds if found["sign"] == "-" else seconds)
