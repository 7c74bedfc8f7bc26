"""A class made of real recordings: files that were cut, lanes by fit, devices that were swapped.

The recordings are open data, described beside them. Lanes are made of the walks' own turns; the
paths of pair-ilona and pair-south are walked in several years.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from real.own_turns import own_turns, plan_through

import audit
from audit.classroom.handed_in import by_file
from audit.classroom.joined_files import join_parts
from audit.classroom.lane import lane_of
from audit.classroom.walks_in_file import look_through
from audit.roster import Roster, RosterEntry
from audit.settings import Settings
from audit.standard import Standard
from audit.track import Track

SETTINGS = Settings()
COLUMNS = ("time_s", "longitude_deg", "latitude_deg", "elevation_m", "hdop", "cadence_per_min",
           "segment")  # fmt: skip
WALKED = ("pair-ilona-2013", "pair-ilona-2014", "pair-ilona-2015", "pair-south-2013",
          "pair-south-2015", "hike-handheld-long", "hike-handheld-gaps", "trek-hr-temp")  # fmt: skip
ASK = Standard(name="Any", points_to_find=3)


@pytest.fixture(scope="module")
def walks(shared_tracks):
    return {name: audit.read_track(shared_tracks / f"{name}.gpx") for name in WALKED}


def taken(track: Track, kept: np.ndarray, name: str) -> Track:
    """Some fixes of a recording as a file of its own."""
    part = {column: getattr(track, column)[kept].copy() for column in COLUMNS}
    return replace(track, source=name, **part)


def cut(track: Track, share: float, lost_s: float) -> tuple[Track, Track]:
    """The two files of a walk that was cut at a share of its time, with some of it lost."""
    at_s = track.time_s[0] + share * (track.time_s[-1] - track.time_s[0])
    return (
        taken(track, track.time_s <= at_s, "first.gpx"),
        taken(track, track.time_s > at_s + lost_s, "second.gpx"),
    )


def lanes_of(**plans) -> tuple:
    return tuple(lane_of(name, plan, None) for name, plan in plans.items())


@pytest.mark.parametrize("name", WALKED)
def test_a_walk_fits_its_own_turns_better_than_the_same_points_in_another_order(walks, name):
    plan = own_turns(walks[name], 30.0).plan
    points, half = plan.points, len(plan.points) // 2
    lanes = lanes_of(
        back=plan_through(points[::-1], plan.grid),
        halves=plan_through((*points[half:], *points[:half]), plan.grid),
        own=plan,
    )
    (walk,) = look_through(name, walks[name], lanes, SETTINGS).walks
    first, second, _ = walk.fits
    assert first.lane == "own"
    assert first.passed >= 0.95
    assert second.cost > first.cost + 0.5


@pytest.mark.parametrize(
    ("name", "lane"),
    [("pair-ilona-2015", "ilona-2014"), ("pair-south-2015", "south-2013")],
)
def test_a_walk_of_another_year_goes_to_the_lane_whose_path_it_followed(walks, name, lane):
    lanes = lanes_of(
        **{
            other.removeprefix("pair-"): own_turns(walks[other], 30.0).plan
            for other in ("pair-ilona-2014", "pair-south-2013")
        }
    )
    for walk in look_through(name, walks[name], lanes, SETTINGS).walks:
        assert walk.fits[0].lane == lane


@pytest.mark.parametrize("name", WALKED)
@pytest.mark.parametrize("lost_s", [0.0, 60.0, 600.0])
def test_a_walk_in_two_files_is_joined_and_said_to_be(walks, name, lost_s):
    lanes = lanes_of(own=own_turns(walks[name], 30.0).plan)
    for share in (0.25, 0.4, 0.5, 0.6, 0.75):
        files = cut(walks[name], share, lost_s)
        looked = [look_through(one.source, one, lanes, SETTINGS) for one in files]
        handed, said = join_parts(by_file(looked), lanes, SETTINGS.grading)
        assert [one.files for one in handed] == [("first.gpx", "second.gpx")], share
        assert [one.what for one in said] == ["files-joined"]
        assert all(one.question for one in said)


def test_one_walker_after_another_is_not_taken_for_one_walk(walks):
    """The second sets out at the start while the first comes in at the finish."""
    first, second = walks["pair-ilona-2014"], walks["pair-ilona-2015"]
    moved_s = first.time_s[-1] + 300.0 - second.time_s[0]
    later = replace(second, source="second.gpx", time_s=second.time_s + moved_s)
    lanes = lanes_of(own=own_turns(first, 30.0).plan)
    looked = [look_through(one.source, one, lanes, SETTINGS) for one in (first, later)]
    handed, said = join_parts(by_file(looked), lanes, SETTINGS.grading)
    assert len(handed) == 2
    assert said == []


def test_a_walk_that_was_joined_is_graded_as_the_whole_was(walks):
    whole = walks["pair-south-2013"]
    plan = own_turns(whole, 30.0).plan
    files = cut(whole, 0.5, 0.0)
    (one,) = audit.grade([plan], [whole], ASK).walkers
    made = audit.grade([plan], list(files), ASK)
    (joined,) = made.walkers
    assert joined.tracks == ("first.gpx", "second.gpx")
    assert [leg.point.grade for leg in joined.legs] == [leg.point.grade for leg in one.legs]
    assert joined.verdict.grade == one.verdict.grade
    assert "files-joined" in {finding.what for finding in made.findings}


def test_two_devices_that_were_swapped_are_asked_about(walks):
    ilona, south = walks["pair-ilona-2014"], walks["pair-south-2013"]
    plans = {"north": own_turns(ilona, 30.0).plan, "south": own_turns(south, 30.0).plan}
    roster = Roster(
        source="roster.csv",
        entries=(
            RosterEntry(name="Adder", lane="south", files=(ilona.source,), line=2),
            RosterEntry(name="Bittern", lane="north", files=(south.source,), line=3),
        ),
    )
    made = audit.grade(plans, [ilona, south], ASK, roster=roster)
    asked = [one for one in made.findings if one.what == "other-lane"]
    assert [one.walkers for one in asked] == [(walker.ident,) for walker in made.walkers]
    assert all(one.question for one in asked)
    straight = replace(
        roster, entries=tuple(replace(one, lane=lane) for one, lane in
                              zip(roster.entries, ("north", "south"), strict=True)),
    )  # fmt: skip
    right = audit.grade(plans, [ilona, south], ASK, roster=straight)
    assert not [one for one in right.findings if one.what == "other-lane"]
