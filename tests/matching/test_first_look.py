"""A first look along the plan leaves most of a long course out and changes no answer."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from walks import DIFFICULTIES, make_walk

from audit.leg_card import work_out_card
from audit.matching.clean_track import clean_track
from audit.matching.first_look import NearEvidence, along_plan, near_evidence
from audit.matching.match_walk import match_walk
from audit.matching.pins import Pin
from audit.matching.stays import Stays
from audit.matching.walk_layout import lay_out
from audit.settings import Settings

S = Settings()
LOOKED_AT = replace(S.matching, first_look_from_legs=2)
AT_ONCE = replace(S.matching, first_look_from_legs=10_000)


def of_made(family: str, seed: int, legs: int):
    walk = make_walk(seed, replace(DIFFICULTIES[family], legs=(legs, legs)))
    card = work_out_card(walk.plan)
    return clean_track(walk.track, card.grid, S.cleaning), card


@pytest.mark.parametrize(
    ("family", "seed", "legs"), [("ordinary", 100_012, 14), ("novice", 100_013, 9)]
)
def test_a_course_gets_the_same_legs_with_the_look_and_without(family, seed, legs) -> None:
    clean, card = of_made(family, seed, legs)
    looked_at, at_once = (match_walk(clean, card, of) for of in (LOOKED_AT, AT_ONCE))
    assert any(leg.status == "walked" for leg in at_once.legs)
    for one, other in zip(looked_at.legs, at_once.legs, strict=True):
        assert (one.status, one.start_s, one.claim_s) == (
            other.status,
            other.start_s,
            other.claim_s,
        )
        assert one.confidence == pytest.approx(other.confidence, abs=1e-3)


def test_what_is_pinned_stays_open_wherever_it_lies() -> None:
    clean, card = of_made("trained", 100_014, 12)
    late_s = float(clean.time_s[-1]) - 60.0
    match = match_walk(clean, card, LOOKED_AT, [Pin(leg=1, end="claim", time_s=late_s)])
    assert match.legs[1].claim_s == pytest.approx(late_s)


def test_few_portions_are_left_on_a_long_course() -> None:
    clean, card = of_made("trained", 100_015, 26)
    evidence = lay_out(clean, card, S.matching).evidence
    near = near_evidence(Stays(evidence), card, S.matching)
    assert isinstance(near, NearEvidence)
    legs = [edge for edge in evidence.route.edges if edge.kind == "leg"]
    at_once, left = (sum(len(of.of_edge(edge).index) for edge in legs) for of in (evidence, near))
    assert left < 0.4 * at_once
    # Each point may have been reached where the walker was beside it.
    for node in range(27):
        windows = near._windows[evidence._place_of[node]]
        assert evidence.to_point_m[windows, node].min() < 60.0
    # The same portions by their numbers, so that their looks are the same.
    for edge in legs:
        at = near.of_edge(edge)
        assert np.array_equal(evidence.portions.first[at.index], at.first)
        assert set(at.index) <= set(evidence.of_edge(edge).index)


def test_a_short_course_is_weighed_at_once() -> None:
    clean, card = of_made("trained", 100_016, 5)
    evidence = lay_out(clean, card, S.matching).evidence
    assert near_evidence(Stays(evidence), card, S.matching) is evidence


def test_the_look_follows_the_planned_legs_and_may_pass_each_over() -> None:
    clean, card = of_made("trained", 100_016, 5)
    route = along_plan(lay_out(clean, card, S.matching).evidence.route, S.matching)
    steps = {(edge.source, edge.target, edge.kind) for edge in route.edges}
    assert steps == {(n, n + 1, kind) for n in range(5) for kind in ("link", "jump")}
