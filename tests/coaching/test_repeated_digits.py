"""A wrong digit is a slip of one leg: what comes again on leg after leg is something else."""

from __future__ import annotations

import pytest

from audit.coaching.repeated_digits import without_repeated_digits
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.settings import CoachingSettings
from audit.words import sentence
from audit.words.figures import Length, Turn


def off_by(*errors):
    """Give legs whose azimuth was set off by so much, which a wrong digit fits each time."""
    found = {}
    for number, error in enumerate(errors):
        said = sentence(
            "step-turned",
            after="the azimuth set",
            size=Turn(degrees=error),
            side="left",
            before="the card's azimuth",
            off=Length(metres=30.0),
            fits=sentence("slip-fits", slips="one digit wrong (010 for 014)"),
        )
        one = Hop(
            steps=("set",), kind="direction", error=error, tolerance=1.5, off_m=30.0,
            slips=("azimuth-digits",), sentence=said,
        )  # fmt: skip
        found[str(number)] = LegSteps(leg=str(number), hops=(one,), sentences=step_sentences([one]))
    return found


@pytest.mark.parametrize(
    ("errors", "told"),
    [
        ((-4.0, -4.4), [True, True]),
        ((-4.0, -4.4, -3.6), [False, False, False]),
        ((-4.0, -4.4, 4.0), [True, True, True]),
        ((-4.0, -4.4, -3.6, -9.0), [False, False, False, True]),
    ],
)
def test_the_same_difference_on_three_legs_is_no_wrong_digit(errors, told):
    """Bug: an angle that turned every leg alike was "one digit wrong" on leg after leg."""
    found = without_repeated_digits(off_by(*errors), CoachingSettings())
    assert [bool(of.hops[0].slips) for of in found.values()] == told
    assert ["digit wrong" in of.sentences[0] for of in found.values()] == told
    assert all("left of the card's azimuth" in of.sentences[0] for of in found.values())
