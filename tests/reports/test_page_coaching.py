"""The sentences of steps, what-ifs and the talk: every figure from the record, none made here."""

from __future__ import annotations

from dataclasses import replace

from reports.sample_debrief import sample_debrief

from audit.coaching.steps import Hop, LegSteps
from audit.coaching.what_if import OtherEnd, WhatIf
from audit.reports import page_coaching
from audit.reports.html_report import render_html
from audit.reports.leg_facts import walked_facts
from audit.reports.terminal_report import render_terminal
from audit.words import Words

HOP = Hop(
    steps=("converted",), kind="direction", error=15.0, tolerance=1.0, off_m=131.0,
    slips=("gm-angle-reversed",), sentence="the numbers and the error",
)  # fmt: skip
STEPS = LegSteps(leg="1", hops=(HOP,), sentences=("Converted: the numbers and the error",))
ENDS = WhatIf(
    planned_azimuth=OtherEnd(east_m=3.0, north_m=4.0, miss_m=5.0, sd_m=4.2),
    planned_distance=OtherEnd(east_m=-60.0, north_m=80.0, miss_m=100.0, sd_m=14.0),
)


def with_steps():
    debrief = sample_debrief()
    first = replace(debrief.legs[0], steps=STEPS, what_if=ENDS)
    return replace(debrief, legs=(first, *debrief.legs[1:]))


def test_the_talk_is_told_in_two_lists():
    debrief = sample_debrief()
    # One of each: that there is no more is said too.
    assert page_coaching.to_keep(debrief) == [
        "The distance counted. Within 2% of the card's.",
        "Nothing else stands out on the legs that were walked.",
    ]
    assert page_coaching.to_work_on(debrief) == [
        "To look at next. 40 m a leg on average. Five minutes: Walk 100 steps & look up.",
        "Nothing else stands out on the legs that were walked.",
    ]


def test_legs_that_nothing_is_said_of_are_named():
    debrief = sample_debrief()
    talk = replace(debrief.coaching, left_aside=("2", "3"))
    last = page_coaching.to_work_on(replace(debrief, coaching=talk))[-1]
    assert last.startswith("Legs 2 and 3 are left aside here: it is not sure enough when they")


def test_one_of_two_is_told_with_both_exercises():
    debrief = sample_debrief()
    pair = ("single-double-pace", "wrong-ruler")
    (one,) = debrief.coaching.work_on
    one = replace(one, cause=pair[0], one_of=pair, what="the one, or the other")
    debrief = replace(debrief, coaching=replace(debrief.coaching, work_on=(one,)))
    assert "leg-audit guide single-double-pace, leg-audit guide wrong-ruler" in (
        render_terminal(debrief)
    )
    german = render_html(debrief, words=Words(language="de"))
    assert "Einfach- und Doppelschritte" in german
    assert "Lineal" in german
    assert page_coaching.to_work_on(debrief)[0].startswith("The one, or the other. ")


def test_the_terminal_has_the_talk_and_names_the_page_of_the_guide():
    text = render_terminal(with_steps())
    assert "keep: The distance counted. Within 2% of the card's.\n" in text
    assert (
        "Exercise: leg-audit guide veer\nwork on: Nothing else stands out on the legs that were walked.\n"
        in text
    )
    assert "leg 1: Converted: the numbers and the error\n" in text


def test_steps_and_what_ifs_stand_with_the_leg():
    leg = with_steps().legs[0]
    facts = walked_facts(leg)
    assert ("Step", "Converted: the numbers and the error") in facts
    told = dict(facts)["What if"]
    assert "5 m from the point (±4 m each way)" in told
    assert "with the planned distance 100 m from the point (±14 m each way)" in told


def test_the_page_has_them_and_escapes_them():
    html = render_html(with_steps())
    assert "Converted: the numbers and the error" in html
    assert "Walk 100 steps &amp; look up." in html


def test_a_leg_without_them_says_nothing():
    leg = sample_debrief().legs[0]
    assert page_coaching.step_sentences(leg) == ()
    assert page_coaching.what_if_sentence(leg) == ""
    assert "What if" not in dict(walked_facts(leg))
