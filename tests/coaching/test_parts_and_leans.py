"""Parts of the misses, leans and mistakes beside others: what is told of them, and what is not."""

from __future__ import annotations

from dataclasses import replace

import pytest
from coaching.shown_walk import SETTINGS, all_praise, audits, finding, shown, talk

from audit.coaching.brought_along import led_to
from audit.coaching.part_tasks import part_tasks
from audit.coaching.steps import Hop, LegSteps
from audit.diagnosis.finding import Finding
from audit.settings import CoachingSettings
from audit.units import wrap_degrees


def test_where_the_leg_before_ended_is_no_start_to_work_on():
    """Bug: 1292 m that a mistake on the leg before had left were a task of their own."""
    legs = audits()
    ended = replace(legs[2].measures.ledger, total=(900.0, 0.0))
    legs[2] = replace(legs[2], measures=replace(legs[2].measures, ledger=ended, miss_m=900.0))
    began = replace(legs[3].measures.ledger, inherited=(880.0, 0.0), total=(885.0, 0.0))
    legs[3] = replace(legs[3], measures=replace(legs[3].measures, ledger=began, miss_m=885.0))
    assert led_to(legs, 3, CoachingSettings()) == 2
    told = [one for one in talk(shown(legs)).work_on if "4" in one.legs]
    assert told == []  # five metres of its own are none to work on
    elsewhere = replace(legs[3].measures, ledger=replace(began, inherited=(0.0, 880.0)))
    legs[3] = replace(legs[3], measures=elsewhere)
    assert led_to(legs, 3, CoachingSettings()) is None


def test_who_began_off_and_made_for_his_point_has_no_parts_to_work_on():
    """Bug: 902 m of distance were to be practised by one who turned back to his line."""
    legs = audits()
    home = replace(
        legs[3].measures.ledger, inherited=(900.0, 0.0), heading=(-600.0, 200.0),
        distance=(-260.0, -200.0), total=(40.0, 0.0),
    )  # fmt: skip
    legs[3] = replace(legs[3], measures=replace(legs[3].measures, ledger=home, miss_m=40.0))
    parts = [one for one in talk(shown(legs)).work_on if "4" in one.legs]
    assert [one for one in parts if "comes from where the" not in one.evidence] == []


def reference(error_m, slip):
    return Hop(
        steps=("given",), kind="point", error=error_m, tolerance=16.0, off_m=error_m,
        slips=(slip,), sentence="the card's reference for P7 lies off.",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("predicted_m", "by_card_m", "slip", "told"),
    [
        # The next grid line is a wrong digit as well: it is one mistake and not two.
        (1000.0, 1000.0, "wrong-grid-line", "digit-wrong"),
        # The walk led near either place, and the card shows which of them was written.
        (360.0, 400.0, "digits-transposed", "digits-transposed"),
    ],
)
def test_one_wrong_reference_is_one_thing_to_work_on(predicted_m, by_card_m, slip, told):
    """Bug: "one wrong digit" and "the next grid line" were two tasks of one reference."""
    named = Finding(
        cause="digit-wrong", probability=0.8, evidence="", predicted=predicted_m, unit="m"
    )
    steps = {
        name: LegSteps(leg=name, hops=(reference(by_card_m, slip),), sentences=("",))
        for name in ("2", "3")
    }
    work = talk(shown(causes={"2": (named,)}, steps=steps, logged=True)).work_on
    of_reference = [one for one in work if {"2", "3"} & set(one.legs)]
    assert [one.cause for one in of_reference] == [told]


def leaning(errors_deg, **measures):
    """Give the demo's legs turned by so much each, two half intervals of one degree."""
    legs = audits()
    return [
        replace(leg, measures=replace(leg.measures, azimuth_error_deg=error, **measures))
        for leg, error in zip(legs, errors_deg, strict=True)
    ]


