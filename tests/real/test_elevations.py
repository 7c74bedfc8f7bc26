"""Elevations of real recordings: which are trusted, and what slope and climb they give."""

from __future__ import annotations

import numpy as np
import pytest
from real.own_turns import longest_part, own_turns

import audit
from audit.geodesy.grids import course_grid, utm_code
from audit.matching.clean_track import clean_track
from audit.measurement.ground_walked import judge_elevation
from audit.settings import Settings

S = Settings()
NO_HALTS = np.empty((0, 2))


def quality_of(path):
    track = longest_part(audit.read_track(path))
    grid = course_grid(utm_code(float(track.longitude_deg[0]), float(track.latitude_deg[0])))
    return judge_elevation(clean_track(track, grid, S.cleaning), NO_HALTS, S.ground)


def test_elevations_that_are_mostly_missing_are_not_trusted(shared_tracks) -> None:
    """Described beside it: 642 of 5181 fixes have one."""
    quality = quality_of(shared_tracks / "phone-sparse-elevation.gpx")
    assert not quality.trusted
    assert quality.why_not == "too few elevations"


def test_elevations_of_a_watch_are_trusted(shared_tracks) -> None:
    assert quality_of(shared_tracks / "hike-watch-60km.gpx").trusted


@pytest.fixture(scope="module")
def hike(shared_tracks):
    """Its first eight legs of the hike, against its own turns."""
    track = longest_part(audit.read_track(shared_tracks / "hike-watch-60km.gpx"))
    turns = own_turns(track, 40.0, 250.0)
    return audit.debrief(turns.between(0, 8), track)


def test_slope_distance_and_climb_agree_with_the_recorded_elevations(hike) -> None:
    walked = [leg.audit.measures for leg in hike.legs if leg.audit.measures is not None]
    assert len(walked) >= 6
    clean = hike.clean
    for measures in walked:
        ground = measures.details.ground
        assert ground.trusted
        # Never shorter than the flat way (Pythagoras), and no more than its steepest allows.
        assert measures.path_m <= ground.slope_m + 1e-6 <= 1.25 * measures.path_m
        kinds = ground.uphill_m + ground.level_m + ground.downhill_m
        assert kinds == pytest.approx(measures.path_m, rel=1e-6)
        # What was climbed less what was lost is the rise between the ends.
        ends = [measures.start.time_s, measures.claim.time_s]
        known = np.isfinite(clean.elevation_m)
        rise = np.diff(np.interp(ends, clean.time_s[known], clean.elevation_m[known]))[0]
        within_m = 3.0 * ground.elevation_sd_m
        assert ground.climb_m - ground.descent_m == pytest.approx(rise, abs=within_m)
