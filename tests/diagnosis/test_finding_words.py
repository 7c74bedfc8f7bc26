"""The sentence of a finding: number predicted, number seen, in plain words."""

from __future__ import annotations

import pytest
from diagnosis.made_evidence import legs

from audit.diagnosis.finding_words import evidence_sentence, turn_words


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


def test_cause_says_what_it_predicts_and_what_was_seen() -> None:
    (leg,) = legs(-6.4, angle_deg=-7.0, sd_deg=1.0)
    assert evidence_sentence("gm-angle-omitted", leg, 0.0) == (
        "Predicts 7.0° left; walked 6.4° left of the card, give or take 2.0°."
    )
    assert "14.0° left" in evidence_sentence("gm-angle-reversed", leg, 0.0)
    assert "7.0° right" in evidence_sentence("gm-angle-doubled", leg, 0.0)
    assert "1.6° left" in evidence_sentence("declination-for-gm-angle", leg, 0.0)


def test_wide_interval_gets_no_tenths() -> None:
    (leg,) = legs(-6.4, sd_deg=2.0)
    sentence = evidence_sentence("cannot-tell", leg, 0.0)
    assert "Walked 6° left of the card, give or take 4°" in sentence


def test_nothing_off_is_said_without_a_number() -> None:
    (leg,) = legs(0.02, ratios=(1.002,))
    sentence = evidence_sentence("within-skill", leg, 0.0)
    assert "Walked on the card's azimuth" in sentence
    assert "the distance right" in sentence


@pytest.mark.parametrize(("ratio", "words"), [(1.2, "20 % long"), (0.8, "20 % short")])
def test_ordinary_error_tells_turn_distance_and_common_turn(ratio, words) -> None:
    (leg,) = legs(2.0, ratios=(ratio,))
    sentence = evidence_sentence("within-skill", leg, -1.2)
    assert words in sentence
    assert "2.0° right" in sentence
    assert "on all legs together about 1.2° left" in sentence


def test_no_sentence_says_that_somebody_cheated() -> None:
    (leg,) = legs(2.0)
    for cause in ("within-skill", "cannot-tell", "gm-angle-omitted", "gm-angle-reversed"):
        assert "cheat" not in evidence_sentence(cause, leg, 0.0).lower()
