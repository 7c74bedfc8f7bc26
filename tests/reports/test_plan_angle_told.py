"""A plan's wrong grid-magnetic angle is told where the walk is, not after all else."""

from __future__ import annotations

from dataclasses import replace

import pytest
from classes import make_class
from classes.true_results import true_result
from reports.sample_debrief import sample_debrief

from audit.leg_card.finished_card import CardFinding
from audit.reports.class_terminal import render_class_terminal
from audit.reports.class_verdict import class_verdict
from audit.reports.page_story import story_sentences
from audit.reports.terminal_report import render_terminal
from audit.words import Words, spoken


def debrief_with(*findings: CardFinding):
    debrief = sample_debrief()
    return replace(debrief, card=replace(debrief.card, findings=findings))


def finding(what: str) -> CardFinding:
    return CardFinding(leg=None, what=what, given=6.5, computed=2.9, message="It is off.")


@pytest.mark.parametrize("what", ["grid_magnetic_angle_deg", "grid_magnetic_angle_date"])
def test_a_debrief_tells_it_in_short(what):
    """Bug: the plan's wrong angle was the last thing that a debrief told, if it did."""
    debrief = debrief_with(finding(what))
    (said,) = story_sentences(debrief)
    assert "grid-magnetic angle" in said
    head, _ = render_terminal(debrief).split("\n\n", 1)
    assert said in head
    with spoken(Words(language="de")):
        assert "Nadelabweichung des Plans" in story_sentences(debrief)[0]


@pytest.mark.parametrize("findings", [(), (finding("sheet"),)])
def test_a_right_angle_is_not_told(findings):
    assert story_sentences(debrief_with(*findings)) == ()


@pytest.mark.parametrize("at_fault", [True, False])
def test_a_class_tells_it_in_short_and_on_the_terminal(at_fault):
    result = true_result(make_class(100_301, walkers=16, legs=4))
    lanes = tuple(replace(lane, angle_at_fault=at_fault) for lane in result.lanes)
    told = replace(result, lanes=lanes)
    said = "grid-magnetic angle"
    assert any(said in one and "Put it right" in one for one in class_verdict(told)) is at_fault
    head = render_class_terminal(told).split(result.walkers[0].name)[0]
    assert (said in head) is at_fault


@pytest.mark.parametrize(
    ("language", "said"), [("en", "count heads"), ("de", "Leute zählen")], ids=["en", "de"]
)
def test_the_class_ends_on_the_terminal_with_the_caution(language, said):
    """Bug: grade had no word of counting heads, which debrief has."""
    result = true_result(make_class(100_301, walkers=16, legs=4))
    with spoken(Words(language=language)):
        assert said in render_class_terminal(result).splitlines()[-1]
