"""Times of GPX points, as seconds since 1970."""

from __future__ import annotations

import datetime as dt
import re
from itertools import pairwise

import numpy as np

from audit.moments import read_moment
from audit.units import FloatArray

_EPOCH = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
_EPOCH_WITHOUT_ZONE = dt.datetime(1970, 1, 1)  # noqa: DTZ001 (partner of times without a zone)
_HOUR = re.compile(r"\d{4}-\d\d-\d\dT\d\d")
_LENGTH = len("2026-10-03T08:15:20Z")
_LARGEST_EXACT = 1 << 53  # of whole numbers in a float

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
        moment = read_moment(text)
    except ValueError:
        return _loose_seconds(text)
    if moment.tzinfo is not None:
        return (moment - _EPOCH).total_seconds(), True
    if len(text) <= len("2026-10-03"):
        message = "a date without a clock time"
        raise ValueError(message)
    return (moment - _EPOCH_WITHOUT_ZONE).total_seconds(), False


def seconds_of_alike(texts: list[str]) -> FloatArray:
    """Give what ``seconds_since_1970`` gives, for many times like 2026-10-03T08:15:20.5Z.

    Raises
    ------
    ValueError
        Where one is written otherwise, or so far from 1970 that a float is not exact.
    """
    lengths = set(map(len, texts))
    if len(lengths) != 1 or min(lengths) < _LENGTH or _LENGTH + 1 in lengths:
        message = "times of several lengths, or of none that fits"
        raise ValueError(message)
    signs = np.frombuffer("".join(texts).encode("ascii"), np.uint8).reshape(len(texts), -1)
    digits = signs - ord("0")  # whatever is no digit comes out above 9
    fraction = digits[:, 20:-1][:, :6]
    if not (
        (signs[:, [13, 16]] == ord(":")).all()
        and (signs[:, -1] == ord("Z")).all()
        and (_LENGTH in lengths or (signs[:, 19] == ord(".")).all())
        and (digits[:, [14, 15, 17, 18]] <= 9).all()
        and (digits[:, [14, 17]] <= 5).all()
        and (digits[:, 20:-1] <= 9).all()
    ):
        message = "a time written otherwise"
        raise ValueError(message)
    places = (600_000_000, 60_000_000, 10_000_000, 1_000_000)
    microseconds = digits[:, [14, 15, 17, 18]] @ np.array(places)
    microseconds += fraction @ (10 ** np.arange(5, 5 - fraction.shape[1], -1))
    new_hour = np.flatnonzero((signs[1:, :13] != signs[:-1, :13]).any(axis=1)) + 1
    for begin, end in pairwise((0, *new_hour.tolist(), len(texts))):
        microseconds[begin:end] += _hour_in_microseconds(texts[begin][:13])
    if np.abs(microseconds).max() >= _LARGEST_EXACT:
        message = "too far from 1970"
        raise ValueError(message)
    seconds: FloatArray = microseconds / 1e6
    return seconds


def _hour_in_microseconds(text: str) -> int:
    if not _HOUR.fullmatch(text):
        message = "a time written otherwise"
        raise ValueError(message)
    return round(seconds_since_1970(text + ":00:00Z")[0]) * 1_000_000


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
