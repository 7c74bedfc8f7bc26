"""How well a recording passes the points of a course, in their order and without detours."""

from __future__ import annotations

import numpy as np

from audit.leg_card import LegCard
from audit.matching.cuts import nearest_approaches
from audit.matching.route import course_points
from audit.matching.walk_layout import WalkLaidOut
from audit.settings import MatchingSettings


def passing_cost(laid_out: WalkLaidOut, card: LegCard, settings: MatchingSettings) -> float:
    """Give the nats against a walk by how it passes the points.

    Matching goes by directions and lengths, as a dead-reckoner does; of two walks that
    both fit, the one that comes by the points in order, with the less walked between
    them, is the likelier. A point that is not passed costs as much as the worst way.
    """
    samples, path_m = laid_out.samples, laid_out.movement.path_m
    most = settings.passing_most
    points = course_points(card)
    planned_m = np.concatenate([[0.0], np.cumsum([leg.distance_m for leg in card.legs])])
    # Each state is the passing made last: its sample and point (-1: none), and the cost.
    sample, point, cost = np.array([-1]), np.array([-1]), np.array([0.0])
    for number, place in enumerate(points):
        passed = nearest_approaches(samples, place, settings)
        away_m = np.hypot(*(samples.smooth[passed] - place).T)
        here = np.minimum(0.5 * (away_m / settings.arrival_sd_m) ** 2, most)
        longer = np.log(
            np.maximum(path_m[passed][None, :] - path_m[sample][:, None], 1.0)
            / np.maximum(planned_m[number] - planned_m[point], 1.0)[:, None]
        )
        way = np.minimum(0.5 * (np.maximum(longer, 0.0) / settings.passing_detour) ** 2, most)
        way[passed[None, :] <= sample[:, None]] = np.inf
        way[sample < 0] = 0.0
        made = (cost[:, None] + way + here).min(axis=0, initial=np.inf)
        # Or this point was not passed: the last passing stands.
        sample = np.concatenate([sample, passed])
        point = np.concatenate([point, np.full(len(passed), number)])
        cost = np.concatenate([cost + most, made])
    return float(cost.min())
