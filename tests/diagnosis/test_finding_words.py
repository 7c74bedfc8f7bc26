"""The sentence of a finding: number predicted, number seen, in plain words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from diagnosis.made_evidence import legs

from audit.diagnosis.causes import CAUSES
from audit.diagnosis.finding_words import evidence_sentence, turn_words
from audit.diagnosis.line_shape import LineShape, OtherBearing
from audit.diagnosis.on_paper import OnPaper
from audit.diagnosis.predicted import predicted_for
from audit.diagnosis.walkers_scatter import WalkersScatter
from audit.measurement.leg_details import Bypass
from audit.settings import DiagnosisSettings


@pytest.mark.parametrize(
    ("turn", "digits", "words"),
    [
        (12.34, 1, "12.3° right"),
        (-12.34, 0, "12° left"),
        (0.04, 1, "0° off"),
        (-0.4, 0, "0° off"),
        (180.0, 0, "180° right"),
    ],
)
def test_turn_has_its_side_in_words(turn, digits, words) -> None:
    assert turn_words(turn, digits) == words


def said(leg, name: str) -> str:
    cause = next(cause for cause in CAUSES if cause.name == name)
    return evidence_sentence(name, leg, 0.0, predicted_for(cause, leg, DiagnosisSettings()))


def test_cause_says_what_it_predicts_and_what_was_seen() -> None:
    (leg,) = legs(-6.4, angle_deg=-7.0, sd_deg=1.0)
    assert said(leg, "gm-angle-omitted") == (
        "Predicts 7.0° left; walked 6.4° left of the planned azimuth, give or take 2.0°."
    )
    assert "14.0° left" in said(leg, "gm-angle-reversed")
    assert "7.0° right" in said(leg, "gm-angle-doubled")
    assert "1.6° left" in said(leg, "declination-for-gm-angle")


def test_distance_cause_says_metres_and_a_ratio_says_a_share() -> None:
    (leg,) = legs(0.0, ratios=(1.19,))  # 500 m: 95 m too far, 2 * 9.8 m either way
    assert said(leg, "hundred-miscounted") == (
        "Predicts 100 m too far; walked 95 m too far, give or take 10 m."
    )
    (half,) = legs(0.0, ratios=(0.52,))
    assert said(half, "single-double-pace") == (
        "Predicts 0.50 of the distance; walked 0.52 of it, give or take 0.01."
    )


def test_what_lies_off_the_prediction_is_told_with_the_walkers_own_scatter() -> None:
    """Bug: "Predicts 7.5° left; walked 0.7° left, give or take 1.1°", and the cause was named."""
    cause = {one.name: one for one in CAUSES}["gm-angle-omitted"]
    own = WalkersScatter(turn_deg=3.8, log_ratio=0.06)
    words = ", and from leg to leg this walker scatters by some 4°"
    for seen_deg, told in ((-0.7, True), (-6.4, False)):
        (leg,) = legs(seen_deg, angle_deg=-7.5, sd_deg=0.6)
        predicted = predicted_for(cause, leg, DiagnosisSettings())
        told_of = evidence_sentence(cause.name, leg, 0.0, predicted, scatter=own)
        assert (words in told_of) is told
    (leg,) = legs(0.0, ratios=(1.32,))
    cause = {one.name: one for one in CAUSES}["hundred-miscounted"]
    predicted = predicted_for(cause, leg, DiagnosisSettings())
    told_of = evidence_sentence(cause.name, leg, 0.0, predicted, scatter=own)
    assert "walker's distances scatter by some 6 %" in told_of


def test_step_aside_says_how_far_from_the_line_it_led() -> None:
    (leg,) = legs(0.0)
    step = Bypass(
        start_s=0.0, end_s=60.0, side="left", out_m=60.0, ahead_m=40.0, back_m=35.0,
        side_sd_m=3.0, equal=False,
    )  # fmt: skip
    leg = replace(leg, bypasses=(step,), aside_m=-22.0)
    assert said(leg, "bypass-unequal") == ("Predicts 25 m left; ended 22 m left of the line held.")


def test_point_cause_says_where_the_leg_should_have_ended() -> None:
    # Azimuth 90, 500 m; walked 11.3 degrees left of it for 510 m: 100 m north of the end.
    (leg,) = legs(-11.31, ratios=(1.02,))
    leg = replace(leg, planned_deg=90.0, end_m=(748_320.0, 4_058_280.0))
    assert (
        said(leg, "digit-wrong")
        == "Predicts an end 100 m north of the planned one, counted from where the leg began; "
        "ended 100 m north of it."
    )


def test_wide_interval_gets_no_tenths() -> None:
    (leg,) = legs(-6.4, sd_deg=2.0)
    sentence = evidence_sentence("cannot-tell", leg, 0.0)
    assert "Walked 6° left of the planned azimuth, give or take 4°" in sentence


def test_nothing_off_is_said_without_a_number() -> None:
    (leg,) = legs(0.02, ratios=(1.002,))
    sentence = evidence_sentence("within-skill", leg, 0.0)
    assert "Walked on the planned azimuth" in sentence
    assert "the distance right" in sentence


@pytest.mark.parametrize(("ratio", "words"), [(1.2, "20 % long"), (0.8, "20 % short")])
def test_ordinary_error_tells_turn_distance_and_common_turn(ratio, words) -> None:
    (leg,) = legs(2.0, ratios=(ratio,))
    sentence = evidence_sentence("within-skill", leg, -1.2)
    assert words in sentence
    assert "2.0° right" in sentence
    assert "lean over all legs, mistakes taken off, is put at 1.2° left" in sentence


@pytest.mark.parametrize(
    ("card_deg", "set_deg", "words"),
    [
        (None, 24.1, "set 24.1° right of the planned azimuth"),
        (None, 0.2, "set as planned"),
        (24.1, 24.1, "as the walker's own card says (24.1° right of the planned azimuth)"),
        (-1.0, 9.0, "10.0° right of what the walker's own card says (9.0° right of the planned"),
        (0.2, 24.1, "set 23.9° right of what the walker's own card says."),
    ],
)
def test_log_is_laid_beside_the_walkers_own_card(card_deg, set_deg, words) -> None:
    """Bug: a setting that equals his card's was told as "24.1° right of what the card says"."""
    (leg,) = legs(24.0)
    paper = None if card_deg is None else OnPaper(magnetic_turn_deg=card_deg)
    leg = replace(leg, set_turn_deg=set_deg, on_paper=paper)
    assert words in said(leg, "gm-angle-omitted")


