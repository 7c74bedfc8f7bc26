"""A made class is told what was planted in it, and nothing that was not."""

from __future__ import annotations

import tempfile
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from classes import Plants, make_class
from classes.class_files import gpx_text
from classes.true_results import true_result

from audit.classroom.class_shows import class_shows
from audit.classroom.course_faults import course_faults
from audit.readers.gpx_track import read_track
from audit.settings import Settings

PLANTED = (100_301, 100_302)
CLEAN = (100_401, 100_402)


@pytest.fixture(scope="module", params=PLANTED)
def planted(request):
    made = make_class(request.param)
    return made, true_result(made)


def of(result, what):
    return [finding for finding in result.findings if finding.what == what]


def test_misplaced_point_is_told_with_where_it_is_and_left_out(planted):
    made, result = planted
    (fault,) = of(result, "point-misplaced")
    lane = result.lane(fault.lane)
    leg = next(leg for leg in lane.legs if leg.name == fault.leg)
    assert (fault.lane, leg.end) == ("Lane A", made.misplaced)
    assert "left out of the grades" in fault.message
    told = next(one for one in result.legs if one.finding == "point-misplaced")
    assert (told.lane, told.name) == (fault.lane, fault.leg)
    left_out = {
        (walker.lane, leg.name) for walker in result.walkers for leg in walker.legs
        if leg.point.left_out
    }  # fmt: skip
    assert left_out == {(fault.lane, fault.leg)}


def test_bad_compass_is_asked_about_with_its_carriers(planted):
    made, result = planted
    (finding,) = of(result, "compass-reads-wrong")
    assert f"Compass {made.bad_compass}:" in finding.message
    assert finding.question
    carriers = {walker.ident for walker in result.walkers if walker.compass == made.bad_compass}
    assert set(finding.walkers) <= carriers
    # Walked to the right of the azimuth: the needle's figure is lower than the truth.
    assert "right of" in finding.message
    assert "reading low" in finding.message


def test_follower_is_asked_about_and_nobody_else(planted):
    made, result = planted
    (finding,) = of(result, "walked-together")
    follower = next(one.member for one in made.walks if one.member.follows)
    files = [walker.tracks[0] for walker in result.walkers if walker.ident in finding.walkers]
    assert set(files) == {follower.file, follower.follows}
    assert finding.message.startswith(f"Did {follower.name} walk with")
    assert finding.question


def test_legs_about_the_misplaced_point_are_not_called_harder(planted):
    _, result = planted
    (fault,) = of(result, "point-misplaced")
    spoilt = {fault.leg, str(int(fault.leg) + 1)}
    assert not any(one.lane == fault.lane and one.leg in spoilt for one in of(result, "harder-leg"))


@pytest.mark.parametrize("seed", CLEAN)
def test_nothing_is_told_of_a_class_without_plants(seed):
    result = true_result(make_class(seed, plants=Plants()))
    assert of(result, "point-misplaced") == []
    assert of(result, "compass-reads-wrong") == []
    assert of(result, "walked-together") == []
    assert not any(leg.finding == "point-misplaced" for leg in result.legs)


def test_everybody_a_little_left_is_not_the_courses_fault():
    """A whole class that left the angle out misses every point to the left."""
    made = make_class(100_403, walkers=20, lanes=1, plants=Plants())
    result = true_result(made)
    lane = result.lanes[0]

    def turned(walker):
        legs = []
        for leg, planned in zip(walker.legs, lane.legs, strict=True):
            if leg.miss is None:
                legs.append(leg)
                continue
            ahead = np.diff(planned.line, axis=0)[0]
            side = -0.13 * np.array([ahead[1], -ahead[0]])  # 7.5 degrees to the left
            miss = replace(
                leg.miss, east_m=leg.miss.east_m + side[0], north_m=leg.miss.north_m + side[1]
            )
            point = replace(leg.point, grade="missed")
            legs.append(replace(leg, miss=miss, point=point, started_s=None, trace_from=None,
                                azimuth_error_deg=leg.azimuth_error_deg - 7.5))  # fmt: skip
        return replace(walker, legs=tuple(legs))

    walkers = tuple(turned(walker) for walker in result.walkers)
    assert course_faults(result.lanes, walkers, Settings().class_shows) == ()


def test_device_stands_in_for_a_compass_that_the_roster_does_not_number():
    made = make_class(PLANTED[0], plants=Plants(compass_deg=6.0))
    result = true_result(made)
    walkers = tuple(replace(one, device=one.compass, compass="") for one in result.walkers)
    shows = class_shows(result.lanes, walkers, (), Settings().class_shows)
    asked = [one.message for one in shows.findings if one.what == "compass-reads-wrong"]
    assert len(asked) == 1
    assert asked[0].startswith(f"Device {made.bad_compass}:")


@pytest.mark.parametrize(
    "broken", [lambda text: text[: len(text) // 3], lambda text: text.replace("<trkpt", "<<&", 1)]
)
def test_file_that_breaks_off_is_asked_for_again(broken):
    """Bug: a file with an error in its middle was not asked about. The words are the reader's."""
    made = make_class(PLANTED[0], walkers=4, lanes=1, legs=3, plants=Plants())
    text = gpx_text(made.walks[0].track)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "cut.gpx"
        half = text.index("<trkpt", len(text) // 2)
        path.write_text(text[:half] + broken(text[half:]), encoding="utf-8")
        notes = read_track(path).notes
    result = true_result(made)
    first = result.walkers[0]
    first = replace(first, track=replace(first.track, notes=notes))
    shows = class_shows(result.lanes, (first, *result.walkers[1:]), (), Settings().class_shows)
    (asked,) = [one for one in shows.findings if one.what == "broken-file"]
    assert (asked.walkers, asked.question) == ((first.ident,), True)
    assert first.name in asked.message


def test_mean_miss_is_that_of_the_walkers(planted):
    _, result = planted
    leg = result.legs[0]
    misses = [
        walker.legs[0].miss for walker in result.walkers
        if walker.lane == leg.lane and walker.legs[0].miss is not None
    ]  # fmt: skip
    mean = np.mean([(miss.east_m, miss.north_m) for miss in misses], axis=0)
    assert leg.mean_miss == pytest.approx(tuple(mean))
    assert leg.found + leg.missed + leg.doubtful + leg.without_evidence == leg.walkers


def test_one_recording_under_many_names_is_one_walk(planted):
    """Bug: six copies of one file were six walkers, whose legs agreed to the last digit."""
    _, result = planted
    one = result.walkers[0]
    copies = tuple(replace(one, ident=f"{one.ident}-{n}", name=f"Copy {n}") for n in range(6))
    shows = class_shows(result.lanes, copies, (), Settings().class_shows)
    assert not [
        found for found in shows.findings if found.what in {"harder-leg", "compass-reads-wrong"}
    ]
    assert course_faults(result.lanes, copies, Settings().class_shows) == ()
    alone = class_shows(result.lanes, copies[:1], (), Settings().class_shows)
    assert shows.notes == alone.notes
