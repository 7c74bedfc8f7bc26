"""The first look that leaves most portions out of play changes no answer."""

from __future__ import annotations

from dataclasses import replace

import pytest
from walks import make_walk

from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.match_walk import match_walk
from audit.settings import Settings

S = Settings()


@pytest.mark.parametrize(("family", "seed"), [("trained", 100_011), ("ordinary", 100_012)])
def test_all_portions_weighed_give_the_same_legs(family, seed) -> None:
    walk = make_walk(seed, family)
    card = work_out_card(walk.plan)
    clean = clean_track(walk.track, card.grid, S.cleaning)
    few = match_walk(clean, card, S.matching)
    every = match_walk(clean, card, replace(S.matching, in_play_nats=1e6))
    assert any(leg.status == "walked" for leg in every.legs)
    for one, other in zip(few.legs, every.legs, strict=True):
        assert (one.status, one.start_s, one.claim_s) == (
            other.status,
            other.start_s,
            other.claim_s,
        )
        assert one.confidence == pytest.approx(other.confidence, abs=0.02)
