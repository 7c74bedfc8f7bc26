"""Every recording at hand gives a result or one clear refusal, never anything else.

Open data of many receivers, described beside them; some are broken or made by hand.
"""

from __future__ import annotations

import gzip
import shutil
import time
from pathlib import Path

import numpy as np
import pytest
from leg_card.plans import place
from real.debriefs import check, walked
from real.own_turns import longest_part, own_turns, plan_through

import audit
from audit.geodesy.grids import utm_code

TRACKS = Path(__file__).resolve().parents[3] / "shared" / "tracks"
NAMES = sorted(path.name for path in TRACKS.glob("*.gpx")) or ["none"]

# Recordings on foot that hold one walk: every leg made from their own turns was walked.
WALKS = {
    "hike-handheld-long.gpx",
    "hike-watch-60km.gpx",
    "odd-1901-times.gpx",
    "pair-ilona-2013.gpx",
    "pair-ilona-2014.gpx",
    "pair-ilona-2015.gpx",
    "pair-south-2013.gpx",
    "pair-south-2015.gpx",
    "phone-sparse-elevation.gpx",
    "trek-hr-temp.gpx",
    "walk-1hz-woods.gpx",
}


def a_plan_for(track, most_legs: int = 20):
    """Legs from the middle of its own turns; where it goes nowhere, a leg of 300 m to the east."""
    turns = own_turns(track)
    count = len(turns.plan.legs)
    if count:
        first = max(0, (count - most_legs) // 2)
        return turns.between(first, min(first + most_legs, count))
    longitude, latitude = float(track.longitude_deg[0]), float(track.latitude_deg[0])
    east = 300.0 / (111_320.0 * np.cos(np.radians(latitude)))
    points = (place("P0", longitude, latitude), place("P1", longitude + east, latitude))
    return plan_through(points, utm_code(longitude, latitude))


def debriefed_or_refused(path: Path):
    try:
        track = audit.read_track(path)
        return audit.debrief(a_plan_for(longest_part(track)), track)
    except audit.InputRefusedError as refused:
        return refused


@pytest.mark.parametrize("name", NAMES)
def test_recording_against_its_own_turns(shared_tracks, name) -> None:
    if name == "none":
        pytest.skip("no recordings there")
    found = debriefed_or_refused(shared_tracks / name)
    if isinstance(found, audit.InputRefusedError):
        assert name not in WALKS
        assert all(problem.rule and problem.remedy for problem in found.problems)
        return
    check(found)
    if name in WALKS:
        share = len(walked(found)) / len(found.legs)
        misses = [leg.measures.miss_m for leg in walked(found)]
        assert share == 1.0
        assert np.median(misses) < 15.0
        assert np.mean(np.array(misses) < 60.0) >= 0.9


def test_still_receiver_walked_no_leg(shared_tracks) -> None:
    track = audit.read_track(shared_tracks / "static-receiver.gpx")
    found = audit.debrief(a_plan_for(track), track)
    check(found)
    assert walked(found) == []


def test_large_recording(shared_tracks, tmp_path) -> None:
    """Twenty-one days in one file, 204 540 fixes: the plan is part of one of them."""
    plain = tmp_path / "large-walk.gpx"
    with gzip.open(shared_tracks / "large-walk.gpx.gz", "rb") as packed, plain.open("wb") as file:
        shutil.copyfileobj(packed, file)
    begun = time.perf_counter()
    track = audit.read_track(plain)
    read_s = time.perf_counter() - begun
    day = own_turns(audit.read_track(shared_tracks / "hike-watch-60km.gpx"), 30.0)
    begun = time.perf_counter()
    found = audit.debrief(day.between(10, 15), track)
    print(f"read {read_s:.1f} s, debrief {time.perf_counter() - begun:.1f} s")
    check(found)
    assert len(walked(found)) == 5
