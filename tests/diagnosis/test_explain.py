"""Causes weighed: cases that can be judged on paper.

The predictions r = +G, +2G, -G and -C are those of the project's table of mistakes
(G grid-magnetic angle, C convergence, east positive: r is what arithmetic gives when
magnetic = grid - G is done wrongly). What may be named and what may not is the
project's own rule: 0.8.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from diagnosis.made_evidence import explain, legs
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.diagnosis.causes import CAUSES
from audit.diagnosis.explain import explain_walk
from audit.diagnosis.finding import Finding
from audit.diagnosis.line_shape import LineShape
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()
MISTAKES = {cause.name for cause in CAUSES}
CATALOGUE = MISTAKES | {"within-skill", "cannot-tell"}


def odds(evidence, leg: int = 0) -> dict[str, float]:
    """Probabilities of a leg; what is too improbable to be listed counts as nothing."""
    shares = dict.fromkeys(CATALOGUE, 0.0)
    return shares | {found.cause: found.probability for found in explain(evidence, S)[leg]}


def top(evidence, leg: int = 0):
    return explain(evidence, S)[leg][0]


@pytest.mark.parametrize("side", [-1.0, 1.0])
def test_angle_left_out_on_every_leg(side) -> None:
    evidence = legs(*[side * 7.0] * 6, angle_deg=side * 7.0)
    for leg in range(6):
        assert top(evidence, leg).cause == "gm-angle-omitted"
        assert top(evidence, leg).probability > 0.8


@pytest.mark.parametrize("side", [-1.0, 1.0])
@pytest.mark.parametrize(
    ("turn", "angle", "convergence", "cause"),
    [
        (12.0, 12.0, 1.0, "gm-angle-omitted"),
        (14.0, 7.0, 1.0, "gm-angle-reversed"),
        (-15.0, 15.0, 1.0, "gm-angle-doubled"),
        (-12.0, 3.0, 12.0, "declination-for-gm-angle"),  # beyond any grid's edge: the sum alone
    ],
)
def test_each_mistake_with_the_angle_made_on_all_of_six_legs(
    turn, angle, convergence, cause, side
) -> None:
    turns = [side * turn + extra for extra in (0.5, -1.0, 1.5, 0.0, -0.5, 1.0)]
    evidence = legs(*turns, angle_deg=side * angle, convergence_deg=side * convergence)
    found = [top(evidence, leg) for leg in range(6)]
    assert {finding.cause for finding in found} == {cause}
    if cause in ("gm-angle-omitted", "gm-angle-reversed"):
        assert min(finding.probability for finding in found) > 0.8
    else:  # rarer: the same turn may be the compass
        assert min(finding.probability for finding in found) > 0.5


def test_one_leg_proves_little() -> None:
    found = odds(legs(-7.0, angle_deg=-7.0))
    assert max(found[name] for name in MISTAKES) < 0.5


def test_proof_grows_with_legs() -> None:
    shares = [
        odds(legs(*[-9.0] * count, angle_deg=-9.0))["gm-angle-omitted"] for count in (1, 2, 4, 8)
    ]
    assert shares == sorted(shares)
    assert shares[0] < 0.7 < 0.85 < shares[-1]


def test_clean_walk_is_within_skill() -> None:
    evidence = legs(1.0, -2.0, 0.5, 3.0, -1.5)
    for leg in range(5):
        assert top(evidence, leg).cause == "within-skill"
        assert top(evidence, leg).probability > 0.8


@pytest.mark.parametrize("angle", [-1.9, -1.0, 0.0, 0.5, 1.9])
@pytest.mark.parametrize("times", [1.0, 2.0, -1.0])
@pytest.mark.parametrize("count", [3, 8, 20])
def test_small_angle_is_never_named(angle, times, count) -> None:
    """Its mistakes look like anybody's compass, whatever the number of legs."""
    evidence = legs(*[times * angle] * count, angle_deg=angle, convergence_deg=angle, sd_deg=0.3)
    for findings in explain(evidence, S).values():
        assert all(found.probability < 0.8 for found in findings if found.cause in MISTAKES)


def test_one_leg_off_by_the_angle_among_clean_ones() -> None:
    evidence = legs(0.5, -1.0, 1.0, 0.3, -0.6, -18.0, angle_deg=-18.0)
    found = odds(evidence, 5)
    assert found["within-skill"] < 0.05
    assert max(MISTAKES, key=lambda name: found[name]) == "gm-angle-omitted"
    for leg in range(5):
        assert top(evidence, leg).cause == "within-skill"


