"""How well a recording passes the points of a course, in their order and without detours."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.leg_card import LegCard
from audit.matching.cuts import nearest_approaches
from audit.matching.route import course_points
from audit.matching.walk_layout import SampledWalk
from audit.settings import MatchingSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Passing:
    """The best way in which a walk passes the points of a course.

    Attributes
    ----------
    cost : float
        Nats against it; a point that is not passed costs ``passing_most``.
    first, last : int
        Where the first and the last of the points passed are; -1 where none is.
    """

    cost: float
    first: int
    last: int


def passing_cost(sampled: SampledWalk, card: LegCard, settings: MatchingSettings) -> float:
    """Give the nats against a walk by how it passes the points.

    Matching goes by directions and lengths, as a dead-reckoner does; of two walks that
    both fit, the one that comes by the points in order, with the less walked between
    them, is the likelier.
    """
    path_m = sampled.movement.path_m
    return best_passing(sampled.samples.smooth, path_m, card, settings).cost


def best_passing(
    place: FloatArray, path_m: FloatArray, card: LegCard, settings: MatchingSettings
) -> Passing:
    """Find the best way in which a walk passes the points of a course in their order.

    Parameters
    ----------
    place : float array, shape (n, 2)
        Places of the walk in order of time, metres on the grid of the card.
    path_m : float array, shape (n,)
        Walked up to each of them.
    """
    most = settings.passing_most
    points = course_points(card)
    planned_m = np.concatenate([[0.0], np.cumsum([leg.distance_m for leg in card.legs])])
    # Each state is the passing made last: its place and point (-1: none), the first one of
    # its way, and the cost.
    last, point, first, cost = np.array([-1]), np.array([-1]), np.array([-1]), np.array([0.0])
    for number, target in enumerate(points):
        passed = nearest_approaches(place, target, settings)
        away_m = np.hypot(*(place[passed] - target).T)
        here = np.minimum(0.5 * (away_m / settings.arrival_sd_m) ** 2, most)
        longer = np.log(
            np.maximum(path_m[passed][None, :] - path_m[last][:, None], 1.0)
            / np.maximum(planned_m[number] - planned_m[point], 1.0)[:, None]
        )
        way = np.minimum(0.5 * (np.maximum(longer, 0.0) / settings.passing_detour) ** 2, most)
        way[passed[None, :] <= last[:, None]] = np.inf
        way[last < 0] = 0.0
        made = cost[:, None] + way
        best = np.argmin(made, axis=0)
        begun = np.where(first[best] < 0, passed, first[best])
        # Or this point was not passed: the last passing stands.
        last = np.concatenate([last, passed])
        point = np.concatenate([point, np.full(len(passed), number)])
        first = np.concatenate([first, begun])
        cost = np.concatenate([cost + most, made[best, np.arange(len(passed))] + here])
    state = int(np.argmin(cost))
    return Passing(cost=float(cost[state]), first=int(first[state]), last=int(last[state]))
