"""The walker's own card as evidence: exact, so that it clears what it shows right."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from diagnosis.made_evidence import explain, legs

from audit.diagnosis.on_paper import OnPaper
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()
RIGHT = OnPaper(
    grid_turn_deg=0.2,
    magnetic_turn_deg=0.3,
    log_ratio=0.004,
    rounding_ratio=0.001,
    end_off_m=(0.0, 0.0),
)


def causes(evidence, leg=0) -> dict[str, float]:
    return {one.cause: one.probability for one in explain(evidence, S)[leg]}


def named(evidence, leg=0) -> str:
    return explain(evidence, S)[leg][0].cause


def with_card(evidence, paper, leg=0):
    """All legs with a card that is right, one with this."""
    return tuple(
        replace(one, on_paper=paper if n == leg else RIGHT) for n, one in enumerate(evidence)
    )


def westward(*, turn_deg=13.0):
    """A leg of 420 m south that ended 100 m west, and two that went as planned."""
    evidence = legs(turn_deg, 0.5, -1.0, angle_deg=-17.5)
    first = replace(
        evidence[0], planned_deg=180.0, length_m=420.0, end_m=(486_800.0, 4_426_300.0),
        half_square_m=5.0,
    )  # fmt: skip
    return (first, *evidence[1:])


def test_a_right_card_clears_the_reference_that_led_as_far_off() -> None:
    """Bug: the head named a wrong digit in the reference; card right, compass set 10 degrees off."""
    evidence = westward()
    assert causes(evidence)["digit-wrong"] > 0.01
    set_off = (replace(evidence[0], set_turn_deg=10.0), *evidence[1:])
    for seen in (evidence, set_off):
        assert causes(with_card(seen, RIGHT)).get("digit-wrong", 0.0) < 0.005
    assert named(with_card(set_off, RIGHT)) == "dial-misread"


@pytest.mark.parametrize(("turn", "angle"), [(-10.6, -12.0), (13.8, -12.5), (11.8, -12.0)])
def test_a_sum_done_right_clears_the_angle_where_the_azimuth_was_measured_off(turn, angle) -> None:
    """Bug: "angle left out", "twice"; the card's sum is right, its grid azimuth 10 degrees off."""
    off = math.copysign(10.3, turn)
    paper = replace(RIGHT, grid_turn_deg=off, magnetic_turn_deg=off)
    evidence = legs(turn, 0.5, -1.0, angle_deg=angle)
    carded = with_card(tuple(replace(one, set_turn_deg=0.0) for one in evidence), paper)
    carded = (replace(carded[0], set_turn_deg=off), *carded[1:])
    assert named(carded) == "dial-misread"
    angles = ("gm-angle-omitted", "gm-angle-doubled", "gm-angle-reversed")
    assert sum(causes(carded).get(one, 0.0) for one in angles) < 0.05


def test_a_right_card_leaves_open_what_was_set_where_no_log_tells() -> None:
    carded = with_card(legs(*[-12.2, -11.5, -12.4, -12.0], angle_deg=-12.0), RIGHT)
    assert named(carded) == "gm-angle-omitted"
    noted = tuple(replace(one, set_turn_deg=0.3) for one in carded)
    assert named(noted) != "gm-angle-omitted"


def test_a_reference_with_a_digit_wrong_is_not_named_two_digits_swapped() -> None:
    """Bug: "two digits swapped" beside a card whose reference has one digit wrong."""
    length, north = 795.0, math.degrees(math.atan2(400.0, 795.0))
    evidence = legs(-north + 1.0, 0.5, -1.0, ratios=[math.hypot(400.0, 795.0) / length, 1.0, 1.0])
    first = replace(
        evidence[0], planned_deg=90.0, length_m=length, end_m=(402_350.0, 4_415_150.0),
        half_square_m=5.0,
    )  # fmt: skip
    paper = OnPaper(
        grid_turn_deg=-north,
        magnetic_turn_deg=-north,
        log_ratio=math.log(math.hypot(400.0, 795.0) / length),
        end_off_m=(0.0, 400.0),
        slips=("digit-wrong",),
    )
    carded = with_card((first, *evidence[1:]), paper)
    assert named(carded) == "digit-wrong"
    assert causes(carded).get("digits-transposed", 0.0) < 0.05


