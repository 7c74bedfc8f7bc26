"""What turned each leg, before distance and match have their say."""

from __future__ import annotations

import numpy as np
import pytest
from diagnosis.made_evidence import legs
from hypothesis import given, settings
from hypothesis import strategies as st

from audit.diagnosis.direction_odds import direction_odds
from audit.diagnosis.distance_odds import distance_odds
from audit.diagnosis.walk_stories import COLUMNS, STRAY, WITHIN, walk_stories
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()


@settings(max_examples=80, deadline=None)
@given(
    turns=st.lists(st.floats(-180.0, 180.0), min_size=1, max_size=10),
    angle=st.floats(-30.0, 30.0),
)
def test_kinds_of_a_leg_add_up_to_one(turns, angle) -> None:
    odds = direction_odds(legs(*turns, angle_deg=angle), S)
    assert odds.each.shape == (len(turns), COLUMNS)
    assert odds.each.sum(axis=1) == pytest.approx(1.0, abs=1e-9)
    assert (odds.each >= 0.0).all()


def test_stories_cover_all_walks_and_all_their_legs() -> None:
    stories = walk_stories(S)
    assert sum(story.prior for story in stories) == pytest.approx(1.0)
    for story in stories:
        assert story.share.sum() == pytest.approx(1.0)
        assert (story.share >= 0.0).all()
        assert story.bias_prior.sum() == pytest.approx(1.0)
        assert np.diff(story.bias_deg).max() <= 1.25  # deg: no scatter falls between


@pytest.mark.parametrize("bias", [-5.0, -2.0, 0.0, 3.0, 12.0])
def test_turn_on_all_legs_is_reckoned(bias) -> None:
    turns = [bias + extra for extra in (0.5, -0.5, 1.0, -1.0, 0.2, -0.2, 0.8, -0.8)]
    odds = direction_odds(legs(*turns, angle_deg=40.0, convergence_deg=0.0), S)
    # Few legs pull toward nothing, many toward what they show.
    assert odds.bias_deg == pytest.approx(bias, abs=1.0 + 0.1 * abs(bias))


def test_steady_turn_is_a_stray_and_not_skill() -> None:
    odds = direction_odds(legs(*[15.0] * 8, angle_deg=-3.0), S)
    assert odds.each[:, STRAY].min() > 0.9
    assert odds.each[:, WITHIN].max() < 0.05


def test_distances_are_judged_about_the_walkers_own_pace() -> None:
    even = distance_odds(legs(*[0.0] * 6, ratios=[1.08] * 6), S)
    one_out = distance_odds(legs(*[0.0] * 6, ratios=[1.0] * 5 + [1.3]), S)
    assert even.min() > 0.8
    assert one_out[5] < 0.1 < 0.8 < one_out[:5].min()


def test_uncertain_distance_is_judged_more_mildly() -> None:
    from dataclasses import replace

    sure = legs(0.0, 0.0, 0.0, ratios=(1.0, 1.0, 1.25))
    unsure = (*sure[:2], replace(sure[2], log_ratio_sd=0.15))
    assert distance_odds(unsure, S)[2] > 0.7 > distance_odds(sure, S)[2]
