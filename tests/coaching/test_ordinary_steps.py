"""Steps and causes say the same of one leg: common sense, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest
from coaching.shown_walk import audits

from audit.coaching.ordinary_steps import with_ordinary
from audit.coaching.step_sentences import step_sentences
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.finding import Finding
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.settings import CoachingSettings

WALKED = {leg.card.name: leg.measures for leg in audits()}
SCATTER = WalkersScatter(turn_deg=2.0, log_ratio=0.03)


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
    return with_ordinary(of, {"1": (finding,)}, WALKED, SCATTER, 30.0, CoachingSettings())["1"]


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
    causes = {"6": (finding,)}
    (judged_of,) = with_ordinary(
        {"6": of}, causes, WALKED, SCATTER, 30.0, CoachingSettings()
    ).values()
    assert [one.ordinary for one in judged_of.hops] == [False, True]


@pytest.mark.parametrize(("turn_deg", "entered"), [(3.0, ()), (1.0, ("walked",))])
def test_what_a_mistake_leaves_over_is_ordinary_by_the_walkers_scatter(turn_deg, entered) -> None:
    """Bug: 4 degrees beside a hundred lost were to be worked on, 10 of another leg ordinary."""
    of = {"1": LegSteps(leg="1", hops=(hop("walked", 4.1),), sentences=())}
    causes = {"1": (Finding(cause="hundred-miscounted", probability=0.99, evidence=""),)}
    scatter = WalkersScatter(turn_deg=turn_deg)
    assert (
        with_ordinary(of, causes, WALKED, scatter, 30.0, CoachingSettings())["1"].entered == entered
    )


@pytest.mark.parametrize(
    ("error_m", "miss_m", "seen"),
    [(-98.0, 9.0, True), (-15.0, 9.0, False), (-98.0, 60.0, False), (98.0, 9.0, False)],
)
def test_a_point_in_sight_ends_a_count(error_m, miss_m, seen) -> None:
    """Bug: 98 m less than counted were "ordinary for this walker", whose legs are within 4 %."""
    counted = replace(hop("paced", error_m), kind="distance")
    of = {"1": LegSteps(leg="1", hops=(counted,), sentences=())}
    causes = {"1": (Finding(cause="within-skill", probability=0.98, evidence=""),)}
    walked = {"1": replace(WALKED["1"], miss_m=miss_m)}
    (told,) = with_ordinary(of, causes, walked, SCATTER, 30.0, CoachingSettings()).values()
    assert ("before the count was out" in str(told.sentences[0])) is seen
    assert not told.entered


def test_who_walked_up_to_his_point_is_told_so_in_plain_words() -> None:
    """Bug: "that in sight, the count may not have been walked out" was understood by nobody."""
    (said,) = step_sentences((replace(hop("paced"), ordinary=True, in_sight=True),))
    assert str(said) == (
        "Paced: paced is 5° off. The leg ended at its point all the same: the walker may have seen "
        "it before the count was out, and walked up to it."
    )
