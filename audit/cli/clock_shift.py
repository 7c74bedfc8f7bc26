"""How far the clocks of a batch are to be put, as somebody writes it."""

from __future__ import annotations

from audit.readers.shift_text import written_shift

_BY_START = "start"


def clock_shift(written: str) -> float | None:
    """Give seconds to be added; None for "start": by the first crossing of the start.

    Raises
    ------
    ValueError
        For anything else.
    """
    if written.strip().lower() == _BY_START:
        return None
    shift_s = written_shift(written)
    if shift_s is None:
        message = (
            f'"{written}" is no shift of a clock: write hours and minutes (+1:00), seconds '
            "(-3600), or start, for the first crossing of the start against the roster"
        )
        raise ValueError(message)
    return shift_s
