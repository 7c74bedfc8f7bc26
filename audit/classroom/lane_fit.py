"""How well a walk fits a lane, by the points that it passes in their order: quick and rough."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from audit.classroom.lane import Lane
from audit.classroom.records import LaneFit
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
        total, passed = _in_order(cost, near, settings.lane_most)
    return LaneFit(lane=lane.name, passed=passed / count, cost=total / count)


def _in_order(cost: FloatArray, near: NDArray[np.bool_], most: float) -> tuple[float, int]:
    """Pass the points in order as cheaply, and as many of them, as the walk allows."""
    least = np.zeros(len(cost))
    passed = np.zeros(len(cost))
    for point in range(cost.shape[1]):
        here = np.minimum.accumulate(least + cost[:, point])
        least = np.minimum(here, least + most)
        counted = np.maximum.accumulate(np.where(near[:, point], passed + 1.0, 0.0))
        passed = np.maximum(passed, counted)
    return float(least[-1]), int(passed[-1])


def even_places(
    time_s: FloatArray, east_m: FloatArray, north_m: FloatArray, step_m: float
) -> tuple[FloatArray, FloatArray]:
    """Give places at equal steps of the path, shape (n, 2), and their times, shape (n,)."""
    path_m = np.concatenate([[0.0], np.cumsum(np.hypot(np.diff(east_m), np.diff(north_m)))])
    steps = np.arange(0.0, path_m[-1] + step_m, step_m)
    places = np.column_stack([np.interp(steps, path_m, east_m), np.interp(steps, path_m, north_m)])
    return places, np.interp(steps, path_m, time_s)


def better_lane(fits: Sequence[LaneFit], own: str, settings: GradingSettings) -> LaneFit | None:
    """Give the lane that a walk fits better than its own, if it does so clearly."""
    of_own = next(fit for fit in fits if fit.lane == own)
    best = fits[0]
    clearly = best.cost + settings.other_lane_nats < of_own.cost and best.passed > of_own.passed
    return best if best.lane != own and clearly else None
