"""How parts of the weighing share out what they weigh: laws that must hold, sums on paper."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from diagnosis.made_evidence import legs
from measurement.hand_made import card_of

from audit.diagnosis.accounts import _next_leg_odds
from audit.diagnosis.gather_evidence import other_azimuths
from audit.diagnosis.makes_it_again import _scale
from audit.diagnosis.weigh_walk import weigh_walk
from audit.guide.cause_names import WITHIN_SKILL
from audit.settings import DiagnosisSettings

S = DiagnosisSettings()


def test_a_next_leg_that_is_off_the_other_way_speaks_for_a_wrong_place():
    (leg,) = legs(0.0)
    off = replace(leg, next_m=400.0, next_off_m=(-200.0, 0.0))
    # From the wrong place it ends just right; as planned, by half its length off.
    assert _next_leg_odds(off, (200.0, 0.0), S) == S.next_leg_odds_most
    right = replace(leg, next_m=400.0, next_off_m=(0.0, 0.0))
    assert _next_leg_odds(right, (200.0, 0.0), S) == pytest.approx(
        1.0 - S.next_leg_carried, abs=1e-4
    )
    # As far from the one as from the other: next to both ways alike, so that nothing is said.
    between = replace(leg, next_m=400.0, next_off_m=(-10.0, 0.0))
    assert _next_leg_odds(between, (20.0, 0.0), S) == pytest.approx(1.0, abs=0.03)


def test_what_the_slip_gains_the_ordinary_legs_lose():
    names, shares = ((WITHIN_SKILL,), ("reciprocal",), ("bezel-clicks",)), np.array([0.7, 0.2, 0.1])
    scale = _scale(names, shares, "bezel-clicks", 2.0)
    assert scale.tolist() == pytest.approx([1.0 - 0.1 / 0.7, 1.0, 2.0])
    assert (shares * scale).sum() == pytest.approx(1.0)


def test_no_leg_shows_a_mistake_more_often_than_the_walk_has_it():
    """Of one mistake several sizes are weighed: their shares add up, leg by leg and in all."""
    weighed = weigh_walk(legs(*[0.0] * 6, ratios=[1.2] * 6), S)
    assert max(weighed.walk_causes.values()) > 0.3
    for cause, on in weighed.on.items():
        assert (on >= 0.0).all(), cause
        assert (on <= weighed.walk_causes[cause] + 1e-9).all(), cause
    shared = [one for one in weighed.on if weighed.walk_causes[one] > 0.3]
    for cause in shared:
        assert weighed.on[cause].max() > 0.8 * weighed.walk_causes[cause]


def test_the_azimuths_of_the_legs_next_to_it_weigh_most():
    card = card_of((0, 0), (400, 0), (400, 300), (0, 300), (0, 700), (300, 900), (600, 900))
    weights = [weight for _, weight in other_azimuths(card, 2, S)]
    each, among = S.neighbour_weights
    assert weights == pytest.approx([among / 3, each, each, among / 3, among / 3])
