"""Where on a long course each point can have been: a first look along the plan alone.

The ways of walking many legs over a long recording are as many as the one times the other,
and nearly all of them put a leg where no walk through the whole course has it. A look along
the planned legs alone, any of which may be passed over for little, tells for each point the
cuts at which the walker may have been there. Only between these are all ways weighed.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from audit.leg_card import LegCard
from audit.matching.edge_evidence import worth_a_look
from audit.matching.portions import IndexArray, SmallIndex
from audit.matching.route import Edge, Route
from audit.matching.stays import Stays
from audit.matching.supposed_walkers import broad_walkers
from audit.matching.walk_evidence import EdgeKey, Evidence
from audit.matching.ways import Ways
from audit.settings import MatchingSettings

Windows = NDArray[np.bool_]
"""At which cuts a walker may be at which place, shape (places, cuts)."""


class NearEvidence(Evidence):
    """Evidence that looks only at portions between the windows of an edge's two ends."""

    def __init__(self, evidence: Evidence, windows: Windows | None = None) -> None:
        vars(self).update(vars(evidence))
        self._edges, self._runs = {}, {}
        self._windows = windows

    def worth_a_look(self, edge: Edge) -> SmallIndex:
        """Give the places among all portions of those that may be a walk of an edge."""
        if self._windows is None or edge.pinned is not None:
            return super().worth_a_look(edge)
        index = self._between(self.key(edge), self._windows)
        part = self.portions.part(index)
        return index.astype(np.int32)[worth_a_look(edge, part, self.to_point_m, self.settings)]

    def by_place(self, of_node: Windows) -> Windows:
        """Join the windows of nodes that stand for one place with different histories.

        A place that is none of these nodes', where a walker turns back, may be anywhere.
        """
        places = self._place_of[: len(of_node)]
        joined = np.ones((self._place_of.max() + 1, of_node.shape[1]), dtype=bool)
        joined[places] = False
        np.logical_or.at(joined, places, of_node)
        return joined

    def _between(self, key: EdgeKey, windows: Windows) -> IndexArray:
        """Give the portions from a window of the edge's source to one of its target."""
        anywhere = np.ones(len(self.cuts), dtype=bool)
        begin = windows[key.source] if key.source >= 0 else anywhere
        end = windows[key.target] if key.target >= 0 else anywhere
        return self.portions.between(begin, end)


def near_evidence(stays: Stays, card: LegCard, settings: MatchingSettings) -> Evidence:
    """Give the evidence with only what a first look along the plan leaves open.

    A short course is not looked at: there the look would take longer than it saves.
    """
    evidence = stays.evidence
    if len(card.legs) < settings.first_look_from_legs:
        return evidence
    sketch = NearEvidence(evidence)
    nodes = len(card.legs) + 1
    near = settings.first_look_reach_m >= evidence.to_point_m[:, :nodes].T
    sketch = NearEvidence(evidence, sketch.by_place(near))
    sketch.route = along_plan(evidence.route, settings)
    windows = np.zeros((nodes, len(evidence.cuts)), dtype=bool)
    along = stays.narrowed(sketch)
    for walker in broad_walkers(card, settings):
        for of in Ways(along, walker).edge_odds(-settings.first_look_nats):
            for node, cuts in ((of.edge.source, of.first), (of.edge.target, of.second)):
                if 0 <= node < nodes:
                    windows[node, cuts] = True
    return NearEvidence(evidence, sketch.by_place(_with_neighbours(windows, settings)))


def along_plan(route: Route, settings: MatchingSettings) -> Route:
    """Lay out the planned legs alone, each of which may be passed over on the spot."""
    edges = []
    for edge in route.edges:
        if edge.pinned is not None:
            edges.append(edge)
        elif edge.kind == "leg" and edge.target == edge.source + 1:
            edges.append(replace(edge, kind="link"))
            edges.append(replace(edge, kind="jump", leg=None, cost=settings.first_look_over))
    return replace(route, edges=tuple(edges), order=tuple(range(route.legs + 1)))


def _with_neighbours(windows: Windows, settings: MatchingSettings) -> Windows:
    """Open each window to those of the points about it: orders may have been changed."""
    wide = windows.copy()
    for by in range(1, settings.first_look_neighbours + 1):
        wide[by:] |= windows[:-by]
        wide[:-by] |= windows[by:]
    return wide
