"""All orders weighed at once, against adding them up one by one."""

from __future__ import annotations

from itertools import pairwise, permutations

import numpy as np
import pytest

from audit.matching.orders import Visits, weigh_orders

POINTS = 4
ENDING = np.array([0.1, 0.2, 0.5, 1.0, 3.0])


def some_visits(seed: int) -> Visits:
    rng = np.random.default_rng(seed)
    point = rng.permutation(np.repeat(np.arange(POINTS), 2))
    later = np.arange(8)[:, None] < np.arange(8)
    onward = rng.lognormal(0.0, 2.0, (8, 8)) * later
    onward[point[:, None] == point] = 0.0
    return Visits(point=point, begun=rng.lognormal(0.0, 2.0, 8), onward=onward)


def one_by_one(visits: Visits, must=frozenset()) -> dict[tuple[int, ...], float]:
    """Give the weight of each order: the sum over all visits that make it."""
    weights: dict[tuple[int, ...], float] = {}
    for length in range(1, POINTS + 1):
        for chain in permutations(range(8), length):
            order = tuple(int(visits.point[one]) for one in chain)
            if len(set(order)) < length or not must <= set(order) or list(chain) != sorted(chain):
                continue
            weight = visits.begun[chain[0]] * ENDING[length]
            for step in range(length):
                weight /= POINTS - step
            for one, other in pairwise(chain):
                weight *= visits.onward[one, other]
            weights[order] = weights.get(order, 0.0) + float(weight)
    return weights


@pytest.mark.parametrize("must", [frozenset(), frozenset({2})])
@pytest.mark.parametrize("seed", range(12))
def test_the_sum_and_each_step_are_those_of_all_orders(seed, must) -> None:
    visits = some_visits(seed)
    weights, odds = one_by_one(visits, must), weigh_orders(visits, POINTS, ENDING, must)
    total = sum(weights.values())
    assert odds.total == pytest.approx(total)
    assert odds.probability == pytest.approx(weights[odds.order] / total)
    steps = np.zeros((POINTS + 1, POINTS))
    for order, weight in weights.items():
        for one, other in pairwise((-1, *order)):
            steps[one + 1, other] += weight / total
    assert odds.next_point == pytest.approx(steps)


def test_a_plain_winner_is_the_order() -> None:
    """Where one order outweighs all others together it is the one that is given."""
    told = 0
    for seed in range(40):
        visits = some_visits(seed)
        weights = one_by_one(visits)
        best = max(weights, key=weights.__getitem__)
        if weights[best] > 0.6 * sum(weights.values()):
            told += 1
            assert weigh_orders(visits, POINTS, ENDING).order == best
    assert told > 5


def test_no_visits_no_order() -> None:
    nothing = Visits(point=np.empty(0, int), begun=np.empty(0), onward=np.empty((0, 0)))
    odds = weigh_orders(nothing, 3, np.ones(4))
    assert (odds.order, odds.total) == ((), 0.0)
