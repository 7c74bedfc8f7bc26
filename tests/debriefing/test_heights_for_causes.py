"""What slopes do to a walk, by a raster where the recording has no elevations.

The law: the ground is the same whoever measured it, so the causes are as well.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from confusion.planted import Sort
from walks import make_walk

import audit

SLOPING = {"slope-paced", "sidehill"}


@pytest.fixture(scope="module")
def walk():
    return make_walk(
        1_230_000, Sort(difficulty="trained", cause="slope-paced", whole_walk=True).family()
    )


def told(debrief) -> list[dict[str, float]]:
    return [{one.cause: one.probability for one in leg.causes} for leg in debrief.legs]


def test_heights_of_a_raster_stand_in_for_the_recordings_own(walk):
    track, plan = walk.track, walk.plan
    by_recording = audit.debrief(plan, track)
    clean = by_recording.clean
    # One slope for all: the plane through the recording's own elevations.
    known = np.isfinite(clean.elevation_m)
    design = np.column_stack([clean.east_m, clean.north_m, np.ones(len(clean))])
    plane, *_ = np.linalg.lstsq(design[known], clean.elevation_m[known], rcond=None)
    flat = replace(track, elevation_m=np.full_like(track.elevation_m, np.nan))

    def heights(grid, places):
        assert grid == by_recording.card.grid.code
        return places @ plane[:2] + plane[2]

    silent = told(audit.debrief(plan, flat))
    assert not any(SLOPING & set(leg) for leg in silent)
    by_raster = told(audit.debrief(plan, flat, heights=heights))
    assert any("slope-paced" in leg for leg in by_raster)
    for one, other in zip(told(by_recording), by_raster, strict=True):
        assert one.get("slope-paced", 0.0) == pytest.approx(other.get("slope-paced", 0.0), abs=0.15)
