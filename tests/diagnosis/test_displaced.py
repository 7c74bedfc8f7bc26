"""A walk that lies off as a whole: what the starts of its legs share."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from audit.diagnosis.displaced import (
    Displaced,
    displaced,
    displaced_words,
    pairs_without_wrong_start,
    without_wrong_start,
)
from audit.diagnosis.finding import Finding
from audit.diagnosis.one_of_two import OneOfTwo
from audit.settings import Settings

SETTINGS = Settings().diagnosis
NAMES = ("1", "2", "3", "4")


def legs(*starts_m, under_way=False):
    return [
        SimpleNamespace(
            measures=SimpleNamespace(
                ledger=SimpleNamespace(inherited=start),
                miss_sd_m=3.0,
                under_way=under_way,
                ends_reckoned=(False, False),
            )
        )
        for start in starts_m
    ]


@pytest.mark.parametrize(
    ("starts_m", "of"),
    [
        (((150.0, 5.0), (152.0, -2.0), (148.0, 1.0), (60.0, 90.0)), (0, 1, 2)),
        (((150.0, 0.0), (150.0, 0.0), (90.0, 0.0)), None),  # two are none
        (((150.0, 0.0), (175.0, 10.0), (140.0, 30.0)), None),  # a wrong start, walked on from
        (((20.0, 0.0), (20.0, 0.0), (20.0, 0.0)), None),  # no more than ordinary
        (((150.0, 0.0),) * 3 + ((0.0, 0.0),) * 4, None),  # and most lie right
    ],
)
def test_starts_that_lie_alike_are_found(starts_m, of):
    found = displaced(legs(*starts_m), SETTINGS)
    assert (None if found is None else found.legs) == of


def test_starts_that_nobody_saw_tell_nothing():
    assert displaced(legs(*[(150.0, 0.0)] * 3, under_way=True), SETTINGS) is None


def test_no_wrong_start_is_one_of_two_either():
    """Bug: "beginning from the wrong place, or another point", with the exercises of both."""
    pairs = {
        leg: OneOfTwo(causes=causes, probability=0.94, settles=("", ""))
        for leg, causes in enumerate((("wrong-start", "wrong-point"), ("veer", "handrail")))
    }
    assert set(pairs_without_wrong_start(pairs)) == {1}


def test_no_wrong_start_is_named_where_the_whole_walk_lies_as_far_off():
    """Bug: "beginning from the wrong place", 82 % sure, with an exercise, of a walk of which
    every point lay 126 m to one side."""
    shared = Displaced(east_m=89.0, north_m=89.0, legs=(0, 1, 3))
    found = tuple(
        Finding(cause=cause, probability=share, evidence="")
        for cause, share in (("wrong-start", 0.82), ("within-skill", 0.16), ("cannot-tell", 0.02))
    )
    first, second = without_wrong_start({0: found}, shared, NAMES)[0]
    assert (first.cause, round(first.probability, 2)) == ("cannot-tell", 0.84)
    assert second.cause == "within-skill"
    assert first.evidence.startswith("The starts of legs 1, 2 and 4 lie alike, 126 m north-east")
    assert str(displaced_words(shared, NAMES)) == first.evidence