def test_angle_that_fits_one_leg_of_a_scattered_walk_is_not_named() -> None:
    evidence = legs(6.0, -5.0, 4.0, -7.0, 1.0, 3.0, angle_deg=-7.0)
    for leg in range(6):
        found = odds(evidence, leg)
        assert all(found[name] < 0.5 for name in MISTAKES)


@pytest.mark.parametrize("turn", [62.0, -75.0, 123.0])
def test_wild_leg_cannot_be_told(turn) -> None:
    evidence = legs(0.5, -1.0, 1.0, turn, 0.3)
    assert top(evidence, 3).cause == "cannot-tell"
    assert top(evidence, 3).probability > 0.95
    assert top(evidence, 0).cause == "within-skill"


def test_lone_wild_leg_cannot_be_told() -> None:
    assert odds(legs(60.0))["cannot-tell"] > 0.95


@pytest.mark.parametrize("turn", [12.0, -13.0, 15.0, 20.0])
def test_turn_that_this_walkers_error_does_not_explain_is_not_within_skill(turn) -> None:
    """Seven legs within 2 degrees, one far out of that: something happened there."""
    evidence = legs(1.0, -1.5, 2.0, 0.0, -2.0, 1.5, -0.5, turn, angle_deg=-3.0)
    found = odds(evidence, 7)
    assert found["within-skill"] < 0.2
    # Four clicks, two graduations, or anything else: look-alikes share.
    assert max(found[name] for name in MISTAKES) < 0.8


def test_same_turn_is_within_the_skill_of_a_walker_who_scatters_so() -> None:
    scattered = legs(9.0, -8.0, 6.0, -10.0, 3.0, -5.0, 8.0, 12.0, angle_deg=-3.0)
    steady = legs(1.0, -1.5, 2.0, 0.0, -2.0, 1.5, -0.5, 12.0, angle_deg=-3.0)
    assert odds(scattered, 7)["within-skill"] > 0.5 > odds(steady, 7)["within-skill"]


@pytest.mark.parametrize("turn", [9.0, 12.0, -11.0])
def test_steady_turn_without_a_known_angle_is_the_compass_or_the_walker(turn) -> None:
    """And not the nearest known angle (here 3 degrees)."""
    evidence = legs(*[turn + extra for extra in (0.0, 1.0, -1.0, 0.5, -0.5, 0.0)], angle_deg=-3.0)
    for leg in range(6):
        found = odds(evidence, leg)
        assert max(found, key=found.get) == "steady-bias"
        assert all(found[name] < 0.5 for name in MISTAKES - {"steady-bias"})
        assert found["within-skill"] < 0.15


@pytest.mark.parametrize(
    ("ratio", "cause"),
    [
        (0.5, "single-double-pace"),
        (1.4, "hundred-miscounted"),  # 500 m: two hundreds too many
        (1.65, "cannot-tell"),
        (2.0, "single-double-pace"),
    ],
)
def test_distance_out_by_more_than_pacing_explains(ratio, cause) -> None:
    evidence = legs(0.5, -1.0, 1.0, 0.3, ratios=(1.0, 1.02, ratio, 0.97))
    assert top(evidence, 2).cause == cause
    assert top(evidence, 0).cause == "within-skill"


def test_own_pace_count_is_ordinary() -> None:
    # Everything 4 % long, though lines wind: a pace that is off by 5 %, not a mistake.
    evidence = legs(0.5, -1.0, 1.0, 0.3, -0.5, ratios=(1.04, 1.05, 1.03, 1.04, 1.04))
    for leg in range(5):
        assert odds(evidence, leg)["within-skill"] > 0.7


@pytest.mark.parametrize("off", [0.055, 0.06, 0.065, 0.07, 0.075, 0.08])
def test_a_pace_too_long_and_one_as_much_too_short_are_told_alike(off) -> None:
    """Bug: what winding lines cost was counted for the one and against the other."""
    own = math.exp(S.weave)
    turns = (0.5, -1.0, 1.0, 0.3, -0.5, 0.2)
    long = odds(legs(*turns, ratios=[own * (1.0 + off)] * 6), 0)
    short = odds(legs(*turns, ratios=[own * (1.0 - off)] * 6), 0)
    assert long.get("pace-long", 0.0) == pytest.approx(short.get("pace-short", 0.0), abs=0.12)


