"""How far the odds of a leg may be trusted is told by its looks, and moves nothing else."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from accuracy.project import match_of
from walks import make_walk

from audit.matching import how_sure, read_legs
from audit.matching.how_sure import SURE_LOOKS, nats_of, sure_looks, trust_in
from audit.matching.open_ends import LOOKS
from audit.matching.pins import Pin
from audit.matching.trees import Trees
from audit.settings import Settings

SETTINGS = Settings()
S = SETTINGS.matching
DEAF = replace(SETTINGS, matching=replace(S, trust_weight=0.0))


@pytest.fixture(scope="module")
def twice():
    """How the legs of a novice's walk were read, with the cuts of the walk."""
    seen = []
    plain = read_legs.trust_in

    def noting(by_odds, readings, looked, cuts, settings):
        seen.append((by_odds, readings, looked, cuts))
        return plain(by_odds, readings, looked, cuts, settings)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(read_legs, "trust_in", noting)
        match_of(make_walk(100_006, "novice"), SETTINGS)
    return seen[0]


def look(row, name):
    return row[SURE_LOOKS.index(name)]


def test_each_look_has_a_name_of_its_own() -> None:
    assert len(set(SURE_LOOKS)) == len(SURE_LOOKS)
    assert {f"{end}_{name}" for end in ("start", "claim") for name in LOOKS} <= set(SURE_LOOKS)


def test_odds_are_told_in_nats_no_further_than_one_in_a_million() -> None:
    assert nats_of(0.5) == 0.0
    assert nats_of(0.9) == pytest.approx(math.log(9.0)) == pytest.approx(-nats_of(0.1))
    assert nats_of(1.0) == pytest.approx(14.0, abs=1e-6)
    assert nats_of(0.0) == pytest.approx(-14.0, abs=1e-6)


def test_the_legs_walked_are_looked_at_and_no_others(twice) -> None:
    of = sure_looks(*twice, S)
    walked = [
        leg
        for leg, (before, now) in enumerate(zip(*twice[:2], strict=True))
        if before.kind == now.kind == "leg"
    ]
    assert of.leg.tolist() == walked
    assert of.looks.shape == (len(walked), len(SURE_LOOKS))
    assert np.isfinite(of.looks).all()


def test_the_looks_of_a_leg_are_its_own_and_those_of_the_legs_beside_it(twice) -> None:
    by_odds, readings, seen, cuts = twice
    of = sure_looks(*twice, S)
    nats, seen_at_claim = [nats_of(reading.right) for reading in readings], 0
    for leg, row in zip(of.leg.tolist(), of.looks, strict=True):
        assert look(row, "right_nats") == nats[leg]
        assert look(row, "right_by_odds_nats") == nats_of(by_odds[leg].right)
        assert look(row, "leg_before_nats") == (nats[leg - 1] if leg else 14.0)
        assert look(row, "others_nats") == pytest.approx(np.mean(np.delete(nats, leg)))
        moved_s = abs(cuts.time_s[readings[leg].second] - cuts.time_s[by_odds[leg].second])
        assert look(row, "claim_moved_s") == pytest.approx(moved_s)
        # Both ends are near what was read at least as often as both of them together.
        for end in ("start", "claim"):
            assert look(row, f"{end}_near_nats") >= look(row, "right_nats") - 1e-6
        opened = seen.open_ends["claim"]
        mine = opened.cut[opened.leg == leg]
        assert look(row, "claim_open_moments") == len(mine)
        if readings[leg].second in mine:
            mine_off_m = opened.looks[opened.leg == leg][:, LOOKS.index("claim_off_m")]
            at = mine.tolist().index(readings[leg].second)
            assert look(row, "claim_claim_off_m") == mine_off_m[at]
            seen_at_claim += 1
    assert seen_at_claim


