"""Points after the last leg that was walked: gone to, or passed on the way home."""

from __future__ import annotations

import datetime as dt
import math

import numpy as np
from debriefing.hand_walked import plan_of, track_of
from measurement.hand_made import BEGIN, HandWalk

from audit.debriefing.doubts import doubts
from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.gone_to_later import with_points_gone_to
from audit.matching.leg_match import LegMatch, Match
from audit.matching.walk_layout import lay_out
from audit.settings import Settings
from audit.units import direction_degrees

COURSE = ((0.0, 0.0), (400.0, 0.0), (400.0, 400.0), (0.0, 450.0), (-350.0, 150.0), (-700.0, 300.0))
SETTINGS = Settings()


def read(*way: tuple[float, float]):
    """Read anew who walked legs 1 and 2, resting, and then by some places without a stop."""
    walk, here, claims_s = HandWalk().halt(90), np.zeros(2), []
    for number, place in enumerate((*COURSE[1:3], *way)):
        east, north = np.array(place) - here
        metres = 1.25 * round(math.hypot(east, north) / 1.25)
        walk, here = walk.walk(direction_degrees(east, north), metres), np.array(place)
        claims_s.append(BEGIN + len(walk.places) - 1.0)
        walk = walk.halt(60) if number < 2 else walk
    places = np.array(walk.places)
    card = work_out_card(plan_of(*COURSE, date=dt.datetime.fromtimestamp(BEGIN, dt.UTC).date()))
    track = track_of(BEGIN + np.arange(len(places)), places)
    clean = clean_track(track, card.grid, SETTINGS.cleaning)
    legs = [
        LegMatch(leg=n, status="walked", start_s=claims_s[n] - 300.0, claim_s=claims_s[n])
        for n in range(2)
    ]
    legs += [LegMatch(leg=n, status="not-started", confidence=0.96) for n in (2, 3, 4)]
    laid_out = lay_out(clean, card, SETTINGS.matching)
    found = with_points_gone_to(legs, laid_out, card, SETTINGS.matching)
    match = Match(legs=found, noise_m=3.0, halts=np.empty((0, 2)), bias_deg=0.0, pace_scale=1.0,
                  cost=0.0)  # fmt: skip
    return found[2:], doubts(card, match, clean, SETTINGS.quality)


def test_who_passed_all_points_near_the_end_in_another_order_did_not_give_up() -> None:
    """Bug: three legs were "not started", 5 of 8 points reached, of a walk by all its points."""
    legs, _ = read(COURSE[4], COURSE[3], COURSE[5], (-1000.0, 500.0))
    assert [(leg.status, leg.confidence) for leg in legs] == [("skipped", 0.96)] * 3


def test_who_passes_the_last_point_alone_may_have_given_up_or_left_points_out() -> None:
    """Bug: he was taken to have given up, 96 % sure, whatever he passed without a stop."""
    legs, told = read((0.0, 100.0), COURSE[5], (-1000.0, 500.0))
    assert [(leg.status, leg.confidence) for leg in legs] == [("not-started", 0.48)] * 3
    assert [leg.runner_up.status for leg in legs] == ["skipped"] * 3
    assert "a later point without a stop" in told[2]
    assert "not started" in told[2]
    assert "left out (48 %)" in told[2]


def test_who_goes_home_past_none_of_the_later_points_has_given_up() -> None:
    legs, _ = read((0.0, 0.0), (-100.0, -500.0))
    assert [(leg.status, leg.confidence) for leg in legs] == [("not-started", 0.96)] * 3


def test_a_point_passed_far_round_about_was_not_gone_to() -> None:
    """Of who walks on for kilometres it says nothing that a later point lies on his way."""
    far = ((2000.0, 400.0), (2000.0, 3000.0), (-700.0, 3000.0), COURSE[5], (-1000.0, 0.0))
    legs, _ = read(*far)
    assert [(leg.status, leg.confidence) for leg in legs] == [("not-started", 0.96)] * 3
