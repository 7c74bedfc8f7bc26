"""Two mistakes told as "one of these": where a track shows both alike, and never on a right leg.

That single for double paces and a wrong ruler both give half the distance, and that the
paces counted tell them apart, is arithmetic: who measures half the distance on the map
counts half the paces of the card, who counts every step for a double pace counts all of them.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from diagnosis.made_evidence import explain, legs

from audit.diagnosis.finding import Finding
from audit.diagnosis.one_of_two import one_of_two
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()
HALF = {"single-double-pace", "wrong-ruler"}


def half_way(**log):
    """Five legs of half the distance."""
    ratios = (0.49, 0.51, 0.5, 0.52, 0.48)
    return tuple(replace(leg, **log) for leg in legs(0.5, -1.0, 1.5, 0.0, -0.5, ratios=ratios))


def test_half_the_distance_on_all_legs_is_a_ruler_or_single_paces() -> None:
    for findings in explain(half_way(), S).values():
        pair = one_of_two(findings, S)
        assert pair is not None
        assert set(pair.causes) == HALF
        assert pair.probability > 0.9
        assert all(pair.settles)


@pytest.mark.parametrize(
    ("share_counted", "cause"), [(1.0, "single-double-pace"), (0.5, "wrong-ruler")]
)
def test_the_paces_in_the_log_tell_the_two_apart(share_counted, cause) -> None:
    for findings in explain(half_way(log_count_ratio=math.log(share_counted)), S).values():
        assert (findings[0].cause, one_of_two(findings, S)) == (cause, None)
        assert findings[0].probability >= S.named


def found(**shares: float) -> tuple[Finding, ...]:
    return tuple(
        Finding(cause=name.replace("_", "-"), probability=share, evidence="")
        for name, share in shares.items()
    )


@pytest.mark.parametrize(
    "shares",
    [
        {"veer": 0.85, "handrail": 0.1},  # one is named alone
        {"veer": 0.5, "handrail": 0.3},  # two names need to be surer than one
        {"veer": 0.5, "within_skill": 0.45},  # no mistake may have been made
        {"cannot_tell": 0.5, "veer": 0.45},
        {"veer": 1.0},
        {},
    ],
)
def test_a_pair_is_told_only_where_both_are_mistakes_and_sure_together(shares) -> None:
    assert one_of_two(found(**shares), S) is None
    pair = one_of_two(found(veer=0.5, handrail=0.45), S)
    assert pair is not None
    assert pair.causes == ("veer", "handrail")


def test_a_turn_and_a_pace_that_were_both_made_are_no_choice() -> None:
    """Bug: a steady turn and a short pace, each made on every leg, were told as one of two."""
    turn, pace = found(steady_bias=0.5, pace_short=0.45)
    assert one_of_two((turn, pace), S) is not None
    assert one_of_two((replace(turn, made=0.95), replace(pace, made=0.97)), S) is None
    assert one_of_two((replace(turn, made=0.6), replace(pace, made=0.55)), S) is not None


def test_a_right_leg_is_never_told_as_one_of_two_mistakes() -> None:
    for findings in explain(legs(0.5, -1.0, 1.5, 0.0, -0.5), S).values():
        assert one_of_two(findings, S) is None
