"""A walker's own scatter from earlier legs."""

from __future__ import annotations

import numpy as np
import pytest

from audit.forecast.walker_scatter import ordinary_scatter, scatter_of_walker
from audit.walked_before import WalkedBefore


def legs(turn: float, scatter: float, count: int, error: float = 0.5) -> list[WalkedBefore]:
    rng = np.random.default_rng(count)
    return [
        WalkedBefore(
            turn_deg=float(rng.normal(turn, np.hypot(scatter, error))),
            turn_sd_deg=error,
            log_ratio=float(rng.normal(0.06, 0.02)),
            log_ratio_sd=0.01,
        )
        for _ in range(count)
    ]


def test_many_legs_give_the_walkers_own_figures():
    # Planted: a bias of 4 degrees, a scatter of 1.5, distances 6 % too far.
    found = scatter_of_walker(legs(4.0, 1.5, 400))
    assert found.turn_deg == pytest.approx(4.0, abs=0.3)
    assert found.turn_sd_deg == pytest.approx(1.5, abs=0.15)
    assert found.log_ratio == pytest.approx(0.06, abs=0.005)
    assert "400 earlier legs" in found.source


def test_few_legs_stay_near_walkers_at_large():
    usual = ordinary_scatter()
    found = scatter_of_walker(legs(4.0, 1.5, 2))
    assert 0.0 < found.turn_deg < 4.5
    assert 0.5 * usual.turn_sd_deg < found.turn_sd_deg < 1.1 * usual.turn_sd_deg


def test_what_measuring_adds_is_no_scatter_of_the_walker():
    found = scatter_of_walker(legs(0.0, 1.5, 3000, error=3.0))
    assert found.turn_sd_deg == pytest.approx(1.5, abs=0.35)


def test_legs_with_a_mistake_are_left_out_and_told():
    reciprocal = WalkedBefore(turn_deg=179.0, turn_sd_deg=1.0, log_ratio=0.0, log_ratio_sd=0.01)
    found = scatter_of_walker([*legs(0.0, 2.0, 50), reciprocal])
    assert "1 left out" in found.source
    assert found.turn_sd_deg < 3.0
    assert scatter_of_walker([reciprocal]) == ordinary_scatter()
