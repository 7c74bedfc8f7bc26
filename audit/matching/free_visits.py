"""The moments at which points may have been visited, and the ways from each to the next."""

from __future__ import annotations

import numpy as np

from audit.matching.orders import Visits
from audit.matching.portions import IndexArray
from audit.matching.route import Edge
from audit.matching.stays import Stays
from audit.matching.walk_evidence import Evidence
from audit.matching.walker import Walker
from audit.matching.ways import WeighedEdge, weighed_edges
from audit.settings import MatchingSettings
from audit.units import FloatArray


def find_visits(evidence: Evidence, walker: Walker) -> Visits:
    """Give the visits that this walker may have made, for a route in any order."""
    edges = weighed_edges(evidence, walker)
    for edge in edges:
        gain = evidence.settings.visit_gain_here + _presence(evidence, edge.edge.target)
        edge.cost = np.maximum(edge.cost, -_most_gain(edge, evidence)) - gain[edge.second]
    cuts_of = _claims(edges, evidence)
    point = np.repeat(np.arange(len(cuts_of)), [len(cuts) for cuts in cuts_of])
    cut = np.concatenate(cuts_of)
    by_time = np.lexsort((point, cut))
    point, cut = point[by_time], cut[by_time]
    begun = np.zeros(len(point))
    onward = np.zeros((len(point), len(point)))
    leaving = _leaving(evidence, point, cut)
    set_out = np.exp(-Stays.first_departure(evidence, 0))
    for edge in edges:
        to = np.flatnonzero(point == edge.edge.target - 1)
        ways = _ways(edge, cut[to], len(evidence.cuts))
        ways += _wandered(evidence, edge.edge, cut[to])
        if edge.edge.source == 0:
            begun[to] += set_out @ ways
        else:
            at = np.flatnonzero(point == edge.edge.source - 1)
            onward[np.ix_(at, to)] += leaving[at] @ ways
    return Visits(point=point, begun=begun, onward=onward)


def _most_gain(edge: WeighedEdge, evidence: Evidence) -> FloatArray:
    """Give the nats that each way may speak for a visit: little where it ends far off.

    Among many points there is often one in the direction of somebody who walks home.
    """
    settings = evidence.settings
    away_m = evidence.to_point_m[edge.second, edge.edge.target]
    reach_m = settings.visit_reach_m + settings.visit_reach_share * edge.edge.distance_m
    near = np.exp(-0.5 * (away_m / reach_m) ** 2)
    return np.asarray(settings.visit_gain_far + settings.visit_gain_near * near)


def _presence(evidence: Evidence, target: int) -> FloatArray:
    """Give the nats that not being at a point speaks against visiting it, at each cut."""
    settings = evidence.settings
    return np.asarray(np.log(_here(evidence, target) + np.exp(-settings.visit_presence)))


def _rested(evidence: Evidence, target: int) -> FloatArray:
    """Tell of each cut how nearly it is a rest at a point, from 0 to 1."""
    resting = evidence.cuts.begins_halt | evidence.cuts.ends_halt
    return np.asarray(resting * _here(evidence, target))


def _here(evidence: Evidence, target: int) -> FloatArray:
    """Tell of each cut how likely it lies as it does where the walker is at a point."""
    sd_m = float(np.hypot(evidence.settings.found_arrival_sd_m, 2.0 * evidence.noise_m))
    return np.asarray(np.exp(-0.5 * (evidence.to_point_m[:, target] / sd_m) ** 2))


def _wandered(evidence: Evidence, edge: Edge, claims: IndexArray) -> FloatArray:
    """Give the weight of coming to a point in whatever way, shape (cuts, claims).

    Whoever pinned a visit knows that the walker was there, wherever it seems to be.
    """
    settings, target = evidence.settings, edge.target
    gain = settings.visit_gain_here + _presence(evidence, target) - evidence.arrive
    gain += settings.visit_rested * _rested(evidence, target)
    if edge.pinned is not None:
        gain = np.zeros(len(evidence.cuts))
    weight = np.exp(gain[claims] - settings.visit_wandered)
    later = np.arange(len(evidence.cuts))[:, None] < claims
    if edge.pinned is not None and edge.pinned.first is not None:
        later &= np.arange(len(evidence.cuts))[:, None] == edge.pinned.first
    return np.asarray(later * weight)


def _claims(edges: list[WeighedEdge], evidence: Evidence) -> list[IndexArray]:
    """Give, for each point, the cuts that may be its claim: the best of each half minute."""
    settings, cuts = evidence.settings, evidence.cuts
    points = evidence.route.legs
    pinned = {edge.edge.target - 1 for edge in edges if edge.edge.pinned is not None}
    cost = np.full((points, len(cuts)), np.inf)
    for edge in edges:
        np.minimum.at(cost[edge.edge.target - 1], edge.second, edge.cost)
    claims = []
    for point in range(points):
        likely = cost[point] <= settings.visit_most_cost
        likely |= evidence.to_point_m[:, point + 1] <= settings.visit_near_m
        likely |= point in pinned
        index = np.flatnonzero(likely & np.isfinite(cost[point]))
        claims.append(_apart(index, cost[point], cuts.time_s, settings))
    return claims


def _apart(
    index: IndexArray, cost: FloatArray, time_s: FloatArray, settings: MatchingSettings
) -> IndexArray:
    """Keep the best of those that lie near each other in time, and not too many."""
    kept: list[int] = []
    for this in index[np.argsort(cost[index], kind="stable")]:
        if len(kept) == settings.visits_most:
            break
        if all(abs(time_s[this] - time_s[other]) > settings.visits_apart_s for other in kept):
            kept.append(int(this))
    return np.array(sorted(kept), dtype=np.int64)


def _leaving(evidence: Evidence, point: IndexArray, cut: IndexArray) -> FloatArray:
    """Give the weight of leaving again at each cut after each visit, shape (v, cuts)."""
    stays, size = Stays(evidence), len(evidence.cuts)
    leaving = np.zeros((len(point), size))
    for number in range(evidence.route.legs):
        at = np.flatnonzero(point == number)
        near = np.zeros((len(at), size))
        row = np.minimum(np.searchsorted(cut[at], stays.first), max(len(at) - 1, 0))
        here = np.isin(stays.first, cut[at])
        cost = stays.cost(number + 1)
        near[row[here], stays.second[here]] = np.exp(-cost[here])
        far = np.exp(-Stays.far_departure(evidence, number + 1))
        later = np.arange(size) >= cut[at][:, None]
        leaving[at] = near + far * later
    return leaving


def _ways(edge: WeighedEdge, claims: IndexArray, size: int) -> FloatArray:
    """Give the weight of each way that ends at one of the claims, shape (cuts, claims)."""
    ways = np.zeros((size, len(claims)))
    column = np.searchsorted(claims, edge.second)
    column = np.minimum(column, len(claims) - 1)
    fits = claims[column] == edge.second if len(claims) else np.zeros(len(edge.second), bool)
    ways[edge.first[fits], column[fits]] = np.exp(-edge.cost[fits])
    return ways
