"""Walks of the other makers are walks like any: matched as they come, and mostly rightly."""

from __future__ import annotations

import numpy as np
import pytest
from accuracy.project import project
from accuracy.scoring import score_walk
from pyproj import Transformer

from learning.other_makers import MAKERS, make_walk_of

SEEDS = range(140_000, 140_003)


@pytest.mark.parametrize("maker", MAKERS)
def test_most_legs_of_a_trained_walker_are_matched_rightly(maker):
    scores = []
    for seed in SEEDS:
        walk = make_walk_of(maker, seed, "trained")
        assert walk.difficulty == f"{maker}-trained"
        scores += score_walk(walk, project(walk)).legs
    assert len(scores) > 8
    assert np.mean([leg.right for leg in scores]) > 0.75


@pytest.mark.parametrize("maker", MAKERS)
def test_plan_track_and_truth_lie_on_one_piece_of_ground_and_one_clock(maker):
    for level in ("trained", "ordinary", "novice"):
        walk = make_walk_of(maker, 140_000, level)
        truth, track = walk.truth, walk.track
        to_grid = Transformer.from_crs("EPSG:4326", walk.plan.grid, always_xy=True)
        fixes_m = np.array(to_grid.transform(track.longitude_deg, track.latitude_deg))
        true_m = [
            np.interp(track.time_s, truth.time_s, along) for along in (truth.east_m, truth.north_m)
        ]
        assert np.median(np.hypot(*(fixes_m - true_m))) < 20.0
        assert len(truth.legs) == len(walk.plan.legs)
        for leg in truth.legs:
            assert (leg.start_s is None) == (leg.status in ("skipped", "not-started"))
            if leg.start_s is not None:
                first, last = truth.index_at(leg.start_s), truth.index_at(leg.claim_s)
                assert truth.time_s[[first, last]].tolist() == [leg.start_s, leg.claim_s]
                way = (
                    truth.east_m[last] - truth.east_m[first],
                    truth.north_m[last] - truth.north_m[first],
                )
                assert leg.length_m == pytest.approx(np.hypot(*way))
                angle = np.radians(leg.azimuth_deg)
                assert leg.length_m * np.sin(angle) == pytest.approx(way[0], abs=1e-6)
                assert leg.length_m * np.cos(angle) == pytest.approx(way[1], abs=1e-6)
