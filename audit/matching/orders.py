"""All orders in which points may have been visited, weighed against each other.

What is known of a visit is its point and its cut; what of the past matters is the set of
points visited so far. Forward and backward sums over both are exact, whatever the order.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Visits:
    """Moments at which a point may have been claimed, in order of time; arrays of shape (v,).

    Attributes
    ----------
    point : int array
        Numbers of the points, from 0 (the start is none of them).
    begun : float array
        Weight of walking from the start straight to this visit.
    onward : float array, shape (v, v)
        Weight of walking from one visit to a later one; 0 where it is not later.
    """

    point: NDArray[np.int64]
    begun: FloatArray
    onward: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OrderOdds:
    """What the walk says about the order of its visits.

    Attributes
    ----------
    order : tuple of int
        The likeliest order of points visited.
    probability : float
        Of this order as a whole.
    next_point : float array, shape (points + 1, points)
        Probability that the one point was made for from the other; row 0 is the start.
    total : float
        Weight of all orders together.
    """

    order: tuple[int, ...]
    probability: float
    next_point: FloatArray
    total: float


def weigh_orders(
    visits: Visits, points: int, ending: FloatArray, must: frozenset[int] = frozenset()
) -> OrderOdds:
    """Weigh all orders of any of the points.

    Parameters
    ----------
    ending : float array, shape (points + 1,)
        Weight of ending the walk after so many points.
    must : set of int
        Points that are known to have been visited.
    """
    masks = np.arange(1 << points)
    count = np.zeros(len(masks), dtype=np.int64)
    for point in range(points):
        count += masks >> point & 1
    # Which point comes next is as likely for each of those left.
    share = 1.0 / np.maximum(points - count, 1)
    end = np.where(_holds_all(masks, must), ending[count], 0.0)
    forward = _forward(visits, points, masks, share)
    total = float((forward @ end).sum())
    if total <= 0.0:
        return OrderOdds(
            order=(), probability=0.0, next_point=np.zeros((points + 1, points)), total=0.0
        )
    order, probability = _likeliest(visits, points, forward, end, share)
    made_next = _backward(visits, masks, share, end)
    return OrderOdds(
        order=order,
        probability=probability,
        next_point=_next_points(visits, points, forward, made_next, total),
        total=total,
    )


def _holds_all(masks: NDArray[np.int64], must: frozenset[int]) -> NDArray[np.bool_]:
    wanted = sum(1 << point for point in must)
    return np.asarray((masks & wanted) == wanted)


def _forward(
    visits: Visits, points: int, masks: NDArray[np.int64], share: FloatArray
) -> FloatArray:
    """Give the weight of being at each visit with each set visited, shape (v, masks)."""
    forward = np.zeros((len(visits.point), len(masks)))
    for this, point in enumerate(visits.point):
        without = masks[masks >> point & 1 == 0]
        earlier = visits.onward[:this, this] @ (forward[:this, without] * share[without])
        forward[this, without | 1 << point] = earlier
        forward[this, 1 << point] += visits.begun[this] / points
    return forward


def _backward(
    visits: Visits, masks: NDArray[np.int64], share: FloatArray, end: FloatArray
) -> FloatArray:
    """Give the weight of all that follows when each visit is made next, shape (v, masks).

    The sets are those before the visit; 0 where they hold its point already.
    """
    made_next = np.zeros((len(visits.point), len(masks)))
    for this in range(len(visits.point) - 1, -1, -1):
        point = visits.point[this]
        without = masks[masks >> point & 1 == 0]
        with_it = without | 1 << point
        follows = end[with_it] + visits.onward[this, this + 1 :] @ made_next[this + 1 :, with_it]
        made_next[this, without] = share[without] * follows
    return made_next


def _next_points(
    visits: Visits, points: int, forward: FloatArray, made_next: FloatArray, total: float
) -> FloatArray:
    pairs = visits.onward * (forward @ made_next.T) / total
    begun = visits.begun * made_next[:, 0] / total
    odds = np.zeros((points + 1, points))
    np.add.at(odds[0], visits.point, begun)
    np.add.at(odds, (visits.point[:, None] + 1, visits.point[None, :]), pairs)
    return odds


def _likeliest(
    visits: Visits, points: int, forward: FloatArray, end: FloatArray, share: FloatArray
) -> tuple[tuple[int, ...], float]:
    """Go back from the end, at each step to the likeliest point before; multiply the odds."""
    ended = np.stack([(forward * end)[visits.point == one].sum(axis=0) for one in range(points)])
    point, mask = (int(one) for one in np.unravel_index(int(np.argmax(ended)), ended.shape))
    probability = float(ended[point, mask] / ended.sum())
    follows = np.where(visits.point == point, end[mask], 0.0)
    order = [point]
    while mask != 1 << point:
        mask &= ~(1 << point)
        back = visits.onward @ follows * share[mask]
        ways = np.bincount(visits.point, forward[:, mask] * back, points)
        point = int(np.argmax(ways))
        probability *= float(ways[point] / ways.sum())
        follows = np.where(visits.point == point, back, 0.0)
        order.insert(0, point)
    return tuple(order), probability