def test_a_moment_away_from_the_end_that_was_read_is_weighed(twice) -> None:
    """On paper: three claims, two of them within the tolerance, the third with 0.3 of the odds."""
    seen = twice[2]
    leg = int(sure_looks(*twice, S).leg[0])
    cuts = SimpleNamespace(
        time_s=np.array([0.0, 100.0, 500.0, 520.0, 530.0, 900.0]),
        path_m=np.array([0.0, 100.0, 500.0, 510.0, 515.0, 900.0]),
    )
    odds = SimpleNamespace(
        first=np.zeros(3, dtype=int), second=np.array([2, 3, 5]), share=1.0,
        probability=np.array([0.5, 0.2, 0.3]),
    )  # fmt: skip
    opened = SimpleNamespace(
        leg=np.full(2, leg), cut=np.array([1, 4]), looks=np.arange(2.0 * len(LOOKS)).reshape(2, -1)
    )
    of_all = [dict(of) for of in seen.odds]
    of_all[leg] = {"leg": odds}
    on_paper = SimpleNamespace(odds=of_all, open_ends={"claim": opened})
    near, away, spread, moments, *looks = how_sure._of_an_end(leg, "claim", 3, on_paper, cuts, S)
    assert near == pytest.approx(math.log(0.7 / 0.3))
    assert away == pytest.approx(math.log(0.3 / 0.7))
    assert spread == pytest.approx(-sum(p * math.log(p) for p in (0.5, 0.2, 0.3)))
    assert moments == 2
    assert looks == opened.looks[1].tolist()  # of cut 4, ten seconds on, and not of cut 1


def test_what_is_said_is_bounded_and_may_be_left_out(twice, monkeypatch) -> None:
    for nats, said in ((1.25, 1.25), (9.0, S.trust_most_nats), (-9.0, -S.trust_most_nats)):
        trees = Trees.of([[[nats]]])
        monkeypatch.setattr(how_sure, "learnt_trust", lambda trees=trees: trees)
        assert set(trust_in(*twice, S).values()) == {said}
    assert set(trust_in(*twice, DEAF.matching).values()) == {0.0}
    nothing = SimpleNamespace(leg=np.zeros(0, dtype=int))
    unseen = SimpleNamespace(odds=twice[2].odds, open_ends={"start": nothing, "claim": nothing})
    assert trust_in(twice[0], twice[1], unseen, twice[3], S) == {}


def test_only_how_sure_a_leg_is_moves() -> None:
    walk = make_walk(100_007, "novice")
    heard, deaf = match_of(walk, SETTINGS).legs, match_of(walk, DEAF).legs
    assert any(one.confidence != other.confidence for one, other in zip(heard, deaf, strict=True))
    for one, other in zip(heard, deaf, strict=True):
        plain = {"confidence": 0.0, "runner_up": None}
        assert replace(one, **plain) == replace(other, **plain)
        if one.runner_up:
            assert one.runner_up.probability <= 1.0 - one.confidence


def test_odds_that_are_not_trusted_make_no_other_reading_likelier(monkeypatch) -> None:
    """Bug: "likelier" was told of the second best wherever the looks spoke against the best."""
    trees = Trees.of([[[-2.5]]])
    monkeypatch.setattr(how_sure, "learnt_trust", lambda: trees)
    others = 0
    for seed in (100_300, 100_303):
        walk = make_walk(seed, "worst-day")
        heard, deaf = match_of(walk, SETTINGS).legs, match_of(walk, DEAF).legs
        for one, other in zip(heard, deaf, strict=True):
            if other.runner_up and other.runner_up.probability <= other.confidence:
                assert one.runner_up.probability <= one.confidence
                others += one.confidence < other.confidence
    assert others


def test_a_leg_with_a_settled_end_is_told_by_its_odds(monkeypatch) -> None:
    """Bug: of a leg whose claim was given it was told how well that looks like a claim."""
    walk = make_walk(100_006, "novice")
    plain = match_of(walk, SETTINGS)
    leg = next(of.leg for of in plain.legs if of.status == "walked")
    pin = Pin(leg=leg, end="claim", time_s=plain.legs[leg].claim_s)
    monkeypatch.setattr(how_sure, "learnt_trust", lambda: Trees.of([[[-2.5]]]))
    heard, deaf = (match_of(walk, of, [pin]).legs for of in (SETTINGS, DEAF))
    assert heard[leg].confidence == deaf[leg].confidence
    assert any(one.confidence < other.confidence for one, other in zip(heard, deaf, strict=True))


def test_trees_of_other_looks_are_refused(monkeypatch) -> None:
    monkeypatch.setattr(how_sure, "SURE_LOOKS", ("something else",))
    how_sure.learnt_trust.cache_clear()
    try:
        with pytest.raises(ValueError, match="learn it anew"):
            how_sure.learnt_trust()
    finally:
        how_sure.learnt_trust.cache_clear()


def test_the_trees_ask_for_looks_that_there_are() -> None:
    trees = how_sure.learnt_trust()
    assert trees.reading.max() < len(SURE_LOOKS)
    # Some hundred small steps, none of which decides.
    assert len(trees.nats) >= 100
    assert np.abs(trees.nats).max() < 0.2
