"""How far odds may be trusted is learnt from what was right."""

from __future__ import annotations

import json

import numpy as np
import pytest

from audit.matching.how_sure import SURE_LOOKS
from audit.matching.trees import Trees
from learning.one_tree import text_of
from learning.sure import SHIPPED, Told, grow, how_well, nats_lost


def made(legs=3000, seed=3):
    """Legs told as 0.8 sure: where the one look is high 0.95 of them are right, else 0.5."""
    chance = np.random.default_rng(seed)
    looks = chance.normal(0.0, 1.0, (legs, 3))
    right = chance.random(legs) < np.where(looks[:, 1] > 0.3, 0.95, 0.5)
    return Told(
        family=np.repeat("made", legs),
        nats=np.full(legs, np.log(4.0)),
        looks=looks,
        right=right,
    )


def test_trees_find_where_the_odds_may_be_trusted() -> None:
    trees, apart = grow(made(), 120), made(seed=4)
    sure = 1.0 / (1.0 + np.exp(-apart.nats - Trees.of(trees)(apart.looks)))
    high = apart.looks[:, 1] > 0.3
    assert sure[high].mean() == pytest.approx(0.95, abs=0.02)
    assert sure[~high].mean() == pytest.approx(0.5, abs=0.04)
    before, after = (float(part) for part in how_well(apart, trees).split()[1].split(">"))
    assert after < before


def test_what_is_lost_is_the_surprise_of_what_was_so() -> None:
    nats, right = np.log([9.0, 9.0]), np.array([True, False])
    assert nats_lost(nats, right) == pytest.approx(-np.log(0.9) / 2.0 - np.log(0.1) / 2.0)


def test_the_shipped_trees_were_grown_of_these_looks_on_development_walks() -> None:
    shipped = json.loads(SHIPPED.read_text(encoding="utf-8"))
    assert tuple(shipped["looks"]) == SURE_LOOKS
    assert "development seeds from 145,000" in shipped["from"]
    assert len(shipped["trees"]) >= 10
    assert text_of(shipped) == SHIPPED.read_text(encoding="utf-8")
