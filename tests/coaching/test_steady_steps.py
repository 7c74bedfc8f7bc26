"""A steady turn beside the slip at the compass that it looks like: common sense, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from audit.coaching.steady_steps import with_steady_turn
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.finding import Finding
from audit.leg_card.slips import fits_sentence
from audit.words import sentence
from audit.words.figures import Length, Turn

DOUBLED = fits_sentence([sentence("slip-doubled")], link="or")
HOP = Hop(
    steps=("set", "walked"),
    kind="direction",
    error=11.4,
    tolerance=3.0,
    off_m=143.0,
    slips=("gm-angle-doubled",),
    sentence=sentence(
        "step-turned",
        after="the azimuth walked",
        size=Turn(degrees=11.4),
        side="right",
        before="that of the log",
        off=Length(metres=143.0),
        fits=DOUBLED,
    ),
)


def told(steady: float, hop: Hop = HOP) -> str:
    of = {"1": LegSteps(leg="1", hops=(hop,), sentences=step_sentences((hop,)))}
    found = (
        Finding(cause="steady-bias", probability=steady, evidence=""),
        Finding(cause="gm-angle-doubled", probability=0.24, evidence=""),
    )
    return str(with_steady_turn(of, {"1": found})["1"].sentences[0])


def test_a_steady_turn_that_is_likelier_is_told_with_the_slip() -> None:
    """Bug: "It fits the angle applied twice" alone, on five legs of a steady turn at 72 %."""
    fits = "It fits a steady turn to one side or the grid-magnetic angle applied twice."
    assert told(0.72).endswith(fits)


@pytest.mark.parametrize(("steady", "hop"), [(0.2, HOP), (0.72, replace(HOP, steps=("walked",)))])
def test_where_it_is_not_likelier_or_the_step_is_known_the_step_stays(steady, hop) -> None:
    assert told(steady, hop).endswith("It fits the grid-magnetic angle applied twice.")
