"""The verdict and the short debrief."""

from __future__ import annotations

from dataclasses import replace

import pytest
from reports.sample_debrief import sample_debrief

from audit.debriefing.on_no_leg import OnNoLeg
from audit.diagnosis.finding import Finding, WalkFinding
from audit.diagnosis.one_of_two import OneOfTwo
from audit.diagnosis.order_of_passing import PassedPoint
from audit.diagnosis.passages import Passage
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.reports.leg_facts import walked_facts
from audit.reports.terminal_report import render_terminal
from audit.reports.walk_verdict import verdict
from audit.words import sentence


@pytest.fixture(scope="module")
def debrief():
    return sample_debrief()


def with_leg(debrief, number, **changes):
    leg = debrief.legs[number]
    measures = changes.pop("measures", {})
    audit = leg.audit
    if measures is None:
        audit = replace(audit, measures=None, status="not-started")
    elif measures:
        audit = replace(audit, measures=replace(audit.measures, **measures))
    legs = list(debrief.legs)
    legs[number] = replace(leg, audit=audit, **changes)
    return replace(debrief, legs=tuple(legs))


def test_worst_leg_comes_first(debrief):
    first, second, third = verdict(debrief)
    assert first.startswith("The worst is leg 1: its count ended 113 m north-west of Post 7")
    assert "7.2° left of the planned azimuth" in first
    assert second == "That is consistent with the grid-magnetic angle left out (94 %)."
    assert third == "3 of 4 legs walked, 3 of 4 points reached on their own legs; leg 4 skipped."


def test_other_legs_with_the_same_cause_are_named(debrief):
    omitted = debrief.legs[0].causes
    shared = with_leg(with_leg(debrief, 1, causes=omitted), 2, causes=omitted)
    assert verdict(shared)[1].endswith("(94 %), and so are legs 2 and 3.")
    assert verdict(with_leg(debrief, 2, causes=omitted))[1].endswith("(94 %), and so is leg 3.")


def test_all_arrived(debrief):
    good = debrief
    for number in (0, 2):
        good = with_leg(good, number, measures={"miss_m": 14.0})
    first, *rest = verdict(good)
    assert first == (
        "Every leg that was walked ended within 30 m of its point; "
        "the largest miss is 14 m, on leg 1."
    )
    assert len(rest) == 1


def test_point_not_found_is_said(debrief):
    lost = with_leg(debrief, 0, measures={"found": False})
    assert verdict(lost)[0].endswith("; the point was not found.")
    assert "2 of 4 points reached" in verdict(lost)[-1]


def test_points_that_a_class_may_count_more_are_named(debrief):
    """Bug: the head of a debrief said "2 of 4 points", the class found 3, and nothing told why:
    one had been passed outside its leg."""
    lost = with_leg(debrief, 0, measures={"found": False})
    aside = replace(lost, on_no_leg=OnNoLeg(elsewhere=("Post 7",)))
    assert verdict(aside)[-1] == (
        "3 of 4 legs walked, 2 of 4 points reached on their own legs; passed, but not on its own "
        "leg: Post 7; leg 4 skipped."
    )


def test_nothing_matched(debrief):
    none = debrief
    for number in range(3):
        none = with_leg(none, number, measures=None, causes=())
    assert verdict(none)[0] == "No leg of the plan was found in this recording."
    assert "0 of 4 legs walked" in verdict(none)[1]
    assert "legs 1, 2 and 3 not started" in verdict(none)[1]


@pytest.mark.parametrize(
    ("causes", "said"),
    [
        ((), "The evidence does not say why."),
        ((("cannot-tell", 0.9),), "The evidence does not say why."),
        ((("within-skill", 0.8),), "That is consistent with ordinary error (80 %)."),
        ((("veer", 0.4), ("sidehill", 0.35)), "The cause is undecided: a line that bends"),
    ],
)
def test_no_mistake_is_named_without_evidence(debrief, causes, said):
    found = tuple(Finding(cause=c, probability=p, evidence="") for c, p in causes)
    assert verdict(with_leg(debrief, 0, causes=found))[1].startswith(said)


