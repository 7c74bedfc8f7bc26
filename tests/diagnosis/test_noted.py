"""What a walker's log speaks for and against, weighed with the legs as they were walked."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace

import pytest
from diagnosis.made_evidence import explain, legs

from audit.diagnosis.explain import explain_walk
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()


def odds(evidence, leg: int = 0) -> dict[str, float]:
    """Probabilities of a leg; what is too improbable to be listed counts as nothing."""
    found = {one.cause: one.probability for one in explain(evidence, S)[leg]}
    return defaultdict(float, found)


def top(evidence, leg: int = 0):
    return explain(evidence, S)[leg][0]


def with_log(evidence, *set_turns):
    """What the walker's log says was set, less what should have been; None: nothing noted."""
    return tuple(
        replace(leg, set_turn_deg=turn) for leg, turn in zip(evidence, set_turns, strict=True)
    )


def test_log_that_shows_the_angle_left_out_settles_it() -> None:
    evidence = legs(-6.0, -8.5, angle_deg=-7.0)
    without = odds(evidence)["gm-angle-omitted"]
    noted = odds(with_log(evidence, -7.0, -7.0))["gm-angle-omitted"]
    assert without < 0.8 < noted


def test_log_of_the_right_azimuth_speaks_for_holding_and_not_for_setting() -> None:
    evidence = legs(*[-7.0] * 6, angle_deg=-7.0)
    without = odds(evidence)["gm-angle-omitted"]
    noted = odds(with_log(evidence, *[0.0] * 6))["gm-angle-omitted"]
    assert noted < 0.5 < without


def test_a_whole_log_as_the_card_does_not_make_a_wrong_angle_a_steady_turn() -> None:
    """Bug: "a steady turn (98 %)" of six legs turned by twice the angle, the log as the card.

    It may be written from the card: then it tells nothing of what was set, on all legs alike.
    """
    evidence = legs(-15.6, -10.4, -15.3, -19.4, -16.2, angle_deg=-7.5)
    noted = odds(with_log(evidence, *[0.2] * 5))
    assert noted["steady-bias"] < 0.6
    assert noted["steady-bias"] + noted["gm-angle-reversed"] > 0.9


@pytest.mark.parametrize(
    ("cause", "turned", "settled"),
    [
        ("reciprocal", -178.0, 0.8),
        ("right-angle", 91.0, 0.7),
        ("mils-as-degrees", 39.5, 0.6),  # 50 degrees are 889 mils
    ],
)
def test_log_of_what_the_walker_believed_to_have_set_hides_no_slip_on_the_compass(
    cause, turned, settled
) -> None:
    """Bug: a log "as the card" made a plain back azimuth "no cause stands out".

    Who follows the wrong end of the needle notes what he believes to have set.
    """
    walk = legs(1.0, -1.5, turned, 0.5, 1.0)
    as_card = with_log(walk, 0.0, 0.0, 0.0, 0.0, 0.0)
    shows = with_log(walk, 0.0, 0.0, walk[2].turn_deg, 0.0, 0.0)
    for one in (walk, as_card, shows):
        assert top(one, 2).cause == cause
        assert top(one, 2).probability > settled
        assert odds(one).get("steady-bias", 0.0) < 0.1


def test_log_as_the_card_beside_a_back_azimuth_makes_no_steady_turn() -> None:
    """Bug: only a steady turn beside the back azimuth went with a log that shows neither."""
    walk = legs(0.8, 2.7, -175.0, 2.8, 6.0, 5.8, angle_deg=12.0)
    noted = with_log(walk, *(0.0,) * 6)
    assert top(noted, 2).cause == "reciprocal"
    for leg in (1, 3, 4, 5):
        with_it, without = odds(noted, leg)["steady-bias"], odds(walk, leg)["steady-bias"]
        assert with_it == pytest.approx(without, abs=0.1)
    assert not explain_walk(noted, S).stories


def test_angle_applied_again_by_the_compass_is_in_no_log_of_the_walk() -> None:
    """Bug: with the card's azimuth in the log it was a steady turn "by no angle that is known"."""
    walk = legs(-10.4, -11.0, -9.7, -10.9, angle_deg=10.5)
    found = odds(with_log(walk, 0.0, 0.0, 0.0, 0.0))
    assert found["gm-angle-doubled"] > found["steady-bias"]
    assert found["steady-bias"] < 0.5
    by_sum = odds(with_log(walk, *(-10.5,) * 4))
    assert by_sum["gm-angle-doubled"] > 0.9


def test_log_that_notes_nothing_changes_nothing() -> None:
    evidence = legs(-6.0, 2.0, 15.0)
    assert odds(with_log(evidence, None, None, None), 2) == odds(evidence, 2)
