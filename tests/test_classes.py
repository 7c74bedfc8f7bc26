"""The maker of classes: the same seed gives the same class, and what is planted is in it."""

from __future__ import annotations

import csv

import gpxpy
import numpy as np
import pytest
from classes import Plants, make_class, write_class

from audit.units import turn_degrees

SEED = 100_001


@pytest.fixture(scope="module")
def made():
    return make_class(SEED)


@pytest.fixture(scope="module")
def files(made, tmp_path_factory):
    return write_class(made, tmp_path_factory.mktemp("class"))


def test_same_seed_same_class(made):
    again = make_class(SEED)
    assert [one.member for one in again.walks] == [one.member for one in made.walks]
    for one, other in zip(made.walks, again.walks, strict=True):
        np.testing.assert_array_equal(one.track.longitude_deg, other.track.longitude_deg)


def test_walkers_of_a_lane_walk_differently(made):
    first = [one for one in made.walks if one.member.lane == 0][:2]
    assert first[0].track.longitude_deg[0] != first[1].track.longitude_deg[0]


def test_marker_of_one_point_stands_off(made):
    course = made.lanes[0].course
    off = np.hypot(*course.marker_shift_m.T)
    assert made.lanes[0].point_names[int(np.argmax(off))] == made.misplaced
    assert off.max() == pytest.approx(np.hypot(*made.plants.misplaced_m))
    assert np.sort(off)[-2] < 15.0  # 2 m a side is how well the others stand


def test_bad_compass_turns_whoever_carries_it(made):
    def turn(one):
        held = [
            turn_degrees(
                made.lanes[one.member.lane].course.card_azimuth_deg[leg.leg], leg.azimuth_deg
            )
            for leg in one.walk.truth.legs
            if leg.azimuth_deg is not None and not leg.planted
        ]
        return np.median(held) if held else np.nan

    bad = [turn(one) for one in made.walks if one.member.compass == made.bad_compass]
    good = [turn(one) for one in made.walks if one.member.compass != made.bad_compass]
    assert np.count_nonzero(np.isfinite(bad)) >= 3
    assert np.nanmedian(bad) - np.nanmedian(good) > 3.0


def test_follower_is_near_his_leader(made):
    follower = next(one for one in made.walks if one.member.follows)
    leader = next(one for one in made.walks if one.member.file == follower.member.follows)
    assert follower.member.lane == leader.member.lane
    times = follower.track.time_s
    ahead = np.interp(times - 25.0, leader.track.time_s, leader.track.latitude_deg)
    apart_m = 111_000.0 * np.abs(follower.track.latitude_deg - ahead)
    assert np.median(apart_m) < 15.0


def test_files_are_as_an_instructor_has_them(made, files):
    rows = list(csv.DictReader(files.roster.read_text(encoding="utf-8").splitlines()))
    assert len(rows) == len(made.walks) == len(files.tracks)
    assert sum(row["name"].startswith("=") for row in rows) == 1
    swapped = [one for one in made.walks if one.member.holds]
    assert len(swapped) == 2
    assert swapped[0].member.lane != swapped[1].member.lane
    unread = []
    for one, path in zip(made.walks, files.tracks, strict=True):
        try:
            with path.open(encoding="utf-8") as file:
                fixes = gpxpy.parse(file).get_points_no()
        except gpxpy.gpx.GPXXMLSyntaxException:
            unread.append(one.member.name)
        else:
            assert fixes > 100
    assert unread == [one.member.name for one in made.walks if one.member.broken]


def test_nothing_is_planted_unasked():
    clean = make_class(SEED, walkers=6, plants=Plants())
    assert (clean.bad_compass, clean.misplaced) == ("", "")
    assert not any(
        one.member.follows or one.member.holds or one.member.broken for one in clean.walks
    )