@pytest.mark.parametrize(
    ("errors_deg", "told"),
    [
        ((-4.0, -5.0, -4.5, -3.0, -4.0, -5.0, -3.5), True),
        ((-4.0, -5.0, -4.5, -3.0, -4.0, -5.0, 1.0), True),  # nearly all
        ((-1.0, -1.2, -0.8, -1.0, -1.1, -0.9, -1.0), False),  # surely, and not worth a word
        ((-4.0, 5.0, -4.5, 3.0, -4.0, 5.0, -3.5), False),
        ((-1.0, -14.0, -1.0, -1.0, -0.5, -1.0, -0.5), False),  # one leg makes no lean
    ],
)
def test_a_lean_over_all_legs_is_one_thing_to_work_on(errors_deg, told):
    """Bug: three legs 4 to 5 degrees left, missed by up to 60 m, and "Nothing stands out"."""
    of = shown(leaning(errors_deg, miss_m=50.0))
    leans = [one for one in talk(of).work_on if "may be behind it" in one.evidence]
    assert bool(leans) is told
    for one in leans:
        assert (one.cause, one.certain) == ("steady-bias", False)
        assert "left of the azimuth: by " in one.evidence
        assert set(one.legs) == {str(n + 1) for n, error in enumerate(errors_deg) if error < 0.0}
        azimuths = [keep for keep in all_praise(of) if keep.skill == "azimuth"]
        assert not any(set(keep.legs) & set(one.legs) for keep in azimuths)


def test_a_few_legs_among_mistakes_make_no_lean():
    """A lean is of the walk: three legs of seven are left by chance where four are mistaken."""
    legs = leaning((-4.0, -5.0, -4.5, 20.0, 21.0, 20.0, 19.0), miss_m=50.0)
    causes = {str(n): (finding("gm-angle-omitted", 0.97),) for n in range(4, 8)}
    work = talk(shown(legs, causes=causes)).work_on
    assert not any("may be behind it" in one.evidence for one in work)


def with_parts(heading_m, distance_m):
    """Give the demo's third leg alone, its ledger of these parts, measured to 5 m."""
    (leg,) = [leg for leg in audits() if leg.card.name == "3"]
    errors = replace(
        leg.measures.details.ledger_errors, heading_m=5.0, distance_m=5.0, inherited_m=5.0
    )
    ledger = replace(
        leg.measures.ledger, inherited=(0.0, 0.0), plan=(0.0, 0.0), heading=(heading_m, 0.0),
        distance=(0.0, distance_m), detour=(0.0, 0.0), total=(heading_m, distance_m),
    )  # fmt: skip
    details = replace(leg.measures.details, ledger_errors=errors)
    return {"3": replace(leg.measures, ledger=ledger, details=details, miss_m=75.0)}


def test_no_smaller_part_where_the_largest_is_not_told():
    """Bug: the head said "mostly 7 degrees left" (72 m), the task "the distance part: 34 m".

    Bug: "it is the heading part of the miss: 72 m" was understood by nobody.
    """
    legs = with_parts(72.0, 34.0)
    (task,) = part_tasks(legs, {}, 30.0, 30.0, SETTINGS)
    assert task.work.evidence.endswith(
        "; to work on is that part of the miss there that comes from the heading: 72 m."
    )
    assert list(part_tasks(legs, {"heading": {"3"}}, 30.0, 30.0, SETTINGS)) == []


def test_a_part_that_a_step_calls_ordinary_is_still_told():
    """Bug: 47 m of heading, nine times their error, were told neither as step nor as part."""
    hop = Hop(
        steps=("walked",), kind="direction", error=4.0, tolerance=3.0, off_m=47.0, slips=(),
        sentence="the azimuth walked is 4.0 degrees right.", ordinary=True,
    )  # fmt: skip
    steps = {"6": LegSteps(leg="6", hops=(hop,), sentences=())}
    legs = [leg if leg.card.name == "6" else replace(leg, confidence=0.5) for leg in audits()]
    told = [
        one
        for one in talk(shown(legs, steps=steps)).work_on
        if "comes from the heading" in one.evidence
    ]
    assert [one.legs for one in told] == [("6",)]