def test_error_within_its_own_interval_is_no_reason(debrief):
    vague = with_leg(debrief, 0, measures={"azimuth_error_deg": -0.1})
    assert "no part of that stands out" in verdict(vague)[0]


def test_terminal_has_one_line_a_leg(debrief):
    lines = render_terminal(debrief).splitlines()
    rows = [line for line in lines if line[:3] in {"1  ", "2  ", "3  ", "4  "}]
    assert len(rows) == 4
    assert rows[0].startswith("1  walked   azimuth 7.2° left (±0.7°)  distance 26 m short  ")
    assert "missed by 113 m, then found" in rows[0]
    assert rows[2].startswith("3  walked   distance 90 m too far  ")
    assert rows[3] == "4  skipped"
    assert any("675 m" in line for line in lines)


def test_terminal_obeys_no_control_character_of_a_file():
    evil = sample_debrief(names={"Post 7": "Post\x1b[31m 7\r\nx"})
    text = render_terminal(evil)
    assert "\x1b" not in text
    assert all(letter.isprintable() or letter == "\n" for letter in text)
    assert len(text.splitlines()) == len(render_terminal(sample_debrief()).splitlines())


def test_simulated_walk_is_said_first():
    text = render_terminal(sample_debrief(notes=(sentence("recording-simulated"),)))
    assert text.splitlines()[1] == "SIMULATED: The recording says of itself that it is simulated."


def unsure(debrief, number, confidence):
    legs = list(debrief.legs)
    audit = replace(legs[number].audit, confidence=confidence)
    legs[number] = replace(legs[number], audit=audit)
    return replace(debrief, legs=tuple(legs))


def test_a_leg_whose_part_is_unsure_does_not_lead(debrief):
    """Bug: a leg that was 44 % sure of its part led the page as the worst."""
    first, *rest = verdict(unsure(debrief, 0, 0.44))
    assert first.startswith("Of the legs that are sure, the worst is leg 3: ")
    assert rest[-2] == (
        "Leg 1 may have ended 113 m north-west of Post 7; "
        "that this part of the recording is the leg is only 44 % sure."
    )
    arrived = unsure(with_leg(debrief, 2, measures={"miss_m": 14.0}), 0, 0.44)
    first, second, _ = verdict(arrived)
    assert first.startswith("Every leg whose part of the recording and whose end are sure ended")
    assert second.startswith("Leg 1 may have ended 113 m")


def test_a_leg_that_the_talk_leaves_aside_is_not_the_worst(debrief):
    """Bug: a leg whose end was reckoned was "the worst", and left aside as unsure below."""
    aside = replace(debrief.coaching, left_aside=("1",))
    first, *rest = verdict(replace(debrief, coaching=aside))
    assert first.startswith("Of the legs that are sure, the worst is leg 3: ")
    assert rest[-2] == (
        "Leg 1 may have ended 113 m north-west of Post 7; "
        "where it was begun or ended is not sure enough to tell."
    )


def test_row_of_a_leg_under_way_says_from_where_it_was_recorded(debrief):
    """Bug: the recording began late, and the leg "began 346 m off the point", "346 m short"."""
    late = with_leg(debrief, 2, measures={"under_way": True})
    row = next(line for line in render_terminal(late).splitlines() if line.startswith("3  "))
    assert "recorded from " in row
    assert "too far" not in row
    assert "off the point" not in row
    worst = with_leg(debrief, 0, measures={"under_way": True})
    assert "no part of that stands out" in verdict(worst)[0]
    facts = dict(walked_facts(worst.legs[0]))
    assert "not the whole leg" in facts["Distance"]
    assert "Own line" not in facts


def passed(name, time_s):
    passage = Passage(first_s=time_s, last_s=time_s, nearest_s=time_s, away_m=4.0)
    return PassedPoint(point=name, passage=passage)


