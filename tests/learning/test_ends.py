"""The trees of the second look are grown on what is right, and followed as they were grown."""

from __future__ import annotations

import json

import numpy as np
import pytest
from sklearn.tree import DecisionTreeRegressor

from audit.matching.open_ends import LOOKS
from audit.matching.second_look import ENDS
from audit.matching.trees import Trees
from learning.ends import GROWTH, SHIPPED, Moments, grow, told
from learning.one_tree import nodes_of, text_of


def made(legs=400, seed=3):
    """Legs of four moments: right is the one whose two readings are alike; alone, none tells."""
    chance = np.random.default_rng(seed)
    right = np.zeros((legs, 4))
    right[np.arange(legs), chance.integers(0, 4, legs)] = 1.0
    sign = np.where(chance.random((legs, 4)) < 0.5, 1.0, -1.0)
    other = np.where(right > 0, sign, -sign)
    looks = np.stack([sign, other, chance.normal(0.0, 1.0, (legs, 4))], axis=2)
    return Moments(
        family=np.repeat("made", 4 * legs),
        leg=np.repeat(np.arange(legs), 4),
        odds=np.full(4 * legs, 0.25),
        looks=looks.reshape(-1, 3) + chance.normal(0.0, 0.1, (4 * legs, 3)),
        right=right.ravel(),
    )


def test_trees_find_what_two_looks_say_together_and_neither_alone():
    trees, apart = grow(made(), 120), made(seed=4)
    nats = Trees.of(trees)(apart.looks)
    held = apart.odds * np.exp(nats)
    share = np.bincount(apart.leg, held * apart.right) / np.bincount(apart.leg, held)
    assert share.mean() > 0.9  # by the odds alone a quarter
    assert told(apart, trees).startswith("made 1.3863>0.")


def test_trees_are_followed_as_the_library_follows_them():
    chance = np.random.default_rng(8)
    looks, nats = chance.normal(0.0, 40.0, (900, 6)), chance.normal(0.0, 1.0, 900)
    tree = DecisionTreeRegressor(max_leaf_nodes=14, min_samples_leaf=20, random_state=1)
    tree.fit(looks, nats)
    ours = Trees.of([nodes_of(tree.tree_, GROWTH)])(looks)
    weight = tree.tree_.weighted_n_node_samples[tree.apply(looks)]
    told_less = weight / (weight + GROWTH.held_back)
    assert ours == pytest.approx(GROWTH.rate * told_less * tree.predict(looks), abs=6e-5)


def test_legs_with_nothing_to_choose_teach_nothing():
    of = made(legs=3)
    of.right[:4] = 0.0
    of.right[4:8] = 1.0
    left = of.of_teaching_legs()
    assert left.leg.tolist() == [0, 0, 0, 0]
    assert np.array_equal(left.looks, of.looks[8:])


def test_what_is_written_is_read_again():
    tree = [[0, 1.5, 1, 2], [0.5], [-0.25]]
    learnt = {"from": "some walks", "looks": LOOKS, "start": [tree], "claim": [tree, tree]}
    assert json.loads(text_of(learnt)) == json.loads(json.dumps(learnt))


def test_the_shipped_trees_were_grown_of_these_looks_on_development_walks():
    shipped = json.loads(SHIPPED.read_text(encoding="utf-8"))
    assert tuple(shipped["looks"]) == LOOKS
    assert "development seeds" in shipped["from"]
    assert all(len(shipped[end]) >= 10 for end in ENDS)
