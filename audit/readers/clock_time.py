"""A clock time, or a day and a time, as people write them."""

from __future__ import annotations

import datetime as dt
import re

from audit.moments import read_moment
from audit.readers.plain_text import plain_text

CLOCK_REMEDY = "Write it like 10:42, 10:42+02:00 or 2026-10-03T10:42:00Z."
_CLOCK = re.compile(
    r"T?(?P<hour>\d{1,2})(?:[:.H](?P<minute>\d{2})(?:[:.](?P<second>\d{2})(?:[.,]\d+)?)?"
    r"|(?P<joined>\d{2}))(?: ?(?P<half>[AP])\.?M\.?)?(?: ?(?P<zone>Z|[+-]\d{2}:?\d{2}))?",
    re.ASCII,
)
_DAY_AND_TIME = re.compile(r"\d{4}(?:-\d{2}-\d{2}[T ]|\d{4}T)\d{2}", re.ASCII)
_FURTHEST = dt.time(14)
"""No clock on earth is further from UTC."""


def clock_moment(written: str) -> dt.time | dt.datetime | None:
    """Give the time that is written; None where it is none."""
    text = plain_text(written).upper()
    try:
        if _DAY_AND_TIME.match(text):
            return read_moment(text)
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
    time = dt.time(hour, minute, int(found["second"] or 0))
    return time.replace(tzinfo=_zone(found["zone"], time))


def _zone(written: str | None, time: dt.time) -> dt.timezone | None:
    """Give the zone of a clock: "Z", "+02:00" or "-0400"; None where none is written.

    Raises
    ------
    ValueError
        For a zone that no clock has, and where it may as well be the end of a span of time.
    """
    if written is None or written == "Z":
        return dt.UTC if written else None
    off = dt.time(int(written[1:3]), int(written[-2:]))
    if off > _FURTHEST or (written[0] == "-" and off > time):
        message = "10:42-11:30 is a span of time, or a clock of another zone"
        raise ValueError(message)
    ahead = dt.timedelta(hours=off.hour, minutes=off.minute)
    return dt.timezone(-ahead if written[0] == "-" else ahead)
