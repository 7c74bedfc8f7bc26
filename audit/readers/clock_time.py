"""A clock time, or a day and a time, as people write them."""

from __future__ import annotations

import datetime as dt
import re

from audit.readers.plain_text import plain_text

CLOCK_REMEDY = "Write it like 10:42 or 2026-10-03T10:42:00Z."
_CLOCK = re.compile(
    r"T?(?P<hour>\d{1,2})(?:[:.H](?P<minute>\d{2})(?:[:.](?P<second>\d{2})(?:[.,]\d+)?)?"
    r"|(?P<joined>\d{2}))(?: ?(?P<half>[AP])\.?M\.?)?(?P<utc> ?Z)?",
    re.ASCII,
)


def clock_moment(written: str) -> dt.time | dt.datetime | None:
    """Give the time that is written; None where it is none."""
    text = plain_text(written).upper()
    try:
        if re.match(r"\d{4}-\d{2}-\d{2}[T ]\d{2}", text, re.ASCII):
            return dt.datetime.fromisoformat(text)
        found = _CLOCK.fullmatch(text)
        if found:
            return _time(found)
    except ValueError:
        pass
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