def test_another_order_and_a_point_left_out_are_told_at_the_head(debrief):
    """Bug: the table named them and the head had not a word of it."""
    left_out = Finding(cause="point-skipped", probability=0.89, evidence="", point="Post 5")
    told = with_leg(debrief, 3, causes=(left_out,))
    assert "Post 5 was left out (89 %)." in verdict(told)
    order = Finding(cause="order-changed", probability=0.88, evidence="")
    first = replace(order, passed=(passed("A", 1.0), passed("C", 2.0), passed("B", 3.0)))
    then = replace(order, passed=(passed("C", 2.0), passed("B", 3.0), passed("D", 4.0)))
    told = with_leg(with_leg(debrief, 2, causes=(first,)), 3, causes=(then,))
    said = "The points were taken in another order than planned: A, C, B, D (88 %)."
    assert said in verdict(told)


def test_a_miss_that_was_brought_along_is_told_with_the_leg_that_made_it(debrief):
    """Bug: the head said "mostly because it began away from its point" and no word of why."""
    total = debrief.legs[0].audit.measures.ledger.total
    second = debrief.legs[1].audit.measures
    ledger = replace(second.ledger, inherited=total, total=(total[0] + 5.0, total[1]))
    told = with_leg(debrief, 1, measures={"ledger": ledger, "miss_m": 118.0})
    worst, led, cause, own = verdict(told)[:4]
    assert worst.startswith("The worst is leg 2: ")
    assert "mostly because it began away from its point" in worst
    assert led == (
        "Leg 1 led there: its count ended 113 m north-west of Post 7, mostly because "
        "it was walked 7.2° left of the planned azimuth."
    )
    assert cause == "That is consistent with the grid-magnetic angle left out (94 %)."
    assert own == "What leg 2 itself added is consistent with ordinary error (98 %)."
    unsure_first = verdict(unsure(told, 0, 0.44))
    assert not any("led there" in said for said in unsure_first)
    elsewhere = replace(ledger, inherited=(-total[0], -total[1]))
    began_elsewhere = with_leg(debrief, 1, measures={"ledger": elsewhere, "miss_m": 118.0})
    assert not any("led there" in said for said in verdict(began_elsewhere))


def test_an_undecided_cause_is_not_told_of_the_part_that_was_brought_along(debrief):
    """Bug: "mostly because it began away from its point. The cause is one of two: the
    grid-magnetic angle left out" and a lean, neither of which began it there."""
    total = debrief.legs[1].audit.measures.ledger.total
    ledger = replace(debrief.legs[1].audit.measures.ledger, inherited=(100.0, 0.0), total=total)
    found = tuple(
        Finding(cause=cause, probability=sure, evidence="")
        for cause, sure in (("veer", 0.4), ("sidehill", 0.35))
    )
    met = with_leg(debrief, 0, measures={"miss_m": 16.0})
    told = with_leg(met, 1, causes=found, measures={"ledger": ledger, "miss_m": 118.0})
    worst, cause = verdict(told)[:2]
    assert "mostly because it began away from its point" in worst
    assert cause.startswith("Of the rest of it the cause is undecided: ")


@pytest.mark.parametrize(
    ("walked_deg", "made", "said"),
    [
        (-18.2, 0.1, "11° left"),  # 11 degrees more than the angle left out leads
        (-7.9, 0.1, ""),
        (-18.2, 0.9, ""),  # another turn was made beside it, and is told as that
    ],
)
def test_what_a_mistake_leaves_over_is_told(debrief, walked_deg, made, said):
    """Bug: 38 degrees where the mistake predicts 27 were "consistent with" it, and no more."""
    angle = Finding(
        cause="gm-angle-omitted", probability=0.97, evidence="", predicted=-7.0, unit="deg"
    )
    dial = Finding(cause="dial-misread", probability=0.01, evidence="", made=made)
    turned = {"azimuth_error_deg": walked_deg}
    told = with_leg(debrief, 0, measures=turned, causes=(angle, dial))
    row = next(line for line in render_terminal(told).splitlines() if line.startswith("1  "))
    if said:
        assert f"(97 %), {said[:2]}" in row
        assert row.endswith("left of what it predicts")
        assert "left of what that predicts, which it does not explain." in verdict(told)[2]
    else:
        assert "predicts" not in " ".join([row, *verdict(told)])


