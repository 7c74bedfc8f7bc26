"""Steps and causes say the same of one leg: common sense, no source."""

from __future__ import annotations

from dataclasses import replace

from audit.coaching.ordinary_steps import with_ordinary
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.finding import Finding
from audit.settings import CoachingSettings


def hop(step: str, error: float = 5.0) -> Hop:
    return Hop(
        steps=(step,),
        kind="direction",
        error=error,
        tolerance=3.0,
        off_m=40.0,
        slips=(),
        sentence=f"{step} is 5° off.",
    )


def judged(probability: float, *steps: str) -> LegSteps:
    hops = tuple(hop(step) for step in steps)
    of = {"1": LegSteps(leg="1", hops=hops, sentences=step_sentences(hops))}
    finding = Finding(cause="within-skill", probability=probability, evidence="")
    return with_ordinary(of, {"1": (finding,)}, CoachingSettings())["1"]


def test_what_all_legs_call_ordinary_is_no_error_on_foot() -> None:
    of = judged(0.92, "walked")
    assert of.entered == ()
    said = "Walked: walked is 5° off. Weighed with all legs, that is ordinary for this walker."
    assert [str(one) for one in of.sentences] == [said]


def test_an_undecided_leg_keeps_its_steps() -> None:
    assert judged(0.4, "walked").entered == ("walked",)


def test_a_slip_on_paper_is_no_scatter() -> None:
    of = judged(0.99, "set", "walked")
    assert of.entered == ("set",)
    assert str(of.sentences[0]) == "Set: set is 5° off."


def test_nothing_over_its_tolerance() -> None:
    (said,) = step_sentences((hop("walked", 2.0),))
    assert str(said).startswith("No step stands out")


def test_a_count_that_the_log_states_short_is_not_called_ordinary() -> None:
    """Bug: 440 paces in the log against the card's 494 were "ordinary for this walker"."""
    counted = replace(hop("paced", -83.0), kind="distance", written=True)
    of = LegSteps(leg="6", hops=(counted, hop("paced", -30.0)), sentences=())
    finding = Finding(cause="within-skill", probability=0.77, evidence="")
    (judged_of,) = with_ordinary({"6": of}, {"6": (finding,)}, CoachingSettings()).values()
    assert [one.ordinary for one in judged_of.hops] == [False, True]
