"""How well a walk fits a lane, by the points that it passes in their order: quick and rough."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from audit.classroom.lane import Lane
from audit.classroom.walker_result import LaneFit
from audit.settings import GradingSettings
from audit.units import FloatArray


def fit_lanes(
    places: FloatArray, lanes: Sequence[Lane], settings: GradingSettings
) -> tuple[LaneFit, ...]:
    """Give the fit of a walk, places of shape (n, 2), to each lane, the best first."""
    fits = [fit_lane(places, lane, settings) for lane in lanes]
    return tuple(sorted(fits, key=lambda fit: (fit.cost, -fit.passed)))


def fit_lane(places: FloatArray, lane: Lane, settings: GradingSettings) -> LaneFit:
    """Give the share of the points passed in order, and the nats a point against it."""
    away_m = np.hypot(
        places[:, None, 0] - lane.points[None, :, 0], places[:, None, 1] - lane.points[None, :, 1]
    )
    cost = np.minimum(0.5 * (away_m / settings.lane_sd_m) ** 2, settings.lane_most)
    near = away_m <= settings.passed_m
    count = len(lane.points)
    if lane.card.order == "free":
        total, passed = float(cost.min(axis=0).sum()), int(near.any(axis=0).sum())
    else:
        total, passed = _in_order(cost, settings.lane_most), _passed_in_order(near, lane.points)
    return LaneFit(lane=lane.name, passed=passed / count, cost=total / count)


def _in_order(cost: FloatArray, most: float) -> float:
    """Pass the points in order as cheaply as the walk allows."""
    least = np.zeros(len(cost))
    for point in range(cost.shape[1]):
        here = np.minimum.accumulate(least + cost[:, point])
        least = np.minimum(here, least + most)
    return float(least[-1])


def _passed_in_order(near: NDArray[np.bool_], points: FloatArray) -> int:
    """Give how many points the walk passes in order, at most.

    Who stays at one place passes it once, however often the lane comes back to it: it
    counts again only after another place.
    """
    upto: list[FloatArray] = []  # by point: the most that are passed where it is the last
    for point, place in enumerate(points):
        before = [upto[one] for one in range(point) if not np.array_equal(points[one], place)]
        most = np.max(before, axis=0) if before else np.zeros(len(near))
        upto.append(np.maximum.accumulate(np.where(near[:, point], most + 1.0, 0.0)))
    return int(max(counted[-1] for counted in upto))


def better_lane(fits: Sequence[LaneFit], own: str, settings: GradingSettings) -> LaneFit | None:
    """Give the lane that a walk fits better than its own, if it does so clearly."""
    of_own = next(fit for fit in fits if fit.lane == own)
    best = fits[0]
    clearly = best.cost + settings.other_lane_nats < of_own.cost and best.passed > of_own.passed
    return best if best.lane != own and clearly else None