def test_no_sentence_says_that_somebody_cheated() -> None:
    (leg,) = legs(2.0)
    for cause in ("within-skill", "cannot-tell", "gm-angle-omitted", "gm-angle-reversed"):
        assert "cheat" not in evidence_sentence(cause, leg, 0.0).lower()


def test_what_cannot_be_told_has_its_reason() -> None:
    (leg,) = legs(-15.0)
    doubtful = evidence_sentence("cannot-tell", replace(leg, confidence=0.5), 0.0)
    assert doubtful.endswith("whether this part of the walk is the leg's is in doubt.")
    stretch = OtherBearing(turn_deg=30.0, length_m=140.0, right_m=70.0, nats=12.0)
    swerved = replace(leg, shape=LineShape(bend_deg=0.0, bend_sd_deg=5.0, other=stretch))
    assert "a stretch of 140 m on another bearing" in evidence_sentence("cannot-tell", swerved, 0.0)
    assert "stands out" in evidence_sentence("cannot-tell", leg, 0.0)
    assert "stands out" not in evidence_sentence("within-skill", leg, 0.0)


def test_distance_that_was_recorded_in_part_is_no_distance_walked() -> None:
    """Bug: the recording began 346 m on, and the evidence was "46 % short", "346 m short"."""
    (leg,) = legs(0.0, ratios=(0.54,))
    late = replace(leg, under_way=True, start_off_m=(-318.0, 137.0))
    ordinary = evidence_sentence("within-skill", late, 0.0)
    assert "short" not in ordinary
    assert "its distance recorded in part" in ordinary
    assert "recorded from 346 m north-west of its start on" in ordinary
    for name in ("hundred-miscounted", "single-double-pace"):
        assert said(late, name).endswith("; its distance recorded in part.")


@pytest.mark.parametrize("turn", [-178.2, 178.2])
def test_half_a_circle_is_told_on_the_side_that_was_seen(turn) -> None:
    """Bug: "Predicts 180.0° right; walked 178.2° left"."""
    (leg,) = legs(turn, sd_deg=1.0)
    side = "left" if turn < 0.0 else "right"
    assert said(leg, "reciprocal").startswith(f"Predicts 180.0° {side}; walked 178.2° {side}")
