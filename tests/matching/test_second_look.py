"""The second look moves the odds of a leg among its open moments, and nothing else."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from accuracy.project import match_of
from walks import make_walk

from audit.matching import read_legs, second_look
from audit.matching.open_ends import LOOKS, LookedAt
from audit.matching.second_look import ENDS
from audit.matching.trees import Trees
from audit.settings import Settings

SETTINGS = Settings()
BLIND = replace(SETTINGS, matching=replace(SETTINGS.matching, second_look_weight=0.0))


@pytest.fixture(scope="module")
def looked():
    """What the second look of an ordinary walk is given, and gives."""
    seen = []
    plain = second_look.looked_at_again

    def noting(odds, readings, laid_out, settings):
        seen.append((odds, readings, laid_out, plain(odds, readings, laid_out, settings)))
        return seen[-1][3]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(read_legs, "looked_at_again", noting)
        match_of(make_walk(100_006, "novice"), SETTINGS)
    return seen[0]


def test_how_likely_a_leg_was_walked_stays(looked):
    before, _, _, after = looked
    for one, other in zip(before, after.odds, strict=True):
        assert one.keys() == other.keys()
        for kind, of in other.items():
            assert of.share == pytest.approx(one[kind].share)
            assert of.probability.sum() == pytest.approx(one[kind].share)


def test_the_odds_move_and_only_of_legs_that_were_walked(looked):
    before, readings, _, after = looked
    moved = [
        np.abs(other[kind].probability - of.probability).max() > 1e-3
        for one, other, reading in zip(before, after.odds, readings, strict=True)
        for kind, of in one.items()
        if kind == "leg" and reading.kind == "leg"
    ]
    assert any(moved)
    for one, other, reading in zip(before, after.odds, readings, strict=True):
        for kind, of in one.items():
            if kind != "leg" or reading.kind != "leg":
                assert np.array_equal(other[kind].probability, of.probability)


def test_a_moment_that_was_no_rival_is_given_nothing(looked):
    before, _, laid_out, _ = looked
    matching = SETTINGS.matching
    looked_at = LookedAt(before, looked[1], laid_out, matching)
    for end in ENDS:
        open_to_look = looked_at.open_ends(end)
        assert len(open_to_look.leg)
        assert open_to_look.odds.min() >= matching.second_look_share
        said = second_look._by_leg(open_to_look, end, laid_out.cuts.path_m, matching)
        for leg, (cuts, nats) in said.items():
            odds = open_to_look.odds[open_to_look.leg == leg]
            assert (odds * np.exp(nats)).sum() == pytest.approx(odds.sum())
            others = np.setdiff1d(np.arange(len(laid_out.cuts)), cuts)
            assert not second_look._looked_up((cuts, nats), others).any()


def test_trees_that_say_nothing_change_nothing(monkeypatch):
    walk = make_walk(100_007, "ordinary")
    silent = Trees.of([[[0.0]]])
    blind = match_of(walk, BLIND)
    monkeypatch.setattr(second_look, "learnt_trees", lambda: {"start": silent, "claim": silent})
    assert match_of(walk, SETTINGS).legs == blind.legs


def test_a_leg_read_by_a_slip_is_left_as_it_is(looked):
    """Bug: held against the planned leg, the true ends of one from a wrong grid line lost."""
    before, readings, laid_out, _ = looked
    plain = LookedAt(before, readings, laid_out, SETTINGS.matching)
    slipped = int(plain.open_ends("claim").leg[0])
    odds = [dict(of) for of in before]
    of = odds[slipped]["leg"]
    odds[slipped]["leg"] = replace(of, by_slip=0.6 * of.share)
    without = LookedAt(odds, readings, laid_out, SETTINGS.matching)
    for end in ENDS:
        left = set(plain.open_ends(end).leg.tolist()) - {slipped}
        assert set(without.open_ends(end).leg.tolist()) == left
    after = second_look.looked_at_again(odds, readings, laid_out, SETTINGS.matching)
    assert after.odds[slipped]["leg"] is odds[slipped]["leg"]


def test_a_leg_read_by_a_slip_tells_nothing_of_the_others(looked):
    """Bug: how he walked a leg that was planned otherwise counted as how this walker walks."""
    before, readings, laid_out, _ = looked
    plain = LookedAt(before, readings, laid_out, SETTINGS.matching)
    legs = np.unique(plain.open_ends("claim").leg).tolist()
    odds = [dict(of) for of in before]
    for leg in legs[1:]:
        odds[leg]["leg"] = replace(odds[leg]["leg"], by_slip=odds[leg]["leg"].share)
    alone = LookedAt(odds, readings, laid_out, SETTINGS.matching).open_ends("claim")
    assert set(alone.leg.tolist()) == {legs[0]}
    others = [number for number, name in enumerate(LOOKS) if name.startswith("others_")]
    assert (alone.looks[:, others] == -1.0).all()
    next_to = [number for number, name in enumerate(LOOKS) if name.startswith("next_to_along")]
    assert (alone.looks[:, next_to] == -999.0).all()


def test_odds_spread_evenly_leave_no_moment_to_look_at():
    """Bug: where none of hundreds of moments held the least share, the debrief was lost."""
    little = replace(SETTINGS, matching=replace(SETTINGS.matching, second_look_share=0.9))
    walk = make_walk(140_001, "ordinary")
    assert len(match_of(walk, little).legs) == len(walk.plan.legs)


def test_trees_of_other_looks_are_refused(monkeypatch):
    monkeypatch.setattr(second_look, "LOOKS", ("something else",))
    second_look.learnt_trees.cache_clear()
    try:
        with pytest.raises(ValueError, match="learn it anew"):
            second_look.learnt_trees()
    finally:
        second_look.learnt_trees.cache_clear()


def test_the_trees_ask_for_looks_that_there_are():
    for trees in second_look.learnt_trees().values():
        assert trees.reading.max() < len(second_look.LOOKS)
        inner = trees.reading >= 0
        assert (trees.below[inner] > 0).all()
        assert (trees.above[inner] > 0).all()
        assert np.abs(trees.nats).max() <= 0.3
