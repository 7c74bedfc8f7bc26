"""The guard: the matching may not become worse than recorded by more than chance.

The record is made anew with ``python -m accuracy --seeds reporting --walks N --record``.
"""

from __future__ import annotations

import json
from dataclasses import replace
from itertools import pairwise

import pytest
from walks import make_walk

from accuracy.guard import (
    RECORD,
    RIVALS,
    Recorded,
    complaints,
    lowest_by_chance,
    read_record,
    sample,
    write_record,
    write_rivals,
)
from accuracy.nearest_points import nearest_points
from accuracy.scoring import score_walk
from accuracy.seeds import SEEDS, first_seeds

WALKS = 24
"""Walks a difficulty: some 500 legs in all, in about 20 processor seconds."""
BUDGET_S = 50.0

RECORDED = Recorded(walks=100, legs_right=0.9, legs_right_se=0.01)


def test_the_matching_is_as_good_as_recorded():
    recorded = read_record()
    assert recorded, "tests/accuracy/recorded.json is missing: record the accuracy anew"
    scores = sample(tuple(recorded), WALKS, BUDGET_S)
    assert all(len(of) >= 8 for of in scores.values()), "too slow to judge"
    assert not complaints(recorded, scores)


def test_the_guard_complains_of_a_method_that_is_worse():
    seeds = first_seeds("guard", 12)
    scores = [
        score_walk(walk, nearest_points(walk)) for walk in (make_walk(s, "ordinary") for s in seeds)
    ]
    (sentence,) = complaints({"ordinary": RECORDED}, {"ordinary": scores})
    assert "ordinary" in sentence
    assert "0.900" in sentence


def test_the_guard_is_content_with_what_was_recorded():
    walks = [make_walk(seed, "clean") for seed in first_seeds("guard", 5)]
    right = [
        score_walk(walk, [(leg.start_s, leg.claim_s) for leg in walk.truth.legs]) for walk in walks
    ]
    perfect = replace(RECORDED, legs_right=1.0, legs_right_se=0.0)
    assert complaints({"clean": perfect}, {"clean": right}) == []


def test_chance_reaches_three_standard_errors_of_record_and_sample_down():
    # Sample of a quarter of the walks: twice the error, so sqrt(1 + 4) of it in all.
    assert lowest_by_chance(RECORDED, 25) == pytest.approx(0.9 - 3.0 * 0.01 * 5.0**0.5)


def test_the_record_can_be_read_back(tmp_path):
    path = tmp_path / "recorded.json"
    figures = {
        "walks": 100,
        "legs_right": 0.9,
        "legs_right_se": 0.01,
        "called_walked": float("nan"),
        "processor_s": 0.2,
    }
    write_record("reporting", 100, {"ordinary": {"project": figures}}, path)
    assert read_record(path) == {"ordinary": RECORDED}
    assert read_record(tmp_path / "none.json") == {}


def test_rivals_are_kept_beside_each_other_while_the_walks_are_the_same(tmp_path):
    path = tmp_path / "rivals.json"
    one, other = ({"ordinary": {name: {"legs_right": 0.5}}} for name in ("one", "other"))
    write_rivals("reporting", 100, one | {"novice": {"project": {"legs_right": 1.0}}}, path)
    write_rivals("reporting", 100, other, path)
    kept = json.loads(path.read_text())["figures"]
    assert kept["ordinary"] == {"one": {"legs_right": 0.5}, "other": {"legs_right": 0.5}}
    assert kept["novice"] == {}
    write_rivals("reporting", 50, other, path)
    assert json.loads(path.read_text())["figures"] == other


def test_the_rivals_kept_walked_the_same_walks_and_are_behind():
    ours, rivals = (json.loads(path.read_text()) for path in (RECORD, RIVALS))
    assert (rivals["seeds"], rivals["walks"]) == (ours["seeds"], ours["walks"])
    for family, of in ours["figures"].items():
        assert set(rivals["figures"][family]) == {"prototype", "nearest points", "time warping"}
        for rival in rivals["figures"][family].values():
            assert rival["legs"] == of["legs"]
            assert rival["legs_right"] < of["legs_right"]


def test_no_seed_serves_two_purposes():
    ranges = sorted(SEEDS.values(), key=lambda seeds: seeds.start)
    assert all(a.stop <= b.start for a, b in pairwise(ranges))
    with pytest.raises(ValueError, match="seeds"):
        first_seeds("guard", 10**6)