@pytest.mark.parametrize(("walked", "on_card"), [(1.12, 1.125), (0.76, 0.78)])
def test_a_distance_wrong_on_paper_clears_walking_on_and_stopping_short(walked, on_card) -> None:
    """Bug: "walking on past the distance" where the card's distance was as much too long."""
    paper = replace(RIGHT, log_ratio=math.log(on_card))
    evidence = legs(1.0, 0.5, -1.0, ratios=[walked, 1.0, 0.99])
    length = 100.0 / abs(on_card - 1.0)
    evidence = (replace(evidence[0], length_m=length), *evidence[1:])
    carded = with_card(evidence, paper)
    assert named(carded) == "hundred-miscounted"
    found = causes(carded)
    assert max(found.get(one, 0.0) for one in ("overshoot", "early-stop")) < 0.05


def test_a_log_is_as_exact_as_it_is_written() -> None:
    """Bug: a setting 10.0 degrees off the card was named the angle twice, 12.5 degrees, at 93 %."""
    evidence = legs(13.1, 0.5, -1.0, angle_deg=-12.5)
    noted = tuple(
        replace(one, set_turn_deg=turn, set_rounding_deg=0.07)
        for one, turn in zip(evidence, (10.0, 0.0, 0.0), strict=True)
    )
    assert causes(noted).get("gm-angle-doubled", 0.0) < 0.3
    exactly = (replace(noted[0], set_turn_deg=12.5), *noted[1:])
    assert named(exactly) == "gm-angle-doubled"


def test_a_leg_measured_from_a_wrong_start_is_charged_with_nothing_of_its_own() -> None:
    """Bug: the leg after a wrongly plotted point was named a digit, a graduation or a hundred."""
    first = replace(westward()[0], length_m=795.0, turn_deg=22.0, set_turn_deg=22.0, log_ratio=0.3)
    paper = replace(RIGHT, grid_turn_deg=22.0, magnetic_turn_deg=22.0, log_ratio=0.31)
    paper = replace(paper, from_elsewhere=True)
    for ratio in (0.3, 0.0):
        moved = (replace(first, log_ratio=ratio), *westward()[1:])
        assert named(with_card(moved, paper)) == "cannot-tell"


def test_a_number_wrong_on_the_card_alone_is_no_mistake_of_who_arrived_as_planned() -> None:
    """Bug: 100 m too many on the card, the point seen and met: "a hundred metres", 72 %."""
    evidence = legs(0.5, 0.5, -1.0, ratios=[1.01, 1.0, 0.99])
    met = (replace(evidence[0], length_m=660.0, arrived=True), *evidence[1:])
    assert named(with_card(met, replace(RIGHT, log_ratio=math.log(1.152)))) == "within-skill"


def test_a_setting_that_equals_another_legs_is_no_quarter_turn_past_a_right_card() -> None:
    """Bug: the log had the azimuth of leg 2, and "an azimuth 90° out" was named and coached."""
    evidence = legs(88.0, 2.0, -1.0, angle_deg=-17.5)
    first = replace(
        evidence[0], set_turn_deg=90.5, other_magnetic_deg=((140.4, 0.75), (300.0, 0.25))
    )
    found = causes(with_card((first, *evidence[1:]), RIGHT))
    assert found["neighbour-azimuth"] > 2.0 * found["right-angle"]
    # Without his card nothing tells where it was made.
    assert causes((first, *evidence[1:]))["right-angle"] > found["right-angle"]


@pytest.mark.parametrize(("changes", "most"), [({}, 0.7), ({"walked_up": True}, 1.0)])
def test_a_count_ended_short_of_a_point_that_was_not_in_sight_is_not_ordinary(
    changes, most
) -> None:
    """Bug: 83 m short by count and walk, the point a search away: "ordinary error", 77 %."""
    evidence = legs(0.5, 0.5, -1.0, 0.0, ratios=[0.87, 0.97, 0.96, 0.98])
    short = replace(
        evidence[0], length_m=760.0, log_ratio_sd=0.02, log_count_ratio=math.log(0.89), **changes
    )
    counted = (short, *(replace(one, log_count_ratio=0.0) for one in evidence[1:]))
    ordinary = causes(counted)["within-skill"]
    assert ordinary < most
    assert changes == {} or ordinary > 0.7
