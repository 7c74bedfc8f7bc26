"""Times of points: published examples, and gpxpy for whatever it can read."""

from __future__ import annotations

import datetime as dt

import gpxpy.gpxfield
import pytest
from hypothesis import given
from hypothesis import strategies as st

from audit.moments import utc_text
from audit.readers.clock_time import clock_moment
from audit.readers.gpx_times import seconds_since_1970


@pytest.mark.parametrize(
    ("text", "utc"),
    [
        # W3C XML Schema part 2, second edition, 3.2.7 (dateTime), examples of the text.
        ("2002-10-10T12:00:00-05:00", "2002-10-10T17:00:00Z"),
        ("2002-10-10T00:00:00+05:00", "2002-10-09T19:00:00Z"),
        ("1999-12-31T24:00:00Z", "2000-01-01T00:00:00Z"),
        # RFC 3339, 5.8, examples. 23:59:60 is the second that ends at midnight; a count
        # of seconds without leap seconds (POSIX) has midnight for it.
        ("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.520Z"),
        ("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57Z"),
        ("1990-12-31T23:59:60Z", "1991-01-01T00:00:00Z"),
        ("1990-12-31T15:59:60-08:00", "1991-01-01T00:00:00Z"),
        ("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.870Z"),
        # What recorders write beside the standard: common practice, no source.
        ("2026-10-03 08:00:00Z", "2026-10-03T08:00:00Z"),
        ("2026-10-03t08:00:00z", "2026-10-03T08:00:00Z"),
        ("2026-10-03T08:00:00 UTC", "2026-10-03T08:00:00Z"),
        ("2026-1-3T8:05:09Z", "2026-01-03T08:05:09Z"),
        ("2026-10-03T10:00:00+0200", "2026-10-03T08:00:00Z"),
        ("2026-10-03T10:00:00+02", "2026-10-03T08:00:00Z"),
        ("2026-10-03T08:00:00.123456789Z", "2026-10-03T08:00:00.123Z"),
        ("2026-10-03T07:00:00\u221201:00", "2026-10-03T08:00:00Z"),
    ],
)
def test_a_time_with_its_zone(text: str, utc: str) -> None:
    seconds, zone_named = seconds_since_1970(text)
    assert utc_text(seconds) == utc
    assert zone_named


@pytest.mark.parametrize(
    "text",
    [
        "2006-02-03T00:00:500Z",
        "2006-02-03T00:00:505Z",
        "20060203T000000500Z",
        "2006-02-03T08:30.5Z",
    ],
)
def test_a_clock_time_with_more_digits_than_one_has_is_none(text: str) -> None:
    """Bug: 00:00:500Z was read as 50 seconds after midnight, without a word."""
    with pytest.raises(ValueError, match="time"):
        seconds_since_1970(text)
    assert clock_moment(text) is None


def test_a_time_without_a_zone_is_taken_as_utc_and_says_so() -> None:
    assert seconds_since_1970("2026-10-03T08:00:00") == (1_791_014_400.0, False)
    assert seconds_since_1970("2026-10-3 8:00:00") == (1_791_014_400.0, False)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "no time",
        "2026-10-03",
        "08:00:00",
        "2026-13-03T08:00:00Z",
        "2026-02-29T08:00:00Z",
        "2026-10-03T08:61:00Z",
        "2026-10-03T08:00:75Z",
        "2026-10-03T25:00:00Z",
        "1791014400",
        "0000-00-00T00:00:00Z",
        "03/10/2026 08:00:00",
        "12026-10-03T08:00:00Z",
        "-2026-10-03T08:00:00Z",
    ],
)
def test_what_is_no_time_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r".+"):
        seconds_since_1970(text)


@given(st.text(alphabet="0123456789-:TZ .+,z", max_size=30))
def test_no_text_does_worse_than_a_value_error(text: str) -> None:
    try:
        seconds, _ = seconds_since_1970(text)
    except ValueError:
        return
    assert -1e11 < seconds < 3e11


moments = st.datetimes(
    min_value=dt.datetime.fromisoformat("1902-01-01"),
    max_value=dt.datetime.fromisoformat("2099-01-01"),
)


@given(
    moment=moments,
    digits=st.integers(min_value=0, max_value=9),
    separator=st.sampled_from("T "),
    zone=st.sampled_from(["Z", "", "+02:00", "-0930", "+14", "\u221205:00"]),
    padded=st.booleans(),
)
def test_whatever_gpxpy_reads_means_the_same_here(
    moment: dt.datetime, digits: int, separator: str, zone: str, padded: bool
) -> None:
    date = f"{moment:%Y-%m-%d}" if padded else f"{moment:%Y}-{moment.month}-{moment.day}"
    fraction = f".{moment.microsecond:06d}000"[: digits + 1] if digits else ""
    text = f"{date}{separator}{moment:%H:%M:%S}{fraction}{zone}"
    judge = gpxpy.gpxfield.parse_time(text)
    assert judge is not None
    if judge.tzinfo is None:
        judge = judge.replace(tzinfo=dt.UTC)
    seconds, zone_named = seconds_since_1970(text)
    assert seconds == pytest.approx(judge.timestamp(), rel=0, abs=1e-6)  # seconds
    assert zone_named == bool(zone)
