"""The same paths walked in two years: one recording as the plan, the other audited against it.

The recordings are open data, described beside them: of pair-ilona-2014 and 2015, 6.5 km
are the same in the same order (from 2.90 km of the first, 3.22 km of the second), nine
tenths within 6.9 m; of pair-south-2013 and 2015 the first 1.4 km, median 4.7 m.
"""

from __future__ import annotations

import numpy as np
import pytest
from real.debriefs import check, walked
from real.own_turns import own_turns

import audit
from audit.geodesy.grids import course_grid


@pytest.fixture(scope="module")
def tracks(shared_tracks):
    names = ("ilona-2013", "ilona-2014", "ilona-2015", "south-2013", "south-2015")
    return {name: audit.read_track(shared_tracks / f"pair-{name}.gpx") for name in names}


def along_m(track, grid: str) -> np.ndarray:
    """Metres walked up to each fix."""
    east, north = course_grid(grid).to_grid(track.longitude_deg, track.latitude_deg)
    return np.concatenate([[0.0], np.cumsum(np.hypot(np.diff(east), np.diff(north)))])


@pytest.mark.parametrize("tolerance_m", [25.0, 30.0])
def test_stretch_that_both_years_share(tracks, tolerance_m) -> None:
    turns = own_turns(tracks["ilona-2014"], tolerance_m)
    begun_m = along_m(tracks["ilona-2014"], turns.plan.grid)[list(turns.fix)]
    inside = np.flatnonzero((begun_m >= 2_900.0) & (begun_m <= 2_900.0 + 6_500.0))
    first, last = int(inside[0]), int(inside[-1])
    found = audit.debrief(turns.plan, tracks["ilona-2015"])
    check(found)
    shared = [leg.audit for leg in found.legs[first:last]]
    assert len(shared) >= 10
    good = [leg.measures is not None and leg.measures.miss_m < 60.0 for leg in shared]
    assert np.mean(good) >= 0.9
    # Long legs are walked as planned: nothing but the two receivers differs.
    turned = [
        leg.measures.azimuth_error_deg
        for leg in shared
        if leg.measures is not None and leg.card.distance_m > 250.0
    ]
    assert np.median(np.abs(turned)) < 2.0


def test_shared_stretch_alone_as_the_course(tracks) -> None:
    """With the same stretch as its plan the walk is all there, and the rest is no leg."""
    turns = own_turns(tracks["ilona-2014"], 30.0)
    begun_m = along_m(tracks["ilona-2014"], turns.plan.grid)[list(turns.fix)]
    inside = np.flatnonzero((begun_m >= 2_900.0) & (begun_m <= 2_900.0 + 6_500.0))
    found = audit.debrief(turns.between(int(inside[0]), int(inside[-1])), tracks["ilona-2015"])
    check(found)
    good = [
        leg.audit.measures is not None and leg.audit.measures.miss_m < 60.0 for leg in found.legs
    ]
    assert np.mean(good) >= 0.9
    assert found.spans[0].kind == "approach"


@pytest.mark.parametrize("name", ["ilona-2014", "ilona-2013", "south-2013"])
def test_walk_against_its_own_turns(tracks, name) -> None:
    found = audit.debrief(own_turns(tracks[name]).plan, tracks[name])
    check(found)
    assert [leg.audit.status for leg in found.legs] == ["walked"] * len(found.legs)
    misses = np.array([leg.measures.miss_m for leg in walked(found)])
    assert np.median(misses) < 10.0
    assert np.mean(misses < 60.0) >= 0.9
    if name == "ilona-2014":
        assert misses.max() < 15.0


def test_walk_that_soon_goes_elsewhere(tracks) -> None:
    """The 1.4 km of pair-south that both years share are right; the rest is not claimed."""
    turns = own_turns(tracks["south-2013"])
    begun_m = along_m(tracks["south-2013"], turns.plan.grid)[list(turns.fix)]
    shared = int(np.flatnonzero(begun_m <= 1_400.0)[-1])
    found = audit.debrief(turns.plan, tracks["south-2015"])
    check(found)
    legs = [leg.audit for leg in found.legs]
    assert all(leg.status == "walked" for leg in legs[:shared])
    assert all(leg.measures.miss_m < 60.0 for leg in legs[:shared])
    # Nothing of the rest is said to have been found, or it is said that it is not sure.
    beyond = legs[shared + 2 :]
    unsure = [leg.status != "walked" or not leg.measures.found for leg in beyond]
    assert np.mean(unsure) >= 0.9


def test_walk_of_another_course_is_refused(tracks, shared_tracks) -> None:
    plan = own_turns(audit.read_track(shared_tracks / "hike-handheld-long.gpx")).between(0, 10)
    with pytest.raises(audit.InputRefusedError, match="comes no nearer than") as refused:
        audit.debrief(plan, tracks["ilona-2015"])
    assert "pair-ilona-2015.gpx" in str(refused.value)


SHARED = [
    ("ilona-2014", "ilona-2015", (2_900.0, 9_400.0)),
    ("ilona-2014", "ilona-2013", (5_160.0, 9_860.0)),
    ("south-2013", "south-2015", (0.0, 1_400.0)),
]


def test_headings_of_two_years_agree_within_their_intervals(tracks) -> None:
    """Each year's own heading of each shared leg: in 95 of 100 they differ by less than both errors.

    The interval of a difference is the root of both squares.
    """
    agree = []
    for planned, walked_again, (from_m, to_m) in SHARED:
        turns = own_turns(tracks[planned], 18.0)
        begun_m = along_m(tracks[planned], turns.plan.grid)[list(turns.fix)]
        inside = np.flatnonzero((begun_m >= from_m) & (begun_m <= to_m))
        first, last = int(inside[0]), int(inside[-1])
        plan = turns.between(first, last)
        one, other = (audit.debrief(plan, tracks[name]) for name in (planned, walked_again))
        for here, there in zip(one.legs, other.legs, strict=True):
            pair = (here.audit.measures, there.audit.measures)
            if any(measures is None or measures.miss_m > 60.0 for measures in pair):
                continue
            turned = pair[0].heading.azimuth.turn_to(pair[1].heading.azimuth)
            error = float(np.hypot(pair[0].heading.sd_deg, pair[1].heading.sd_deg))
            agree.append(abs(turned) <= 1.96 * error)
    assert len(agree) >= 40
    assert np.mean(agree) >= 0.95
