"""A real walk with fixes left out is as long as it was, its legs cut at the same moments."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from real.own_turns import longest_part, own_turns

import audit

COLUMNS = (
    "time_s", "longitude_deg", "latitude_deg", "elevation_m", "hdop", "cadence_per_min", "segment",
)  # fmt: skip


def every(track, number: int):
    """Keep one fix in so many."""
    return replace(track, **{name: getattr(track, name)[::number].copy() for name in COLUMNS})


def up_to(track, fix: int):
    return replace(track, **{name: getattr(track, name)[:fix].copy() for name in COLUMNS})


def paths_m(plan, track, moments) -> np.ndarray:
    """Path and its error of each leg, all cut at the given moments."""
    at = [dt.datetime.fromtimestamp(moment, dt.UTC) for moment in moments]
    names = [leg.name for leg in plan.legs]
    found = audit.debrief(
        plan,
        track,
        starts=dict(zip(names, at[:-1], strict=True)),
        claims=dict(zip(names, at[1:], strict=True)),
    )
    measures = [leg.audit.measures for leg in found.legs]
    return np.array([(one.path_m, one.path_sd_m) for one in measures])


@pytest.mark.parametrize(
    ("name", "legs", "least_m", "kept", "within"),
    [
        # 1 s; every 30 s he is 50 m further on a path that winds, and a chord is shorter.
        ("walk-1hz-woods", 13, 150.0, {5: 0.02, 10: 0.02, 30: 0.03}, 1.0),
        # 4 s, kept every 12 and 32 s.
        ("hike-watch-60km", 12, 250.0, {3: 0.02, 8: 0.03}, 0.9),
    ],
)
def test_path_does_not_follow_the_logging_rate(
    shared_tracks, name, legs, least_m, kept, within
) -> None:
    track = longest_part(audit.read_track(shared_tracks / f"{name}.gpx"))
    turns = own_turns(track, 25.0, least_m)
    plan = turns.between(0, legs)
    track = up_to(track, turns.fix[legs] + 30)
    moments = [float(track.time_s[fix]) for fix in turns.fix[: legs + 1]]
    whole = paths_m(plan, track, moments)
    for number, allowed in kept.items():
        sparse = paths_m(plan, every(track, number), moments)
        assert sparse[:, 0].sum() == pytest.approx(whole[:, 0].sum(), rel=allowed)
        inside = np.abs(sparse[:, 0] - whole[:, 0]) <= 1.96 * sparse[:, 1]
        assert inside.mean() >= within
