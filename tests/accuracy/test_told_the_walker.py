"""What the matching is told in place of its own estimate is what the walk was made with."""

from __future__ import annotations

import datetime as dt

import pytest
from walks import make_walk

from accuracy.project import match_of, portions_of
from accuracy.scoring import score_walk
from accuracy.told_the_walker import as_set, legs_right, true_walker
from audit.leg_card import work_out_card
from audit.settings import Settings

WALK = make_walk(100_004, "ordinary")


def test_told_nothing_it_is_the_matching_itself() -> None:
    right = score_walk(WALK, portions_of(match_of(WALK))).legs_right
    assert legs_right(WALK, walker=False, legs=False) == right


def test_the_walker_told_is_the_one_that_was_made() -> None:
    told = true_walker(WALK, Settings())
    assert (told.bias_deg, told.pace_scale) == (WALK.truth.bias_deg, WALK.truth.pace_factor)
    day = dt.datetime.fromtimestamp(float(WALK.track.time_s[0]), dt.UTC).date()
    card = work_out_card(WALK.plan, track_date=day)
    for leg, truth in zip(card.legs, WALK.truth.legs, strict=True):
        if truth.set_azimuth_deg is not None and truth.count_m is not None:
            told_leg = as_set(leg, truth)
            assert told_leg.azimuth.degrees == pytest.approx(truth.set_azimuth_deg % 360.0)
            assert told_leg.distance_m == max(truth.count_m, 30.0)


def test_told_all_it_still_matches() -> None:
    assert 0 < legs_right(WALK, walker=True, legs=True) <= len(WALK.truth.legs)
