"""Rival: cut the recording where it comes nearest to each point, in the order of the plan."""

from __future__ import annotations

import numpy as np
from walks import Walk

from accuracy.positions_on_grid import even_places, points_m
from accuracy.scoring import Portion

FARTHEST_M = 300.0


def nearest_points(walk: Walk) -> list[Portion | None]:
    """Give each leg the time between the nearest approaches to its two points.

    The approaches are chosen together: in the order of the plan, with the smallest sum
    of distances, a distance counting 300 m at most.
    """
    times, places = even_places(walk, 5.0)
    points = points_m(walk)
    away = np.hypot(*(places[None, :, :] - points[:, None, :]).transpose(2, 0, 1))
    cost = np.minimum(away, FARTHEST_M)
    best = cost[0].copy()
    came_from = []
    for row in cost[1:]:
        least = np.minimum.accumulate(best)
        fresh = np.concatenate([[True], best[1:] < least[:-1]])
        came_from.append(np.maximum.accumulate(np.where(fresh, np.arange(len(best)), 0)))
        best = row + least
    chosen = [int(np.argmin(best))]
    for back in reversed(came_from):
        chosen.append(int(back[chosen[-1]]))
    return _portions(times, away, chosen[::-1])


def _portions(times: np.ndarray, away: np.ndarray, chosen: list[int]) -> list[Portion | None]:
    """Leave a point at the end of the stay about it, reach it at the beginning of the stay."""
    portions: list[Portion | None] = []
    stays = [_stay(away[point], index) for point, index in enumerate(chosen)]
    reached = [bool(away[point, index] < FARTHEST_M) for point, index in enumerate(chosen)]
    for leg in range(len(chosen) - 1):
        start, claim = stays[leg][1], stays[leg + 1][0]
        known = reached[leg] and reached[leg + 1] and claim > start
        portions.append((float(times[start]), float(times[claim])) if known else None)
    return portions


def _stay(away_m: np.ndarray, index: int, slack_m: float = 10.0) -> tuple[int, int]:
    """Give the first and last step about ``index`` within 10 m of the nearest approach."""
    first = last = index
    limit = away_m[index] + slack_m
    while first > 0 and away_m[first - 1] <= limit:
        first -= 1
    while last < len(away_m) - 1 and away_m[last + 1] <= limit:
        last += 1
    return first, last