def test_a_mistake_made_beside_a_larger_one_is_told(debrief):
    """Bug: every leg was 10 in 100 too long beside the angle, surely, and the head was silent."""
    angle = debrief.legs[0].causes[0]
    beside = Finding(cause="pace-long", probability=0.01, evidence="", made=0.98)
    told = with_leg(debrief, 0, causes=(angle, beside))
    said = (
        "Beside that, what was seen on leg 1 is consistent with "
        "a pace count that carries too far (98 %)."
    )
    assert said in verdict(told)
    unsure = replace(beside, made=0.5)
    assert not any("Beside" in one for one in verdict(with_leg(debrief, 0, causes=(angle, unsure))))
    known = with_leg(told, 2, causes=(replace(beside, probability=0.9),))
    assert not any("Beside" in one for one in verdict(known))


@pytest.mark.parametrize(("scatter_deg", "told"), [(2.0, True), (3.5, False)])
def test_what_a_mistake_leaves_over_is_held_against_the_walkers_scatter(debrief, scatter_deg, told):
    """Bug: 4 degrees left over were told at the head of a walker whose legs scatter by as much."""
    angle = Finding(
        cause="gm-angle-omitted", probability=0.97, evidence="", predicted=-7.0, unit="deg"
    )
    turned = {"azimuth_error_deg": -12.5}
    scatter = WalkersScatter(turn_deg=scatter_deg)
    left = with_leg(debrief, 0, measures=turned, causes=(angle,), scatter=scatter)
    assert any("left of what that predicts" in said for said in verdict(left)) == told


def test_a_walk_that_was_mostly_of_no_leg_says_so_first(debrief):
    """Bug: 59 of 99 minutes were of no leg, and the head began with a miss of 40 m."""
    doubt = "Of the 99 minutes between the ends of the course 59 belong to no leg that was found."
    first, second, third, *_ = verdict(replace(debrief, on_no_leg=OnNoLeg(doubt=doubt)))
    assert first.startswith("3 of 4 legs walked")
    assert second == doubt
    assert third.startswith("The worst is leg 1")


def test_a_leg_that_arrived_led_nobody_astray(debrief):
    """Bug: "leg 1 led there: its count ended 16 m east of P1" of a point that was met."""
    total = debrief.legs[0].audit.measures.ledger.total
    ledger = replace(debrief.legs[1].audit.measures.ledger, inherited=total, total=total)
    met = with_leg(debrief, 0, measures={"miss_m": 16.0})
    told = with_leg(met, 1, measures={"ledger": ledger, "miss_m": 118.0})
    assert verdict(told)[0].startswith("The worst is leg 2: ")
    assert not any("led there" in said for said in verdict(told))


@pytest.mark.parametrize(
    ("distance_m", "said"),
    [
        (95.0, "partly because it was walked 7.2° left of the planned azimuth, partly because it "),
        (60.0, "mostly because it was walked 7.2° left of the planned azimuth"),
    ],
)
def test_parts_that_are_alike_are_both_told(debrief, distance_m, said):
    """Bug: "mostly because it was walked 256 m too far" of 250 m of heading and 251 of distance."""
    ledger = debrief.legs[0].audit.measures.ledger
    ledger = replace(ledger, heading=(100.0, 0.0), distance=(0.0, distance_m))
    assert said in verdict(with_leg(debrief, 0, measures={"ledger": ledger}))[0]