@pytest.mark.parametrize(
    ("distance_m", "miss_m", "causes"),
    [
        (24.0, 24.0, []),  # he arrived
        (24.0, 35.0, ["pace-long"]),
        (58.0, 60.0, ["pace-long"]),
        (90.0, 92.0, ["hundred-miscounted"]),
    ],
)
def test_no_hundred_is_lost_in_twenty_metres(distance_m, miss_m, causes):
    """Bug: the exercise for hundreds was given for 24 m on a leg that arrived, "ordinary error"."""
    legs = {"3": replace(with_parts(0.0, distance_m)["3"], miss_m=miss_m)}
    told = list(part_tasks(legs, {}, 30.0, 30.0, SETTINGS))
    assert [task.work.cause for task in told] == causes


def test_unlike_legs_are_not_told_by_their_average():
    """Bug: the line was to be practised over legs 22 and 4 degrees off, "153 m a leg"."""
    one = with_parts(60.0, 0.0)["3"]
    far = replace(one, ledger=replace(one.ledger, heading=(360.0, 0.0)), azimuth_error_deg=22.4)
    near = replace(one, azimuth_error_deg=4.0)
    candidate = {"1": (finding("gm-angle-reversed", 0.34), finding("gm-angle-omitted", 0.25))}
    tasks = list(
        part_tasks({"1": far, "2": near}, {}, 30.0, 30.0, SETTINGS, causes=candidate)
    )  # fmt: skip
    assert [(task.work.cause, task.work.legs) for task in tasks] == [
        ("gm-angle-reversed", ("1",)),
        ("within-skill", ("2",)),
    ]


def test_no_praise_on_a_leg_that_the_log_disputes():
    """Bug: a distance was praised on a leg that the log ends 3.5 minutes before its claim."""
    before = {name for keep in all_praise(shown()) for name in keep.legs}
    disputed = all_praise(shown(disputed=frozenset({"3"})))
    assert "3" in before
    assert "3" not in {name for keep in disputed for name in keep.legs}


def test_no_azimuth_is_praised_on_a_leg_that_nothing_explains():
    """Bug: the azimuth was praised of a leg 917 m too long, of which no cause stood out."""
    unexplained = {"3": (finding("cannot-tell", 0.92),)}
    assert any("3" in keep.legs for keep in all_praise(shown()) if keep.skill == "azimuth")
    kept = all_praise(shown(causes=unexplained))
    assert not any("3" in keep.legs for keep in kept if keep.skill in {"azimuth", "distance"})


@pytest.mark.parametrize(("miss_m", "praised"), [(150.0, True), (1801.0, False)])
def test_who_was_lost_did_not_search(miss_m, praised):
    """Bug: "Finding the point after a miss … up to 1801 m off" was praised."""
    found = {"miss_m": miss_m, "found": True, "nearest_m": 24.0, "nearest_after_m": 24.0}
    kept = [one for one in all_praise(shown(audits(leg3=found))) if one.skill == "finding"]
    assert any("3" in one.legs for one in kept) is praised


def test_nothing_else_stands_out_only_where_nothing_was_made_beside():
    """Bug: "Nothing else stands out" of a pace count that was out on all legs, at 98 %."""
    angle = finding("gm-angle-omitted", 0.97)
    beside = replace(finding("pace-long", 0.01), made=0.98, predicted=1.1, unit="ratio")
    causes = {str(n): (angle, beside) for n in range(1, 8)}
    work = talk(shown(causes=causes)).work_on
    assert [one.cause for one in work] == ["gm-angle-omitted", "pace-long"]
    assert work[1].evidence.startswith("Beside a larger mistake it was likely made on legs 1 to 7")
    unsure = {name: (angle, replace(beside, made=0.7)) for name in causes}
    assert [one.cause for one in talk(shown(causes=unsure)).work_on] == ["gm-angle-omitted"]


