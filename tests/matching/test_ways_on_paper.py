"""All ways of a small course, walked one by one: their costs, and how probable each portion is."""

from __future__ import annotations

import math
from collections import defaultdict
from types import SimpleNamespace

import numpy as np
import pytest

from audit.matching.edge_evidence import CutRuns
from audit.matching.route import Edge
from audit.matching.soft_minimum import total_cost
from audit.matching.ways import Ways, weighed_edges

CUTS = 5
ORDER = (0, 3, 1, 2)
"""Node 3 lies beside the plan, on a way from the first point to the second."""
KINDS = {(0, 1): "leg", (1, 2): "leg", (-1, 1): "late-start", (-1, 2): "late-start",
         (0, -1): "given-up", (1, -1): "given-up", (0, 2): "link", (0, 3): "aside",
         (3, 1): "aside"}  # fmt: skip
PAIRS = [(first, second) for second in range(CUTS) for first in range(second)]


def edge(source, target, kind, cost) -> Edge:
    return Edge(source=source, target=target, azimuth_deg=0.0, distance_m=1.0, leg=None,
                kind=kind, cost=cost)  # fmt: skip


class Course:
    """Costs drawn at random for every portion, stay, beginning and end."""

    def __init__(self, seed: int, jump: bool) -> None:
        rng = np.random.default_rng(seed)
        draw = lambda *shape: rng.uniform(0.0, 4.0, shape)  # noqa: E731
        edges = [edge(*nodes, kind, float(draw())) for nodes, kind in KINDS.items()]
        if jump:
            edges.append(edge(1, 2, "jump", 1.5))
        self.route = SimpleNamespace(
            edges=tuple(edges), order=ORDER, position=np.zeros((4, 2)), legs=2
        )
        # Some portions were not worth a look, others again of another edge.
        self.pairs = {
            (one.source, one.target, one.kind): [pair for pair in PAIRS if rng.random() < 0.7]
            for one in edges
        }
        self.costs = {key: draw(len(pairs)) for key, pairs in self.pairs.items()}
        self.arriving = {target: draw(CUTS) for target in (-1, 0, 1, 2, 3)}
        self.begin = {node: draw(CUTS) + 2.0 * node for node in range(4)}
        self.end = {node: draw(CUTS) for node in range(4)}
        between = np.triu(np.ones((CUTS, CUTS)))
        self.stay = {node: np.where(between > 0, draw(CUTS, CUTS), math.inf) for node in range(4)}
        self.cuts = range(CUTS)

    # What is asked of the evidence.

    def key(self, of: Edge):
        return of.source, of.target, of.kind

    def of_edge(self, of: Edge):
        first, second = np.array(self.pairs[self.key(of)], dtype=np.int64).reshape(-1, 2).T
        return SimpleNamespace(first=first, second=second)

    def runs_of(self, of: Edge):
        at = self.of_edge(of)
        return CutRuns(at.first, at.second, CUTS)

    def portion_costs(self, of: Edge, walker):
        return self.costs[self.key(of)] + walker

    def ending(self, of: Edge, cut):
        return self.arriving[of.target][cut]


class Stayed:
    """What is asked of stays."""

    def __init__(self, course: Course) -> None:
        self.evidence = course

    def setting_out(self, node):
        return self.evidence.begin[node]

    def ending(self, node):
        return self.evidence.end[node]

    def left(self, node, arrived):
        return self._summed(arrived, self.evidence.stay[node].T)

    def to_come(self, node, leaving):
        return self._summed(leaving, self.evidence.stay[node])

    @staticmethod
    def _summed(costs, stays):
        """Row by row of the costs, of each cut."""
        rows = [[total_cost(row + stay) for stay in stays] for row in np.atleast_2d(costs)]
        return np.array(rows).reshape(costs.shape)


WALKER = 0.25
"""What this walker costs for each portion walked."""


def steps(course: Course, of: Edge):
    """Give each way of an edge as first and second cut, its place and what it costs."""
    if of.kind == "jump":
        for cut in range(CUTS):
            yield cut, cut, cut, of.cost
        return
    for place, (first, second) in enumerate(course.pairs[course.key(of)]):
        cost = course.costs[course.key(of)][place] + WALKER + of.cost
        yield first, second, place, cost + course.arriving[of.target][second]


def every_way(course: Course):
    """Give each way as what it costs and the edges and portions that it takes."""

    def on(node, at, cost, taken):
        for of in course.route.edges:
            if of.source == node:
                for first, second, place, more in steps(course, of):
                    if first == at:
                        yield from arrived(of, second, cost + more, [*taken, (of, place)])

    def arrived(of, second, cost, taken):
        if of.target < 0:
            yield cost, taken
            return
        yield cost + course.end[of.target][second], taken
        for later in range(second, CUTS):
            yield from on(of.target, later, cost + course.stay[of.target][second, later], taken)

    for node in range(4):
        for at in range(CUTS):
            yield from on(node, at, course.begin[node][at], [])
    for of in course.route.edges:
        if of.source < 0:
            for _, second, place, cost in steps(course, of):
                yield from arrived(of, second, cost, [(of, place)])


@pytest.mark.parametrize("jump", [False, True])
@pytest.mark.parametrize("seed", range(4))
def test_all_ways_add_up_and_each_portion_has_its_share(seed, jump) -> None:
    course = Course(seed, jump)
    total, shares = 0.0, defaultdict(float)
    for cost, taken in every_way(course):
        total += math.exp(-cost)
        for of, place in taken:
            shares[of, place] += math.exp(-cost)
    made = Ways(Stayed(course), WALKER)
    assert made.total == pytest.approx(-math.log(total))
    told = {}
    for of in made.edge_odds():
        for place, first, second, log_odds in zip(
            of.index, of.first, of.second, of.log_odds, strict=True
        ):
            told[of.edge, place] = math.exp(log_odds)
            if of.edge.kind != "jump":
                assert (first, second) == course.pairs[course.key(of.edge)][place]
            else:
                assert first == second == place
    assert set(told) == set(shares)
    for key, share in shares.items():
        assert told[key] == pytest.approx(share / total)
    few = made.edge_odds(math.log(0.05))
    kept = {(of.edge, place) for of in few for place in of.index}
    assert kept == {key for key, share in shares.items() if share / total > 0.05}


def test_a_course_that_nobody_can_have_walked_has_no_ways() -> None:
    course = Course(1, jump=False)
    course.pairs = {key: [] for key in course.pairs}
    course.costs = {key: np.empty(0) for key in course.costs}
    assert Ways(Stayed(course), WALKER).total > 1e8


def test_every_edge_that_is_walked_is_weighed_with_what_it_costs_itself() -> None:
    course = Course(2, jump=True)
    weighed = weighed_edges(course, WALKER)
    assert [one.edge for one in weighed] == [of for of in course.route.edges if of.kind != "jump"]
    for one in weighed:
        assert one.cost.tolist() == pytest.approx([cost for *_, cost in steps(course, one.edge)])