@pytest.mark.parametrize(("cause", "told"), [("digit-wrong", True), ("hundred-miscounted", False)])
def test_a_wrong_plot_of_the_leg_before_is_told_of_a_leg_that_nothing_explains(
    debrief, cause, told
):
    """Bug: "the evidence does not say why", of a leg measured from a point with a wrong digit."""
    before = with_leg(debrief, 0, causes=(Finding(cause=cause, probability=0.99, evidence=""),))
    untold = Finding(cause="cannot-tell", probability=1.0, evidence="")
    after = with_leg(before, 1, causes=(untold,), measures={"miss_m": 190.0})
    said = (
        "Leg 1 before it is consistent with one wrong digit in the grid reference (99 %); "
        "with Post 7 in the wrong place, leg 2 may have been measured from there."
    )
    assert (said in verdict(after)) is told
    assert ("The evidence does not say why." in verdict(after)) is not told


def test_the_head_names_what_is_to_be_worked_on(debrief):
    """Bug: the head named a leg of ordinary error, and not the hundred lost on another."""
    hundred = Finding(cause="hundred-miscounted", probability=0.99, evidence="")
    work = replace(
        debrief.coaching.work_on[0], cause="hundred-miscounted", certain=True, legs=("2",)
    )
    coaching = replace(debrief.coaching, work_on=(work,))
    told = replace(with_leg(debrief, 1, causes=(hundred,)), coaching=coaching)
    said = (
        "Beside that, what was seen on leg 2 is consistent with "
        "a hundred metres lost or added in the count (99 %)."
    )
    assert verdict(told)[2] == said
    assert said not in verdict(with_leg(told, 0, causes=(hundred,)))  # told with the worst leg
    assert said not in verdict(unsure(told, 1, 0.6))


def test_a_cause_is_told_once_of_the_worst_leg_and_the_one_that_led_there(debrief):
    """Bug: "and so are legs 1, 5 and 6", and again "and so are legs 1, 4 and 6"."""
    total = debrief.legs[0].audit.measures.ledger.total
    ledger = replace(debrief.legs[1].audit.measures.ledger, inherited=total)
    same = {"causes": debrief.legs[0].causes, "measures": {"ledger": ledger, "miss_m": 118.0}}
    said = " ".join(verdict(with_leg(debrief, 1, **same)))
    assert said.count("the grid-magnetic angle left out") == 1
    assert "and so is leg 2." in said


def test_a_turn_beside_what_other_legs_share_is_told(debrief):
    """Bug: 26.7 left on a walk of 16 left had no reason, and the 10 of a graduation no word."""
    untold = Finding(cause="cannot-tell", probability=0.75, evidence="")
    story = WalkFinding(
        cause="gm-angle-reversed", probability=1.0, legs=(1, 2), begins_later=True,
        put_right=False, size=-16.0, unit="deg",
    )  # fmt: skip
    worst = with_leg(debrief, 0, causes=(untold,), measures={"azimuth_error_deg": -26.7})
    said = "The evidence does not say why: it was walked 10.7° left of what legs 2 and 3 share."
    assert said in verdict(replace(worst, stories=(story,)))
    right = replace(story, size=16.0)
    assert said not in verdict(replace(worst, stories=(right,)))


def test_the_head_names_one_of_two_that_is_to_be_worked_on(debrief):
    """Bug: of two mistakes that a leg does not tell apart the head had not a word."""
    pair = ("single-double-pace", "wrong-ruler")
    causes = tuple(Finding(cause=cause, probability=0.49, evidence="") for cause in pair)
    either = OneOfTwo(causes=pair, probability=0.98, settles=("", ""))
    work = replace(debrief.coaching.work_on[0], cause=pair[0], one_of=pair, legs=("2",))
    told = replace(
        with_leg(debrief, 1, causes=causes, one_of=either),
        coaching=replace(debrief.coaching, work_on=(work,)),
    )
    said = (
        "Beside that, what was seen on leg 2 is consistent with single and double paces taken for "
        "each other, or the ruler of another map scale (98 %)."
    )
    assert verdict(told)[2] == said