@pytest.mark.parametrize(
    "unknown",
    [
        {"heading": {"low_deg": -7.0, "high_deg": 7.0}},
        {"gap_share": 0.91},
    ],
)
def test_no_azimuth_is_praised_that_nobody_saw(unknown):
    """Bug: "the azimuth walked was within 2.5" of legs known to 11, or 91 % of them not recorded."""
    heading = audits()[2].measures.heading
    if "heading" in unknown:
        about = {end: wrap_degrees(heading.azimuth.degrees + off)
                 for end, off in unknown["heading"].items()}  # fmt: skip
        unknown = {"heading": replace(heading, **about)}
    kept = all_praise(shown(audits(leg3=unknown)))
    assert kept
    assert not any("3" in keep.legs for keep in kept if keep.skill == "azimuth")
    assert any("3" in keep.legs for keep in all_praise(shown()) if keep.skill == "azimuth")


def test_a_mistake_of_all_legs_is_told_with_all_its_legs():
    """Bug: "on every leg" at the head, and to be worked on "on leg 3"."""
    angle, pace = finding("gm-angle-omitted", 0.9), finding("pace-long", 0.9)
    beside = replace(pace, probability=0.01, made=0.6, predicted=1.12, unit="ratio")
    causes = {str(n): (angle, beside) for n in range(1, 8)} | {"3": (pace,)}
    shared = {"pace-long": ("1", "2", "3", "4")}
    told = {one.cause: one.legs for one in talk(shown(causes=causes, shared=shared)).work_on}
    assert told["pace-long"] == ("1", "2", "3", "4")


@pytest.mark.parametrize(
    ("ratios", "told"),
    [
        ((1.05, 1.07, 1.18, 1.08, 1.09, 1.1, 1.07), True),
        ((0.9, 0.92, 0.93, 0.91, 0.9, 0.93, 0.92), True),
        ((1.02, 1.01, 1.03, 1.02, 1.01, 1.02, 1.02), False),  # surely, and not worth a word
        ((1.1, 0.9, 1.12, 0.92, 1.07, 0.95, 1.1), False),
    ],
)
def test_distances_out_over_all_legs_are_one_thing_to_work_on(ratios, told):
    """Bug: all six legs 24 to 63 m too far beside the angle left out, and not one word of it."""
    changes = {
        f"leg{n + 1}": {"distance_ratio": ratio, "miss_m": 60.0} for n, ratio in enumerate(ratios)
    }
    changes = {
        name: one | {"ledger": replace(audits()[0].measures.ledger, distance=(0.0, 50.0))}
        for name, one in changes.items()
    }
    angle = {str(n + 1): (finding("gm-angle-omitted", 0.97),) for n in range(len(ratios))}
    of = shown(audits(**changes), causes=angle)
    found = [one for one in talk(of).work_on if "give or take" in one.evidence]
    assert bool(found) is told
    for one in found:
        cause = "pace-long" if ratios[0] > 1.0 else "pace-short"
        assert (one.cause, one.certain, len(one.legs)) == (cause, False, len(ratios))
        assert not any(keep.skill == "distance" for keep in all_praise(of))


@pytest.mark.parametrize(("drift_deg", "cause"), [(15.0, "veer"), (1.0, "within-skill")])
def test_a_straight_line_is_not_practised_as_a_veer(drift_deg, cause):
    """Bug: the exercise for a line that bends, of legs whose drift was within twice its error."""
    leg = with_parts(72.0, 0.0)["3"]
    thirds = replace(leg.details.thirds, drift_deg=drift_deg, drift_sd_deg=2.0)
    legs = {"3": replace(leg, azimuth_error_deg=6.0, details=replace(leg.details, thirds=thirds))}
    (task,) = part_tasks(legs, {}, 30.0, 30.0, SETTINGS)
    assert task.work.cause == cause