def test_what_the_match_may_have_wrong_cannot_be_told() -> None:
    sure, unsure = legs(*[-12.0] * 6, angle_deg=-12.0), []
    for number, leg in enumerate(sure):
        unsure.append(replace(leg, confidence=0.6) if number == 0 else leg)
    found = odds(tuple(unsure), 0)
    # That it goes with the five others speaks for the portion, but does not prove it.
    assert 0.6 < found["gm-angle-omitted"] < 0.93
    assert found["gm-angle-omitted"] < odds(sure, 0)["gm-angle-omitted"] - 0.04
    assert found["cannot-tell"] > 0.07


def test_portion_that_is_hardly_the_legs_does_not_speak_for_the_walker() -> None:
    clean = legs(0.5, -1.0, 1.0, 0.3, angle_deg=-15.0)
    doubtful = tuple(replace(leg, confidence=0.05) for leg in legs(*[-15.0] * 5, angle_deg=-15.0))
    together = clean + tuple(replace(leg, leg=4 + n) for n, leg in enumerate(doubtful))
    assert odds(together, 0)["within-skill"] == pytest.approx(
        odds(clean, 0)["within-skill"], abs=0.1
    )
    assert odds(together, 5)["cannot-tell"] >= 0.75


def test_heading_of_which_nothing_is_known_decides_nothing() -> None:
    unknown = legs(140.0, sd_deg=104.0)
    assert max(odds(unknown)[name] for name in MISTAKES) < 0.3


@settings(max_examples=25, deadline=None)
@given(
    turns=st.lists(st.floats(-180.0, 180.0), min_size=1, max_size=12),
    angle=st.floats(-60.0, 60.0),
    convergence=st.floats(-5.0, 5.0),
    sd=st.floats(0.01, 104.0),
    confidence=st.floats(0.0, 1.0),
    ratio=st.floats(0.001, 1000.0),
)
def test_probabilities_of_a_leg_add_up_to_one(
    turns, angle, convergence, sd, confidence, ratio
) -> None:
    evidence = legs(
        *turns, angle_deg=angle, convergence_deg=convergence, sd_deg=sd,
        confidence=confidence, ratios=[ratio] * len(turns),
    )  # fmt: skip
    findings = explain(evidence, S)
    assert set(findings) == set(range(len(turns)))
    for found in findings.values():
        shares = [finding.probability for finding in found]
        assert sum(shares) == pytest.approx(1.0, abs=1e-9)
        assert shares == sorted(shares, reverse=True)
        assert all(0.0 <= share <= 1.0 for share in shares)
        names = [finding.cause for finding in found]
        assert set(names) <= CATALOGUE
        assert len(names) == len(set(names))
        assert {"within-skill", "cannot-tell"} <= set(names)


@pytest.mark.parametrize(
    "turns", [(-12.0, -11.0, 1.0, 0.5), (3.0, -2.0, 14.0), (-9.0, -10.0, -8.0)]
)
def test_mirrored_walk_has_the_same_causes(turns) -> None:
    here = legs(*turns, angle_deg=-12.0)
    there = tuple(
        replace(
            leg,
            turn_deg=-leg.turn_deg,
            grid_magnetic_angle_deg=12.0,
            convergence_deg=-leg.convergence_deg,
            planned_magnetic_deg=360.0 - leg.planned_magnetic_deg,
        )
        for leg in here
    )
    # Digits know no mirror: an azimuth and its mirror image have others to swap.
    for leg in range(len(turns)):
        one, other = odds(here, leg), odds(there, leg)
        for name in ("within-skill", "gm-angle-omitted", "steady-bias", "bezel-clicks"):
            assert other[name] == pytest.approx(one[name], abs=0.1)


def test_angle_left_out_at_first_and_then_put_right() -> None:
    evidence = legs(-12.0, -11.0, -13.0, 0.5, -1.0, 1.0, angle_deg=-12.0)
    for leg in range(3):
        assert top(evidence, leg).cause == "gm-angle-omitted"
        assert top(evidence, leg).probability > 0.8
    for leg in range(3, 6):
        assert top(evidence, leg).cause == "within-skill"
    (story,) = explain_walk(evidence, S).stories
    assert story.cause == "gm-angle-omitted"
    assert story.legs == (0, 1, 2)
    assert (story.begins_later, story.put_right) == (False, True)
    assert story.size == pytest.approx(-12.0)


