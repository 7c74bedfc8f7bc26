"""The page of a six-hour walk at one fix a second stays below two million bytes."""

from __future__ import annotations

from benchmarks.page import AIM_BYTES, measure


def test_six_hours_at_one_second():
    made = measure(legs=12, repeats=1)
    assert made["hours"] > 5.0
    assert made["fixes"] > 18_000
    assert made["bytes"] < AIM_BYTES
    # Far above the aim of a second: a busy machine must not fail it, a mistake should.
    assert made["later_processor_s"] < 5.0
