"""The best way of passing the points of a course, against all ways tried one by one."""

from __future__ import annotations

import math
from itertools import pairwise, product

import numpy as np
import pytest
from measurement.hand_made import ORIGIN, SETTINGS, card_of

from audit.matching.cuts import nearest_approaches
from audit.matching.passing import best_passing

S = SETTINGS.matching
POINTS = ((0, 0), (120, 0), (120, 90))


def every_way(place, path_m) -> tuple[float, int, int]:
    """Try each approach of each point, or none, and give the cheapest."""
    planned_m = [0.0, 120.0, 210.0]
    targets = [np.array(point) + ORIGIN for point in POINTS]
    choices = [[None, *nearest_approaches(place, target, S).tolist()] for target in targets]
    best = (math.inf, -1, -1)
    for chosen in product(*choices):
        cost, before = 0.0, None
        for number, at in enumerate(chosen):
            if at is None:
                cost += S.passing_most
                continue
            away_m = float(np.hypot(*(place[at] - targets[number])))
            cost += min(0.5 * (away_m / S.arrival_sd_m) ** 2, S.passing_most)
            if before is not None:
                was, place_before = before
                if at <= place_before:
                    cost = math.inf
                    break
                planned = max(planned_m[number] - planned_m[was], 1.0)
                longer = math.log(max(path_m[at] - path_m[place_before], 1.0) / planned)
                cost += min(0.5 * (max(longer, 0.0) / S.passing_detour) ** 2, S.passing_most)
            before = (number, at)
        passed = [at for at in chosen if at is not None]
        if cost < best[0]:
            best = (cost, passed[0] if passed else -1, passed[-1] if passed else -1)
    return best


@pytest.mark.parametrize("seed", range(12))
def test_no_way_of_passing_the_points_is_better(seed) -> None:
    rng = np.random.default_rng(seed)
    corners = rng.uniform(-40.0, 160.0, (7, 2))
    place = (
        np.concatenate(
            [a + (b - a) * np.arange(0.0, 1.0, 0.1)[:, None] for a, b in pairwise(corners)]
        )
        + ORIGIN
    )
    path_m = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(place, axis=0).T))])
    found = best_passing(place, path_m, card_of(*POINTS), S)
    cost, first, last = every_way(place, path_m)
    assert found.cost == pytest.approx(cost, abs=1e-9)
    assert (found.first, found.last) == (first, last)


def test_who_passed_nothing_passed_nothing() -> None:
    place = ORIGIN + np.array([[5000.0, 0.0], [5000.0, 10.0], [5000.0, 20.0]])
    found = best_passing(place, np.array([0.0, 10.0, 20.0]), card_of(*POINTS), S)
    assert (found.cost, found.first, found.last) == (3.0 * S.passing_most, -1, -1)