def test_angle_left_out_from_the_third_leg_on() -> None:
    evidence = legs(1.0, -0.5, 14.0, 13.0, 15.0, 14.5, angle_deg=14.0)
    (story,) = explain_walk(evidence, S).stories
    assert story.legs == (2, 3, 4, 5)
    assert (story.begins_later, story.put_right) == (True, False)


def test_a_pace_that_is_off_is_told_beside_the_angle_left_out() -> None:
    """Bug: a walk whose legs share a mistake of direction had no story of its pace."""
    turns, ratios = (-12.5, -13.5, -11.0, -12.0, -14.0, -12.0), (1.12, 1.1, 1.13, 1.11, 1.09, 1.12)
    stories = explain_walk(legs(*turns, angle_deg=-12.5, ratios=ratios), S).stories
    assert {story.cause for story in stories} == {"gm-angle-omitted", "pace-long"}
    assert all(story.legs == tuple(range(6)) for story in stories)
    (pace,) = (story for story in stories if story.cause == "pace-long")
    assert pace.size == pytest.approx(1.11, abs=0.02)


def test_an_ordinary_pace_has_no_story_beside_the_angle_left_out() -> None:
    turns, ratios = (-12.5, -13.5, -11.0, -12.0, -14.0, -12.0), (1.02, 0.97, 1.03, 1.0, 0.99, 1.02)
    (story,) = explain_walk(legs(*turns, angle_deg=-12.5, ratios=ratios), S).stories
    assert story.cause == "gm-angle-omitted"


def test_clean_walk_has_no_story() -> None:
    assert explain_walk(legs(1.0, -2.0, 0.5, 3.0, -1.5), S).stories == ()


def test_two_mistakes_on_one_leg_are_both_seen() -> None:
    """The angle left out on all legs, and a hundred too many on one of them."""
    evidence = legs(*[-14.0] * 6, angle_deg=-14.0, ratios=(1.0, 1.0, 1.2, 1.0, 1.01, 0.99))
    found = {finding.cause: finding for finding in explain(evidence, S)[2]}
    # 14 degrees of 500 m are 122 m, a hundred is less: the angle is the chief cause.
    assert found["gm-angle-omitted"].probability > found["hundred-miscounted"].probability
    assert found["gm-angle-omitted"].made > 0.8
    assert found["hundred-miscounted"].made > 0.6


@pytest.mark.parametrize("turned", [180.0, 90.0, -90.0])
def test_back_azimuth_or_right_angle_beside_an_angle_left_out_is_named(turned) -> None:
    """Sums alone: r = 180, or 90, + G where G was left out as well."""
    turns = [12.0, 11.0, 13.5, 12.0 + turned, 12.5, 11.5]
    found = explain(legs(*turns, angle_deg=12.0), S)
    name = "reciprocal" if turned == 180.0 else "right-angle"
    assert found[3][0].cause == name
    assert found[3][0].probability > 0.8
    made = {one.cause: one.made for one in found[3]}
    assert made["gm-angle-omitted"] > 0.8
    together = {180.0: "168.0° left", 90.0: "102.0° right", -90.0: "78.0° left"}[turned]
    assert f" by itself, {together} together with the mistake" in found[3][0].evidence
    assert "share" not in found[0][0].evidence
    assert all(found[leg][0].cause == "gm-angle-omitted" for leg in (0, 1, 2, 4, 5))


def test_hundred_too_few_beside_a_pace_that_falls_short_is_named() -> None:
    """Legs of 500 m walked as 407 m, one a hundred less of the walker's metres: 0.8 of that."""
    ratios = [1 / 1.23] * 6
    ratios[2] = (1 - 100.0 / 500.0) / 1.23
    evidence = tuple(
        replace(leg, length_m=500.0)
        for leg in legs(*[0.5, -0.5, 0.3, 0.1, -0.2, 0.4], ratios=ratios)
    )
    found = explain(evidence, S)
    assert found[2][0].cause == "hundred-miscounted"
    assert "Predicts 100 m short by itself, 175 m short together" in found[2][0].evidence
    assert {one.cause: one.made for one in found[2]}["pace-short"] > 0.8
    assert found[0][0].cause == "pace-short"
    assert found[0][0].probability > 0.8


