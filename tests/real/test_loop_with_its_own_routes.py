"""A file with two planned routes and three recordings over them, on wheels at 5 m/s.

Open data (described beside it). It holds two rides four days apart; the second is over
the LONG LOOP, which it passes point by point but for EARHARTDAM (never nearer than 101 m).
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from real.debriefs import check, walked

import audit
from audit.azimuths import MagneticAzimuth
from audit.words import says

GAP_S = 3 * 86_400.0


@pytest.fixture(scope="module")
def ride(shared_tracks):
    path = shared_tracks / "rte-trk-loop.gpx"
    return path, audit.read_track(path)


def debrief_route(ride, route: str):
    path, track = ride
    # 2002 lies before all magnetic models at hand: the angle is taken from the map.
    plan = replace(audit.read_plan(path, route=route), grid_magnetic_angle_deg=-14.0)
    return audit.debrief(plan, track)


def test_file_with_two_routes_asks_which(ride) -> None:
    with pytest.raises(audit.InputRefusedError, match=r"holds 2 routes.*route"):
        audit.read_plan(ride[0])


def test_day_before_all_magnetic_models_is_told_where_nothing_hangs_on_it(ride) -> None:
    path, track = ride
    plan = audit.read_plan(path, route="LONG LOOP")
    finished = audit.debrief(plan, track)
    assert any(says(note, "note-carried-back") for note in finished.card.notes)
    leg = replace(plan.legs[0], magnetic_azimuth=MagneticAzimuth(40.0))
    with pytest.raises(
        audit.InputRefusedError,
        match="2002-03-11 is the day of the recording, and a day that no magnetic model",
    ):
        audit.debrief(replace(plan, legs=(leg, *plan.legs[1:])), track)


@pytest.mark.parametrize("route", ["LONG LOOP", "SHORT LOOP"])
def test_no_leg_lasts_from_one_ride_to_the_other(ride, route) -> None:
    found = debrief_route(ride, route)
    check(found)
    assert all(leg.measures.duration_s < GAP_S for leg in walked(found))


def test_each_loop_is_matched_on_its_own_ride(ride) -> None:
    """Both rides pass the points of the short loop in order; the first one straight on."""
    first_s = float(np.nanmin(ride[1].time_s))
    for route, late in (("SHORT LOOP", False), ("LONG LOOP", True)):
        found = debrief_route(ride, route)
        begun = [leg.measures.start.time_s - first_s for leg in walked(found)]
        assert {start_s > GAP_S for start_s in begun} == {late}
    (note,) = [n for n in debrief_route(ride, "SHORT LOOP").quality.notes if "2 walks" in n]
    assert "To take another, say when it set out: --from 1=2002-03-11T" in note


def test_most_of_the_long_loop_is_found(ride) -> None:
    found = debrief_route(ride, "LONG LOOP")
    legs = walked(found)
    assert len(legs) >= 10
    misses = np.array([leg.measures.miss_m for leg in legs])
    # A fix every 10 s at 5 m/s, and corners ridden round.
    assert np.median(misses) < 60.0
    assert np.mean([leg.measures.nearest_m < 60.0 for leg in legs]) >= 0.75
    turned = [abs(leg.measures.azimuth_error_deg) for leg in legs]
    assert np.median(turned) < 10.0
