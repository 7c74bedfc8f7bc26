"""What the truth of a made walk allows: which portions, starts and endings are right."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from accuracy.scoring import TOLERANCE_M, TOLERANCE_S
from walks import Walk

from audit.matching.cuts import Cuts
from audit.matching.route import Edge, Route


@dataclass(frozen=True, slots=True, kw_only=True)
class Truth:
    """The truth of a walk against its cuts.

    A leg that was walked but has no right portion among those looked at is ``lost``: it
    teaches nothing, and anything is allowed for it.
    """

    walk: Walk
    cuts: Cuts
    route: Route
    path_m: np.ndarray
    walked: tuple[bool, ...]
    lost: frozenset[int] = frozenset()

    @classmethod
    def of(cls, walk: Walk, cuts: Cuts, route: Route) -> Truth:
        """Set a walk's truth against the cuts of its recording."""
        path_m = np.interp(cuts.time_s, walk.truth.time_s, walk.truth.path_m())
        walked = tuple(leg.status in ("walked", "unfinished") for leg in walk.truth.legs)
        return cls(walk=walk, cuts=cuts, route=route, path_m=path_m, walked=walked)

    def right(self, leg: int, first: np.ndarray, second: np.ndarray) -> np.ndarray:
        """Tell which portions are right for a leg: both ends near those of an attempt."""
        right = np.zeros(len(first), dtype=bool)
        if self.walked[leg]:
            for start_s, claim_s in self.walk.truth.legs[leg].attempts:
                right |= self._near(first, start_s) & self._near(second, claim_s)
        return right

    def right_end(self, leg: int, end: str, cut: np.ndarray) -> np.ndarray:
        """Tell which cuts are right for the "start" or the "claim" of a leg."""
        right = np.zeros(len(cut), dtype=bool)
        if self.walked[leg]:
            for start_s, claim_s in self.walk.truth.legs[leg].attempts:
                right |= self._near(cut, start_s if end == "start" else claim_s)
        return right

    def allowed(self, edge: Edge, first: np.ndarray, second: np.ndarray) -> np.ndarray:
        """Tell which portions of an edge a right way may take."""
        if edge.leg is None:
            open_to_all = edge.kind == "aside" or self._none_walked(_passed_over(edge, self.route))
            return np.full(len(first), open_to_all)
        if edge.leg in self.lost:
            return np.ones(len(first), dtype=bool)
        others = {
            "late-start": range(edge.leg),
            "given-up": range(edge.leg + 1, self.route.legs),
        }.get(edge.kind, range(0))
        return self.right(edge.leg, first, second) & self._none_walked(others)

    def may_start(self, node: int) -> bool:
        """Tell whether the course may begin at a node."""
        return node < self.route.legs and self._none_walked(range(node))

    def may_end(self, node: int) -> bool:
        """Tell whether the course may end at a node."""
        route = self.route
        if node <= route.legs:
            return self._none_walked(range(node, route.legs))
        if node not in route.order:
            return False
        before = _last_planned(node, route)
        return self._none_walked(range(before, min(before + 2, route.legs)))

    def _none_walked(self, legs: range) -> bool:
        return not any(self.walked[leg] and leg not in self.lost for leg in legs)

    def _near(self, cut: np.ndarray, moment_s: float) -> np.ndarray:
        truth = self.walk.truth
        place_m = np.interp(moment_s, truth.time_s, truth.path_m())
        near = np.abs(self.cuts.time_s[cut] - moment_s) <= TOLERANCE_S
        return near | (np.abs(self.path_m[cut] - place_m) <= TOLERANCE_M)


def _passed_over(edge: Edge, route: Route) -> range:
    """Give the legs that a link leaves out."""
    if edge.source <= route.legs and edge.target <= route.legs:
        return range(edge.source, edge.target)
    before = _last_planned(max(edge.source, edge.target), route)
    after = before + 3 if edge.target <= route.legs else before + 2
    return range(before, min(after, route.legs))


def _last_planned(node: int, route: Route) -> int:
    """Give the planned node after which an aside stands."""
    before = route.order[: route.order.index(node)]
    return max(planned for planned in before if planned <= route.legs)
