"""Intervals hold on walks of a simulator that shares nothing with ours, where it lies at hand."""

from __future__ import annotations

import numpy as np
import pytest
from accuracy.seeds import first_seeds

from honesty.measured_legs import measured_legs
from honesty.other_hand import _sighted, is_present, walk_of_other_hand

WALKS = 4
LEVELS = (1, 2, 3)


@pytest.fixture(scope="module")
def rows():
    if not is_present():
        pytest.skip("the other simulator does not lie beside this folder")
    return [
        row
        for level in LEVELS
        for seed in first_seeds("guard", WALKS)
        for row in measured_legs(walk_of_other_hand(seed, level))
        if row.right
    ]


@pytest.mark.parametrize("figure", ["held", "straight_held", "path_held", "claim_held"])
def test_intervals_hold(rows, figure) -> None:
    """No more than three standard errors under 0.93, legs of one walk taken as one in three."""
    share = np.mean([getattr(row, figure) for row in rows])
    assert len(rows) >= 40
    assert share >= 0.93 - 3.0 * np.sqrt(0.93 * 0.07 * 3.0 / len(rows))


def test_independent_noise_is_found_out(rows) -> None:
    assert np.mean([row.noise_held for row in rows]) < 0.6


def test_ledgers_add_up(rows) -> None:
    assert max(row.ledger_gap_m for row in rows) < 1e-6


def test_the_claim_is_put_where_the_point_came_into_sight_if_the_walker_turned_to_it() -> None:
    pieces = [(0, 10, 90.0), (10, 20, None)]
    places = np.array([[float(east), 0.0] for east in range(31)])
    assert _sighted(places, np.array([10.0, 30.0]), pieces) == 10
    assert _sighted(places, np.array([40.0, 1.0]), pieces) == 20


def test_its_times_are_in_order() -> None:
    if not is_present():
        pytest.skip("the other simulator does not lie beside this folder")
    walks = [walk_of_other_hand(seed, 0) for seed in first_seeds("guard", 3)]
    for walk in walks:
        times = [leg.start_s for leg in walk.truth.legs if leg.start_s is not None]
        assert times == sorted(times)
        for leg in walk.truth.legs:
            if leg.start_s is not None:
                assert walk.truth.time_s[0] <= leg.start_s < leg.claim_s <= walk.truth.time_s[-1]
