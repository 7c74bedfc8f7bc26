"""How likely the right way of a problem is, and how that changes with the curves.

Forward and backward sums over all ways, as the matching has them, once over everything and
once over what the truth allows. Costs are in nats; ``IMPOSSIBLE`` is what no way pays.
"""

from __future__ import annotations

from collections import defaultdict

import numpy as np

from audit.matching.soft_minimum import IMPOSSIBLE, combined, total_cost
from learning.hats import width
from learning.knots import ENDS, PORTIONS, STAYS
from learning.problems import Problem, Step

SIZES = (width(PORTIONS), width(STAYS), width(ENDS))


def split(weights: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Give the weights of portions, stays and ends."""
    portions, stays, ends = np.split(weights, np.cumsum(SIZES)[:2])
    return portions, stays, ends


def loss(problem: Problem, weights: np.ndarray) -> tuple[float, np.ndarray] | None:
    """Give minus the log probability of the right ways, and its slope; None without any."""
    allowed = Sums(problem, weights, allowed_only=True)
    if allowed.total > IMPOSSIBLE / 2:
        return None
    everything = Sums(problem, weights, allowed_only=False)
    return allowed.total - everything.total, allowed.expected() - everything.expected()


class Sums:
    """Forward and backward sums over the ways of a problem; ``total`` combines them all."""

    def __init__(self, problem: Problem, weights: np.ndarray, *, allowed_only: bool) -> None:
        self.problem, self.allowed_only = problem, allowed_only
        of_portions, of_stays, of_ends = split(weights)
        self._costs = [
            self._barred(step.cost + step.signs @ of_portions, step.allowed)
            for step in problem.steps
        ]
        self._stay = [node.stay + node.stay_signs @ of_stays for node in problem.nodes]
        self._begin = [
            self._barred(node.begin + node.begin_signs @ of_ends, node.may_begin)
            for node in problem.nodes
        ]
        self._end = [
            self._barred(node.end + node.end_signs @ of_ends, node.may_end)
            for node in problem.nodes
        ]
        self._out: dict[int, list[int]] = defaultdict(list)
        for number, step in enumerate(problem.steps):
            self._out[step.source].append(number)
        self.total = self._forward()
        self._share: list[np.ndarray] = []

    def _barred(self, cost: np.ndarray, allowed: np.ndarray | bool) -> np.ndarray:
        return np.where(allowed, cost, IMPOSSIBLE) if self.allowed_only else cost

    def _forward(self) -> float:
        problem = self.problem
        self._arrived = [np.full(node.arrivals, IMPOSSIBLE) for node in problem.nodes]
        self._left = [np.full(node.departures, IMPOSSIBLE) for node in problem.nodes]
        ends = []
        for number in self._out[-1]:
            self._arrive(problem.steps[number], self._costs[number])
        for place in problem.order:
            node, arrived = problem.nodes[place], self._arrived[place]
            stays = _least(self._stay[place] + arrived[node.stay_from])
            stayed = _gathered(stays, node.stay_to, node.departures)
            self._left[place] = combined(self._begin[place], stayed)
            ends.append(_least(arrived + self._end[place]))
            for number in self._out[place]:
                step = problem.steps[number]
                costs = _least(self._costs[number] + self._left[place][step.at_source])
                if step.target < 0:
                    ends.append(costs)
                else:
                    self._arrive(step, costs)
        return total_cost(np.concatenate(ends))

    def _arrive(self, step: Step, costs: np.ndarray) -> None:
        here = self._arrived[step.target]
        gathered = _gathered(costs, step.at_target, len(here))
        self._arrived[step.target] = combined(here, gathered)

    def expected(self) -> np.ndarray:
        """Give the expected columns of a way: the slope of the total cost."""
        problem = self.problem
        portions, stays, ends = (np.zeros(size) for size in SIZES)
        to_come: list[np.ndarray] = [np.empty(0)] * len(problem.nodes)
        self._share = [np.empty(0)] * len(problem.steps)
        for place in reversed(problem.order):
            node, left = problem.nodes[place], self._left[place]
            leaving = np.full(node.departures, IMPOSSIBLE)
            for number in self._out[place]:
                step, costs = problem.steps[number], self._costs[number]
                if step.target >= 0:
                    costs = _least(costs + to_come[step.target][step.at_target])
                gathered = _gathered(costs, step.at_source, node.departures)
                leaving = combined(leaving, gathered)
                share = self._probability(costs + left[step.at_source])
                self._share[number] = share
                portions += share @ step.signs
            ends += self._probability(self._begin[place] + leaving) @ node.begin_signs
            ends += self._probability(self._arrived[place] + self._end[place]) @ node.end_signs
            costs = _least(self._stay[place] + leaving[node.stay_to])
            stayed = _gathered(costs, node.stay_from, node.arrivals)
            to_come[place] = combined(stayed, self._end[place])
            stays += self._probability(costs + self._arrived[place][node.stay_from]) @ (
                node.stay_signs
            )
        for number in self._out[-1]:
            step = problem.steps[number]
            costs = self._costs[number] + to_come[step.target][step.at_target]
            self._share[number] = self._probability(costs)
            portions += self._share[number] @ step.signs
        return np.concatenate([portions, stays, ends])

    def probabilities(self) -> list[np.ndarray]:
        """Give the probability of each portion of each step."""
        self.expected()
        return self._share

    def _probability(self, costs: np.ndarray) -> np.ndarray:
        return np.exp(np.minimum(self.total - costs, 0.0))


def _least(costs: np.ndarray) -> np.ndarray:
    return np.minimum(costs, IMPOSSIBLE)


def _gathered(costs: np.ndarray, place: np.ndarray, size: int) -> np.ndarray:
    """Combine alternatives by the place that they lead to, shape (size,)."""
    out = np.full(size, IMPOSSIBLE)
    if len(costs) == 0:
        return out
    np.minimum.at(out, place, costs)
    shares = np.exp(np.minimum(out[place] - costs, 0.0))
    total = np.bincount(place, shares, size)
    some = (total > 0.0) & (out < IMPOSSIBLE / 2)
    out[some] -= np.log(total[some])
    return out
