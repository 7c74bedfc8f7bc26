"""The page of a six-hour walk at one fix a second stays below two million bytes."""

from __future__ import annotations

from dataclasses import replace

from benchmarks.page import AIM_BYTES, measure
from reports.sample_debrief import sample_debrief

from audit.reports.html_report import render_html


def test_six_hours_at_one_second():
    made = measure(legs=12, repeats=1)
    assert made["hours"] > 5.0
    assert made["fixes"] > 18_000
    assert made["bytes"] < AIM_BYTES
    # Far above the aim of a second: a busy machine must not fail it, a mistake should.
    assert made["later_processor_s"] < 5.0


def test_a_course_of_many_legs_stays_small_and_says_what_is_not_drawn():
    debrief = sample_debrief()
    legs = tuple(
        replace(leg, audit=replace(leg.audit, card=replace(leg.audit.card, name=str(number))))
        for number, leg in enumerate(debrief.legs * 62)
    )
    page = render_html(replace(debrief, legs=legs))
    assert len(page.encode()) < AIM_BYTES
    walked = sum(leg.audit.measures is not None for leg in legs)
    assert f"Drawn are the 4 of {walked} walked legs that missed by most" in page
    assert page.count('data-kind="strip"') == 4
