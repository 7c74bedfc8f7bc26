"""Times of GPX points, as seconds since 1970."""

from __future__ import annotations

import datetime as dt
import re

_EPOCH = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
_EPOCH_WITHOUT_ZONE = dt.datetime(1970, 1, 1)  # noqa: DTZ001 (partner of times without a zone)

# What recorders write that is no strict ISO 8601: single digits, a leap second, a lower
# case z, the zone written out, a minus sign from the typesetter.
_LOOSE = re.compile(
    r"(?P<date>\d{4}-\d{1,2}-\d{1,2})[Tt ]\s*(?P<clock>\d{1,2}:\d{1,2}:\d{1,2})"
    r"(?P<fraction>[.,]\d+)?\s*(?P<zone>[Zz]|UTC|GMT|[+\-\u2212]\d{2}(:?\d{2})?)?"
)


def seconds_since_1970(text: str) -> tuple[float, bool]:
    """Give a time in seconds since 1970-01-01T00:00:00Z, and whether it named its zone.

    A time without a zone is taken as UTC. Digits beyond the microsecond are dropped.

    Raises
    ------
    ValueError
        For anything that is no date with a clock time.
    """
    try:
        moment = dt.datetime.fromisoformat(text)
    except ValueError:
        return _loose_seconds(text)
    if moment.tzinfo is not None:
        return (moment - _EPOCH).total_seconds(), True
    if len(text) <= len("2026-10-03"):
        message = "a date without a clock time"
        raise ValueError(message)
    return (moment - _EPOCH_WITHOUT_ZONE).total_seconds(), False


def _loose_seconds(text: str) -> tuple[float, bool]:
    match = _LOOSE.fullmatch(text)
    if match is None:
        message = "no time"
        raise ValueError(message)
    year, month, day = map(int, match["date"].split("-"))
    hour, minute, second = map(int, match["clock"].split(":"))
    if hour > 24 or minute > 59 or second > 60:
        message = "no clock time"
        raise ValueError(message)
    midnight = dt.datetime(year, month, day, tzinfo=dt.UTC)
    fraction = float("0." + match["fraction"][1:7]) if match["fraction"] else 0.0
    clock = dt.timedelta(hours=hour, minutes=minute, seconds=second + fraction)
    since = midnight - _EPOCH + clock - _zone_offset(match["zone"] or "Z")
    return since.total_seconds(), match["zone"] is not None


def _zone_offset(zone: str) -> dt.timedelta:
    """Give what a zone's clock is ahead of UTC."""
    if zone[0] not in "+-\u2212":
        return dt.timedelta(0)
    digits = zone[1:].replace(":", "").ljust(4, "0")
    ahead = dt.timedelta(hours=int(digits[:2]), minutes=int(digits[2:]))
    return ahead if zone[0] == "+" else -ahead
