"""What it says for a leg that somebody went straight from its start to its point, or had passed.

By heading and distance alone a long straight road fits one leg as well as several, and an
approach along it fits a leg walked the wrong way. Who came near every point in turn, and
straight from one to the next, hardly did so by chance.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from audit.matching.cuts import Cuts
from audit.matching.portions import SmallIndex
from audit.matching.route import Edge
from audit.settings import MatchingSettings
from audit.units import FloatArray


def gain_from_point_to_point(
    edge: Edge,
    ends: tuple[SmallIndex, SmallIndex],
    to_point_m: FloatArray,
    directly: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Give the nats for portions as a leg, shape (p,), by how near its points they begin and end.

    ``ends`` are their first and last cuts, ``to_point_m`` the distance of each cut from each
    node, ``directly`` tells how straight each leads. The gain is level near the points: where
    just a leg ended is for other signs to tell.
    """
    if edge.kind != "leg" or edge.source < 0 or edge.line is not None:
        return np.zeros(len(directly))
    near = directly
    for cut, node in zip(ends, (edge.source, edge.target), strict=True):
        near = near * _near(to_point_m[cut, node], noise_m, settings)
    return np.asarray(settings.gain_point_to_point * near)


def cost_of_back_azimuth_after_approach(
    edge: Edge,
    first: SmallIndex,
    cuts: Cuts,
    to_point_m: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Give the nats against portions as the first leg on its back azimuth, shape (p,).

    Who came a long way to the start may have passed it on his way, and come back: nothing but
    the lie of his approach would accuse him of a leg walked the wrong way. Who rested there
    before he went on more likely began; who was never there did not.
    """
    if edge.kind != "reversed" or edge.source != 0:
        return np.zeros(len(first))
    before_m = cuts.seen_path_m[first] - cuts.seen_path_m[0]
    passed = np.where(cuts.ends_halt[first], settings.passed_after_rest, 1.0)
    passed = passed * -np.expm1(-before_m / settings.long_approach_m)
    elsewhere = 1.0 - _near(to_point_m[first, 0], noise_m, settings)
    return np.asarray(settings.cost_reversed_after_approach * np.maximum(passed, elsewhere))


def cost_of_rest_at_own_start(
    edge: Edge,
    ends: tuple[SmallIndex, SmallIndex],
    cuts: Cuts,
    to_point_m: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Give the nats against portions that rest at the leg's start, shape (p,).

    Who missed a point, went back to it and rested there set out from there, though the way back
    may lie in line with the leg; and who came to it from far off has not walked the leg yet.
    """
    if edge.source < 0 or edge.slips is not None or edge.line is not None:
        return np.zeros(len(ends[0]))
    off_m = to_point_m[:, edge.source] - noise_m
    on_way = _rests_on_way(off_m, ends, cuts, settings)
    first, second = ends
    came_to = (off_m[first] > settings.far_off_own_start_m) & (
        off_m[second] <= settings.own_start_m
    )
    against = settings.cost_rest_at_own_start * on_way
    return np.asarray(against + settings.cost_end_at_own_start * came_to)


def cost_of_rest_at_left_out(
    edge: Edge,
    ends: tuple[SmallIndex, SmallIndex],
    cuts: Cuts,
    to_point_m: FloatArray,
    noise_m: float,
    settings: MatchingSettings,
) -> FloatArray:
    """Give the nats against ways that rest at a point which they are to leave out, shape (p,)."""
    rested = np.zeros(len(ends[0]), dtype=bool)
    for node in edge.leaves_out:
        rested |= _rests_on_way(to_point_m[:, node] - noise_m, ends, cuts, settings)
    return np.asarray(settings.cost_rest_at_left_out * rested)


def _rests_on_way(
    off_m: FloatArray,
    ends: tuple[SmallIndex, SmallIndex],
    cuts: Cuts,
    settings: MatchingSettings,
) -> NDArray[np.bool_]:
    """Say of portions whether they rest at a point on their way, and begin and end off it."""
    first, second = ends
    rested = (off_m <= settings.own_start_m) & cuts.begins_halt
    away = off_m > settings.off_own_start_m
    return np.asarray(_any_between(rested, first, second) & away[first] & away[second])


def _any_between(
    marked: NDArray[np.bool_], first: SmallIndex, second: SmallIndex
) -> NDArray[np.bool_]:
    """Say of pairs of cuts whether one that is marked lies between them."""
    before = np.concatenate([[0], np.cumsum(marked)])
    return np.asarray(before[second] > before[first + 1])


def _near(off_m: FloatArray, noise_m: float, settings: MatchingSettings) -> FloatArray:
    """Tell how near a point is, from 1 about it to 0 beyond reach."""
    reach_m = settings.point_to_point_m + settings.point_to_point_noises * noise_m
    return np.asarray(np.exp(-((off_m / reach_m) ** 4)))
