"""What legs share, told at the head of the debrief."""

from __future__ import annotations

from dataclasses import replace

import pytest
from reports.sample_debrief import sample_debrief

from audit.diagnosis.finding import WalkFinding
from audit.reports.joint_story import joint_story
from audit.reports.walk_verdict import verdict


@pytest.fixture(scope="module")
def debrief():
    """Legs 1 to 3 were walked, leg 4 was left out."""
    return sample_debrief()


def story(*legs: int, later=False, right=False, **of) -> WalkFinding:
    values = {"cause": "gm-angle-omitted", "probability": 0.94, "size": -7.0, "unit": "deg"} | of
    return WalkFinding(legs=legs, begins_later=later, put_right=right, **values)


@pytest.mark.parametrize(
    ("told", "sentence"),
    [
        (
            story(0, 1, 2),
            "The grid-magnetic angle was left out (7° left) on every leg (94 % likely).",
        ),
        (
            story(0, 1, right=True),
            (
                "The grid-magnetic angle was left out (7° left) on legs 1 and 2, then put right "
                "(94 % likely)."
            ),
        ),
        (
            story(1, 2, later=True),
            "The grid-magnetic angle was left out (7° left) from leg 2 on (94 % likely).",
        ),
        (
            story(0, 2, cause="pace-short", size=0.86, unit="ratio"),
            "The pace count fell short (0.86 of the distance) on legs 1 and 3 (94 % likely).",
        ),
        (
            story(0, 1, 2, cause="bezel-wrong-way", size=None, unit=None),
            "The bezel was turned the wrong way on every leg (94 % likely).",
        ),
    ],
)
def test_story_in_one_sentence(debrief, told, sentence) -> None:
    assert joint_story(replace(debrief, stories=(told,))) == (sentence,)


@pytest.mark.parametrize(("size", "told"), [(-14.5, "14.5° left"), (-14.0, "14° left")])
def test_half_a_degree_is_told(debrief, size, told) -> None:
    """Bug: 14.5 degrees were told as 14, rounded to the even number."""
    (sentence,) = joint_story(replace(debrief, stories=(story(0, 1, 2, size=size),)))
    assert f"({told})" in sentence


def test_story_stands_at_the_head_and_is_not_told_twice(debrief) -> None:
    told = verdict(replace(debrief, stories=(story(0, 1, 2),)))
    assert told[0].startswith("The grid-magnetic angle was left out")
    assert not any("and so " in sentence for sentence in told)


def test_walk_without_a_story_has_none(debrief) -> None:
    assert joint_story(debrief) == ()


def test_many_legs_are_listed_as_everywhere_else(debrief) -> None:
    """Bug: "on legs 1, 3, 5, 6, 7, 8, 9 and 10" at the head, "legs 1, 3, 5 to 8 and 10" below."""
    walked = debrief.legs[0]
    legs = tuple(
        replace(walked, audit=replace(walked.audit, card=replace(walked.audit.card, name=name)))
        for name in map(str, range(1, 11))
    )
    many = replace(debrief, legs=legs, stories=(story(0, 2, 4, 5, 6, 7, 8, 9),))
    (sentence,) = joint_story(many)
    assert " on legs 1, 3 and 5 to 10 " in sentence