@pytest.mark.parametrize("pace", [1.085, 1.095, 1.105, 1.115])
def test_a_steady_pace_is_named_wherever_it_falls_between_the_places_that_are_summed(pace) -> None:
    evidence = legs(*[0.2, -0.4, 0.5, 0.1, -0.3, 0.4, 0.0, -0.2], ratios=[pace] * 8)
    assert top(evidence).cause == "pace-long"
    assert top(evidence).probability > 0.8


def test_no_leg_walked_gives_no_findings() -> None:
    assert explain((), S) == {}


def test_a_steady_turn_has_one_size_on_all_legs() -> None:
    """Bug: 4.5 degrees left on one leg, 10.5 on the next and 4.5 right on a third."""
    turns = [-9.0, -8.0, -10.5, -4.0, -8.5, 2.0, -9.5]
    found = explain_walk(legs(*turns, angle_deg=1.0), S)
    sizes = {
        one.predicted
        for of_leg in found.findings.values()
        for one in of_leg
        if one.cause == "steady-bias"
    }
    assert len(sizes) == 1
    assert -10.0 < min(sizes) < -6.0


def test_a_line_that_was_not_followed_shows_no_cause_and_speaks_for_no_other_leg():
    """Bug: a leg walked straight past its via positions was called ordinary error, 88 %."""
    three = legs(0.0, 0.0, 0.0, ratios=(1.0, 0.64, 1.0))
    one = replace(three[1], bent=True, another_way_m=869.0, length_m=1360.0)
    found = explain((three[0], one, three[2]), S)
    (only,) = found[1]
    assert (only.cause, only.probability) == ("cannot-tell", 1.0)
    assert "The planned line was not followed: 869 m were walked" in only.evidence
    alone = explain((three[0], three[2]), S)
    assert [found[0], found[2]] == [alone[0], alone[2]]
    assert explain((one,), S) == {1: (only,)}


def bent(bend_deg: float, turn_deg: float = 0.0):
    """Five legs held well, the first along a path that bends."""
    first, *others = legs(turn_deg, -1.0, 1.5, 0.0, -0.5)
    shape = LineShape(bend_deg=bend_deg, bend_sd_deg=5.0, chord_m=800.0)
    return replace(first, shape=shape), *others


@pytest.mark.parametrize("bend_deg", [-180.0, 180.0, 90.0, 120.0])
def test_a_bent_path_to_the_right_place_is_no_wrong_azimuth(bend_deg) -> None:
    """Bug: "azimuth as planned, arrived, 1 m off: an azimuth 90° out (75 %)".

    A curve by a quarter circle and an azimuth a quarter circle out were held to be made
    together, and the larger of the two was told.
    """
    found = explain(bent(bend_deg), S)[0]
    assert found[0].cause == "within-skill"
    mistakes = [one for one in found if one.cause not in ("within-skill", "cannot-tell")]
    assert all((one.made or 0.0) < 0.5 for one in mistakes if one.cause != "veer")


def test_an_azimuth_out_by_a_right_angle_is_still_told() -> None:
    assert explain(bent(0.0, turn_deg=90.0), S)[0][0].cause == "right-angle"


def test_who_began_off_on_his_line_and_arrived_is_within_skill() -> None:
    """Bug: a leg begun 89 m along its line, that ended at its point, could not be told (85 %)."""
    clean = legs(0.5, -1.0, 1.5, 0.0)
    short = replace(legs(1.8, ratios=[0.85])[0], leg=4, length_m=566.0, start_off_m=(0.0, 0.0))
    begun = replace(short, start_off_m=(65.0, 61.0), planned_deg=46.0)
    for arrived, told in ((True, "within-skill"), (False, "cannot-tell")):
        assert explain((*clean, replace(begun, arrived=arrived)), S)[4][0].cause == told


def overshot(ratio: float) -> tuple[Finding, ...]:
    """Five legs of 740 m, the third of them so much too long."""
    evidence = legs(1.0, -0.5, 0.5, -1.0, 0.0, ratios=(1.01, 0.98, ratio, 1.0, 0.99))
    return explain(tuple(replace(leg, length_m=740.0) for leg in evidence), S)[2]


def test_walking_on_by_far_is_no_less_walking_on() -> None:
    """Bug: a leg of 740 m walked on by 300 m was an overshoot of 2 %, whatever else it was."""
    found = overshot(1.41)[0]
    assert (found.cause, found.probability > 0.5) == ("overshoot", True)
    assert all(one.cause != "overshoot" or one.probability < 0.05 for one in overshot(1.06))
