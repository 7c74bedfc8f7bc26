"""Walks by other hands are the same for a seed, and their truth fits their geometry."""

from __future__ import annotations

import numpy as np
import pytest
from walks.made_walk import LEVELS, MadeWalk

from learning.made_walk_facts import as_bytes, check_moments, errors_m, right_legs, speeds_m_s
from learning.other_makers import MAKERS

SEEDS = range(20)


@pytest.fixture(scope="module", params=MAKERS)
def make(request):
    return MAKERS[request.param]


@pytest.fixture(scope="module")
def walks(make) -> dict[str, list[MadeWalk]]:
    return {level: [make(seed, level) for seed in SEEDS] for level in LEVELS}


def every(walks: dict[str, list[MadeWalk]]) -> list[MadeWalk]:
    return [walk for of_level in walks.values() for walk in of_level]


@pytest.mark.parametrize("level", LEVELS)
def test_the_same_seed_gives_the_same_bytes(make, level):
    assert as_bytes(make(7, level)) == as_bytes(make(7, level))
    assert as_bytes(make(7, level)) != as_bytes(make(8, level))


def test_levels_differ_and_no_other_is_known(make):
    assert len({as_bytes(make(7, level)) for level in LEVELS}) == len(LEVELS)
    with pytest.raises(ValueError, match="level"):
        make(7, "expert")


def test_moments_are_in_order_and_recorded(walks):
    for walk in every(walks):
        check_moments(walk)


def test_nobody_runs(walks):
    for walk in every(walks):
        speed_m_s = speeds_m_s(walk)
        assert speed_m_s.max() < 2.6
        walking = [speed_m_s[leg.start_s : leg.claim_s] for leg in walk.legs if leg.attempts]
        moving = np.concatenate(walking)
        assert 0.6 < np.median(moving[moving > 0.3]) < 2.0


def test_legs_without_a_mistake_go_the_planned_way(walks):
    found = {level: [leg for walk in of for leg in right_legs(walk)] for level, of in walks.items()}
    for legs in found.values():
        assert len(legs) > 20
        # Farther off, the leg is told to have begun wrongly.
        assert max(leg.gap_at_start_m for leg in legs) < 40.5
        assert np.median([leg.gap_at_start_m for leg in legs]) < 5.0
        turns_deg = np.abs([leg.turn_deg for leg in legs])
        assert np.median(turns_deg) < 6.0
        assert turns_deg.max() < 30.0
        assert np.median([leg.length_ratio for leg in legs]) == pytest.approx(1.0, abs=0.05)
    spread = [np.mean([abs(leg.turn_deg) for leg in found[level]]) for level in LEVELS]
    assert spread == sorted(spread)


def test_fixes_lie_near_the_true_path(walks):
    medians_m = [float(np.median(errors_m(walk))) for walk in every(walks)]
    assert np.median(medians_m) < 8.0
    assert max(medians_m) < 20.0
    assert min(medians_m) > 0.1


def test_all_that_may_become_of_a_leg_occurs(walks):
    legs = [leg for walk in every(walks) for leg in walk.legs]
    assert {leg.status for leg in legs} == {"walked", "unfinished", "skipped", "not-started"}
    assert any(len(leg.attempts) > 1 for leg in legs)
    assert len({cause for leg in legs for cause in leg.causes}) > 12
    for level in LEVELS:
        walked = [leg for walk in walks[level] for leg in walk.legs if leg.status == "walked"]
        assert any(leg.causes for leg in walked)
        assert any(not leg.causes for leg in walked)
