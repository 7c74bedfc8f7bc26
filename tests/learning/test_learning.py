"""The learning: its sums, its slope, and that it teaches what the matching then does."""

from __future__ import annotations

import json
from copy import copy

import numpy as np
import pytest
from accuracy.seeds import SEEDS
from walks import make_walk
from walks.along_paths import make_walk_along_paths

from audit.matching.learnt import Learnt, learnt
from audit.matching.ways import Ways
from learning.__main__ import SHIPPED
from learning.families import FIRST_SEEDS, OTHERS_FIRST_SEEDS, recipes, recipes_of_others
from learning.fit import curves, fit, penalty, weights_of
from learning.knots import KINDS
from learning.likelihood import SIZES, Sums, loss, split
from learning.problems import problem_of, ways_in_play
from learning.right_legs import share_right

FAMILIES = ("ordinary", "novice")


@pytest.fixture(scope="module")
def problems():
    walks = [make_walk(140_100 + number, FAMILIES[number % 2]) for number in range(4)]
    laid_out = [problem_of(walk) for walk in [*walks, make_walk_along_paths(140_100)]]
    # A walk whose right way is not among those looked at teaches nothing.
    nothing = np.zeros(sum(SIZES))
    teaching = [problem for problem in laid_out if loss(problem, nothing) is not None]
    assert len(teaching) >= 4
    return teaching


def test_the_slope_is_that_of_small_steps(problems) -> None:
    rng = np.random.default_rng(3)
    weights, way = rng.normal(0.0, 0.1, (2, sum(SIZES)))
    for problem in problems:
        _, slope = loss(problem, weights)
        up, down = (loss(problem, weights + step * way)[0] for step in (1e-4, -1e-4))
        assert float(slope @ way) == pytest.approx((up - down) / 2e-4, rel=1e-4, abs=1e-6)


def test_the_right_ways_are_among_all_ways(problems) -> None:
    rng = np.random.default_rng(4)
    for problem in problems:
        weights = rng.normal(0.0, 0.2, sum(SIZES))
        value, _ = loss(problem, weights)
        assert value >= -1e-9
        for share in Sums(problem, weights, allowed_only=False).probabilities():
            assert ((share >= 0.0) & (share <= 1.0)).all()


def test_a_leg_is_walked_once_or_not_at_all(problems) -> None:
    for problem in problems:
        shares = Sums(problem, np.zeros(sum(SIZES)), allowed_only=False).probabilities()
        for leg in range(len(problem.walked)):
            total = sum(
                float(share.sum())
                for step, share in zip(problem.steps, shares, strict=True)
                if step.leg == leg
            )
            assert total <= 1.0 + 1e-6


def test_learning_makes_the_right_way_likelier_and_legs_of_it_right(problems) -> None:
    before = np.zeros(sum(SIZES))
    after = fit(problems, steps=15, jobs=1)
    losses = [sum(loss(problem, weights)[0] for problem in problems) for weights in (before, after)]
    assert losses[1] < 0.7 * losses[0]
    assert share_right(problems, after) >= share_right(problems, before)


def test_the_penalty_holds_back_size_and_bends_alone() -> None:
    matrix = penalty()
    assert matrix == pytest.approx(matrix.T)
    assert np.linalg.eigvalsh(matrix).min() > 0.0


def test_the_file_gives_back_the_weights() -> None:
    weights = np.round(np.random.default_rng(1).normal(size=sum(SIZES)), 3)
    assert weights_of(json.loads(json.dumps(curves(weights)))) == pytest.approx(weights)


def test_the_shipped_file_has_the_curves_that_are_learnt() -> None:
    shipped = json.loads(SHIPPED.read_text(encoding="utf-8"))["curves"]
    assert {kind: list(named) for kind, named in shipped.items()} == {
        kind: list(knots) for kind, knots in KINDS.items()
    }
    for kind, knots in KINDS.items():
        for name, of in knots.items():
            assert tuple(shipped[kind][name]["knots"]) == of.at
            assert shipped[kind][name].get("by") == of.by


def test_what_is_learnt_is_what_the_matching_charges() -> None:
    """The columns times the weights are the difference that the curves make to each portion."""
    walk = make_walk(140_103, "novice")
    _, stays, weighed_all = ways_in_play(walk)
    walker = weighed_all.best
    of_portions, of_stays, of_ends = split(
        weights_of(json.loads(SHIPPED.read_text(encoding="utf-8"))["curves"])
    )
    told_stays = stays.narrowed(_with(stays.evidence, learnt()))
    told = Ways(told_stays, walker)
    problem = problem_of(walk)
    by_edge = {(one.edge.source, one.edge.target, one.edge.kind): one for one in told.edges}
    assert problem.steps
    for step in problem.steps:
        weighed = by_edge[step.source, step.target, step.kind]
        place = {
            cuts: number
            for number, cuts in enumerate(
                zip(weighed.first.tolist(), weighed.second.tolist(), strict=True)
            )
        }
        here = [place[cuts] for cuts in zip(step.first.tolist(), step.second.tolist(), strict=True)]
        expected = step.cost + step.signs @ of_portions
        assert weighed.cost[here] == pytest.approx(expected, abs=2e-3)
    for number, node in enumerate(problem.nodes):
        if len(node.stay):
            charged = told_stays.at(number).cost
            expected = node.stay + node.stay_signs @ of_stays
            assert np.abs(charged[:, None] - expected).min(axis=0).max() < 2e-3
        if node.arrivals:
            ends = np.sort(told_stays.ending(number))
            expected = node.end + node.end_signs @ of_ends
            assert np.abs(ends[:, None] - expected).min(axis=0).max() < 2e-3


def _with(evidence, curves_told: Learnt):
    told = copy(evidence)
    told.learnt = curves_told
    return told


def test_only_development_seeds_are_learnt_from_and_each_for_one_use() -> None:
    own = {use: set(recipes(2_000, use=use)) for use in FIRST_SEEDS}
    others = {use: set(recipes_of_others(840, use=use)) for use in OTHERS_FIRST_SEEDS}
    assert {of.seed for use in own for of in own[use]} <= set(SEEDS["development"])
    for of in (own, others):
        assert of.keys() == {"curves", "trust", "apart"}
        assert len(set.union(*of.values())) == sum(len(walks) for walks in of.values())
    with pytest.raises(ValueError, match="are more than"):
        list(recipes(40_000, use="curves"))
    with pytest.raises(ValueError, match="are more than"):
        list(recipes_of_others(4_000, use="trust"))
