"""What it costs to stay at a point between two cuts, or to leave it, written out case by case."""

from __future__ import annotations

import math
from dataclasses import dataclass
from types import SimpleNamespace

import numpy as np
import pytest
from measurement.hand_made import SETTINGS

from audit.matching.soft_minimum import IMPOSSIBLE
from audit.matching.stays import Stays

S = SETTINGS.matching
PLACE = np.array([[0.0, 0.0], [30.0, 0.0], [30.0, 40.0], [900.0, 900.0]])
PATH_M = np.array([0.0, 30.0, 70.0, 70.0 + S.stay_path_m + 1.0])
LEAVE = np.array([0.3, 1.1, 0.7, 2.0])
TO_POINT_M = np.array([[5.0, 80.0], [20.0, 60.0], [45.0, 10.0], [900.0, 900.0]])


@dataclass
class Cuts:
    path_m: np.ndarray
    position: np.ndarray

    @property
    def seen_path_m(self) -> np.ndarray:
        return self.path_m

    @property
    def time_s(self) -> np.ndarray:
        return self.path_m

    def __len__(self) -> int:
        return len(self.path_m)


EVIDENCE = SimpleNamespace(
    cuts=Cuts(PATH_M, PLACE), settings=S, to_point_m=TO_POINT_M, leave=LEAVE,
    route=SimpleNamespace(legs=2, edges=()),
)  # fmt: skip


def gauss(metres: float, sd_m: float) -> float:
    return math.exp(-0.5 * (metres / sd_m) ** 2)


def test_a_stay_is_between_cuts_with_little_walked_between() -> None:
    stays = Stays(EVIDENCE)
    pairs = set(zip(stays.first.tolist(), stays.second.tolist(), strict=True))
    assert pairs == {(0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 2), (3, 3)}
    assert np.all(np.diff(stays.second) >= 0)


@pytest.mark.parametrize("node", [0, 1])
def test_who_stays_stood_wandered_found_the_point_or_relocated(node) -> None:
    """Four ways of having stayed, added up, against setting off where one does not."""
    stays = Stays(EVIDENCE)
    cost = stays.cost(node)
    for number, (first, second) in enumerate(zip(stays.first, stays.second, strict=True)):
        moved_m = float(np.hypot(*(PLACE[second] - PLACE[first])))
        chance = (
            gauss(moved_m, S.stay_sd_m)
            + S.wander_share * math.exp(-moved_m / S.wander_m)
            + math.exp(-S.cost_relocated_nowhere)
            + gauss(float(TO_POINT_M[second, node]), S.found_sd_m)
        )
        assert cost[number] == pytest.approx(-math.log(chance) + LEAVE[second], rel=1e-6)
    assert stays.cost(node) is cost  # worked out once


def test_a_course_begins_at_its_start_or_later_or_elsewhere() -> None:
    for node, later in ((0, 0.0), (1, S.cost_start_later)):
        for cut, found in enumerate(Stays.first_departure(EVIDENCE, node)):
            chance = gauss(float(TO_POINT_M[cut, node]), S.found_sd_m)
            chance += math.exp(-S.cost_start_elsewhere)
            assert found == pytest.approx(-math.log(chance) + LEAVE[cut] + later)
    assert np.all(Stays.first_departure(EVIDENCE, 2) == IMPOSSIBLE)


def test_after_any_amount_of_walking_a_point_may_be_left_again() -> None:
    for cut, found in enumerate(Stays.far_departure(EVIDENCE, 1)):
        chance = gauss(float(TO_POINT_M[cut, 1]), S.found_sd_m)
        chance += math.exp(-S.cost_relocated_nowhere)
        assert found == pytest.approx(-math.log(chance) + LEAVE[cut] + S.cost_long_stay)
