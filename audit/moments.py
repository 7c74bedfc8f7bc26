"""Seconds since 1970 as moments of the calendar."""

from __future__ import annotations

import datetime as dt
import re

_ISO = re.compile(
    r"[\dW-]{7,10}(?:[^\dW]\d\d(?::?\d\d(?::?\d\d(?:[.,]\d*)?)?)? *(?:[Zz]|[+-]\d.*)?)?",
    re.ASCII,
)
_EPOCH = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
_FIRST_S, _LAST_S = -62_135_596_800.0, 253_402_300_799.0
"""The years 1 to 9999 of ISO 8601."""
_DAYS_A_YEAR = 365.25
DAY_S = 86_400.0
EARLIEST_MOMENT_S = 1e8
"""Seconds since 1970 are more for any recording, after March 1973; no duration is as long."""
DAY_LEEWAY_S = 6.0 * 3600.0
"""A night course goes on past midnight, and the clock of a place may differ from its sun."""


def years_between(begin: dt.date, end: dt.date) -> float:
    """Give the years from one day to another; negative where it lies before."""
    return (end - begin).days / _DAYS_A_YEAR


def day_aside_s(apart_s: float) -> float:
    """Give how far apart two moments are, whatever their days: half a day either way at most."""
    return (apart_s + DAY_S / 2.0) % DAY_S - DAY_S / 2.0


def read_moment(text: str) -> dt.datetime:
    """Give a day and a clock time as ISO 8601 writes them; a day alone is its midnight.

    The library alone reads 00:00:500Z as 50 seconds.

    Raises
    ------
    ValueError
        For anything else.
    """
    if not _ISO.fullmatch(text):
        message = "no moment of ISO 8601"
        raise ValueError(message)
    return dt.datetime.fromisoformat(text)


def day_by_sun(moment_s: float, longitude_deg: float) -> dt.date:
    """Give the day on which a moment falls by the sun of a place, east positive."""
    return calendar_moment(moment_s + longitude_deg / 360.0 * DAY_S).date()


def in_calendar(time_s: float, *, days_around: int = 0) -> bool:
    """Tell whether the calendar holds a moment, and so many days before and after it."""
    room_s = days_around * DAY_S
    return _FIRST_S + room_s <= time_s <= _LAST_S - room_s


def calendar_moment(time_s: float) -> dt.datetime:
    """Give a moment in UTC, to the millisecond; beyond what a calendar tells, its end.

    Clocks millennia apart, and what fills the gap between them, may lie there.
    """
    told_s = min(max(time_s, _FIRST_S), _LAST_S)
    return _EPOCH + dt.timedelta(milliseconds=round(told_s * 1000))


def utc_minute(time_s: float) -> str:
    """Write the hour and minute nearest to some seconds since 1970: "17:36"."""
    return utc_text(round(time_s / 60.0) * 60.0)[11:16]


def utc_text(time_s: float) -> str:
    """Write seconds since 1970 as ISO 8601 with Z, to the millisecond where it needs it."""
    moment = calendar_moment(time_s)
    spec = "milliseconds" if moment.microsecond else "seconds"
    return moment.replace(tzinfo=None).isoformat(timespec=spec) + "Z"


def utc_if_known(time_s: float | None) -> str | None:
    """Write a moment as ``utc_text`` does; None where there is none to write."""
    return None if time_s is None else utc_text(time_s)
