"""What would settle a cause, and what card and log have answered already: common sense."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from diagnosis.made_evidence import explain, legs

from audit.diagnosis.causes import CAUSES
from audit.diagnosis.on_paper import OnPaper
from audit.diagnosis.what_settles import what_settles
from audit.settings import DiagnosisSettings

BY_NAME = {cause.name: cause for cause in CAUSES}


@pytest.mark.parametrize(
    ("paper", "set_deg", "asks"),
    [
        (None, None, "The azimuth on the walker's own card: grid or magnetic?"),
        (OnPaper(magnetic_turn_deg=-7.0), None, ""),
        (OnPaper(magnetic_turn_deg=0.1), None, "The azimuth that was set on this leg"),
        (OnPaper(magnetic_turn_deg=0.1), -7.0, ""),
    ],
)
def test_what_card_and_log_have_answered_is_not_asked_again(paper, set_deg, asks) -> None:
    """Bug: the azimuth on the walker's own card was asked for beside that very card."""
    (leg,) = legs(-7.0)
    leg = replace(leg, on_paper=paper, set_turn_deg=set_deg)
    settles = what_settles(BY_NAME, ("gm-angle-omitted", None), leg, DiagnosisSettings())
    assert settles[: len(asks) or None] == asks


def test_a_hundred_that_stands_on_the_card_is_not_asked_for() -> None:
    (leg,) = legs(0.0, ratios=[1.2])
    for ratio, asks in ((1.0, True), (1.2, False)):
        carded = replace(leg, on_paper=OnPaper(log_ratio=math.log(ratio)))
        names = ("hundred-miscounted", None)
        assert bool(what_settles(BY_NAME, names, carded, DiagnosisSettings())) is asks


def test_a_reference_or_a_setting_that_was_given_is_not_asked_for() -> None:
    (leg,) = legs(10.0)
    leg = replace(leg, set_turn_deg=10.0, on_paper=OnPaper(end_off_m=(0.0, 300.0)))
    for cause in ("dial-misread", "neighbour-azimuth", "digit-wrong", "digits-transposed"):
        assert what_settles(BY_NAME, (cause, "veer"), leg, DiagnosisSettings()) == ""
        assert what_settles(BY_NAME, (cause, "veer"), legs(10.0)[0], DiagnosisSettings())


def test_a_count_that_stands_in_the_log_is_not_asked_for() -> None:
    """Bug: what would settle an overshoot was the count, which stood in the log."""
    evidence = legs(0.0, 0.0, ratios=(1.0, 1.25))
    logged = tuple(replace(leg, log_count_ratio=leg.log_ratio) for leg in evidence)
    without, with_count = (
        next(one for one in explain(legs, DiagnosisSettings())[1] if one.cause == "overshoot")
        for legs in (evidence, logged)
    )
    assert without.settles.startswith("The paces that the walker counted")
    assert with_count.settles == "What was to show the walker that it was too far."
