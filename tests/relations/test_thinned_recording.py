"""A recording that keeps one fix in five tells the same walk, within its errors."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest
from relations.audited import audit_on_grid, made, thinned

WALKS = [("noisy", 4), ("noisy", 9), ("skilled-person", 5), ("skilled-person", 16), ("trained", 6)]


@dataclass(frozen=True)
class Change:
    """What thinning changed on one leg."""

    turn_deg: float
    turn_sds: float
    straight_m: float
    straight_sd_m: float
    path_ratio: float


@pytest.fixture(scope="module")
def changes() -> list[Change]:
    found = []
    for difficulty, seed in WALKS:
        clean, card = made(seed, difficulty)
        assert clean.median_interval_s == 1.0
        dense, sparse = audit_on_grid(clean, card), audit_on_grid(thinned(clean, 5), card)
        assert [leg.status for leg in sparse.match.legs] == [leg.status for leg in dense.match.legs]
        for one, other in zip(dense.measures.legs, sparse.measures.legs, strict=True):
            if one.measures is None:
                continue
            mine, its = one.measures, other.measures
            turn = its.azimuth_error_deg - mine.azimuth_error_deg
            found.append(
                Change(
                    turn_deg=turn,
                    turn_sds=turn / max(mine.heading.sd_deg, its.heading.sd_deg),
                    straight_m=its.straight_m - mine.straight_m,
                    straight_sd_m=max(mine.straight_sd_m, its.straight_sd_m),
                    path_ratio=its.path_m / mine.path_m,
                )
            )
    assert len(found) >= 20
    return found


def test_headings_change_by_less_than_their_error(changes) -> None:
    # Both recordings share their receiver's error, so they differ by less than it.
    assert np.mean([abs(change.turn_sds) <= 1.96 for change in changes]) >= 0.95
    assert np.median([abs(change.turn_sds) for change in changes]) < 0.5
    assert abs(np.mean([change.turn_deg for change in changes])) < 0.5  # thinning turns nobody


def test_distances_change_by_less_than_their_error_or_five_seconds_of_walking(changes) -> None:
    within = [abs(change.straight_m) <= max(1.96 * change.straight_sd_m, 7.0) for change in changes]
    assert np.mean(within) >= 0.9
    assert abs(np.mean([change.straight_m for change in changes])) < 4.0


def test_paths_change_by_a_few_percent(changes) -> None:
    ratios = np.array([change.path_ratio for change in changes])
    assert np.mean(np.abs(ratios - 1.0) < 0.04) >= 0.9
    assert np.mean(ratios) == pytest.approx(1.0, abs=0.015)
