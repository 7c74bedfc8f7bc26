"""Moments of the calendar, written as people and programs read them (ISO 8601)."""

from __future__ import annotations

import pytest

from audit.moments import utc_if_known, utc_minute, utc_text

NIGHTFALL_S = 1_789_838_520.0
"""2026-09-19T17:22:00Z, by date(1)."""


@pytest.mark.parametrize(
    ("apart_s", "text"),
    [
        (0.0, "2026-09-19T17:22:00Z"),
        (7.25, "2026-09-19T17:22:07.250Z"),
        (-0.0004, "2026-09-19T17:22:00Z"),
        (6.65 * 3600.0, "2026-09-20T00:01:00Z"),
    ],
)
def test_a_moment_is_written_to_the_millisecond_where_it_needs_it(apart_s, text) -> None:
    assert utc_text(NIGHTFALL_S + apart_s) == text
    assert utc_if_known(NIGHTFALL_S + apart_s) == text


def test_what_has_no_moment_is_written_as_none() -> None:
    assert utc_if_known(None) is None
    assert utc_if_known(0.0) == "1970-01-01T00:00:00Z"


@pytest.mark.parametrize(("apart_s", "text"), [(0.0, "17:22"), (29.0, "17:22"), (31.0, "17:23")])
def test_the_nearest_minute_is_told(apart_s, text) -> None:
    assert utc_minute(NIGHTFALL_S + apart_s) == text
