"""Roads planted under a walk: told where it followed one, and not where it only crossed it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

import audit
from audit.areas import Area
from audit.classroom.kept_result import result_from, result_text
from audit.classroom.roads_used import asked_of_roads, roads_used
from audit.settings import Settings
from audit.standard import Standard

DEMO = Path(audit.__file__).parent / "demo_course"
CROSSED_ONLY = Standard(name="Roads", road_rule="cross only", road_distance_m=25.0)
FOLLOWED, CROSSED = 6, 0
"""Places of the leg that the road runs along, and of one that another road crosses."""


@pytest.fixture(scope="module")
def walk():
    return audit.debrief(audit.read_plan(DEMO / "plan.toml"), audit.read_track(DEMO / "walk.gpx"))


def road(walk, name: str, places: np.ndarray) -> Area:
    longitude, latitude = walk.card.grid.to_geographic(places[:, 0].copy(), places[:, 1].copy())
    return Area(name=name, kind="road", lines=(tuple(zip(longitude, latitude, strict=True)),))


@pytest.fixture(scope="module")
def along(walk) -> Area:
    """A road drawn where the walker went on one leg."""
    portion = walk.legs[FOLLOWED].portion
    on = (walk.clean.time_s >= portion.start_s) & (walk.clean.time_s <= portion.claim_s)
    return road(walk, "Mill Road", np.column_stack([walk.clean.east_m, walk.clean.north_m])[on])


@pytest.fixture(scope="module")
def across(walk) -> Area:
    """A road at a right angle over the middle of another leg."""
    begin, end = np.asarray(walk.legs[CROSSED].audit.card.line)[[0, -1]]
    middle, ahead = (begin + end) / 2, (end - begin) / np.hypot(*(end - begin))
    aside = np.array([-ahead[1], ahead[0]])
    return road(walk, "Long Path", np.array([middle - 60 * aside, middle + 60 * aside]))


def test_a_road_that_was_followed_is_told_with_its_length(walk, along, across):
    used = roads_used(walk, [along, across], CROSSED_ONLY, Settings().grading)
    # From point to point, less what lies within 30 + 25 m of either of them.
    length_m = walk.legs[FOLLOWED].audit.measures.straight_m
    assert used.seen_m == pytest.approx(length_m - 2 * 55, abs=60)
    assert 0.8 * used.seen_m < used.sure_m <= used.seen_m
    assert used.roads == ("Mill Road",)
    assert used.seen_s == pytest.approx(used.seen_m / 1.2, rel=0.4)


def test_a_road_that_was_only_crossed_is_not(walk, across):
    used = roads_used(walk, [across], CROSSED_ONLY, Settings().grading)
    assert used.seen_m == 0
    kept_off = Standard(name="Roads", road_rule="keep off", road_distance_m=25.0)
    # Fifty metres at a right angle.
    told = roads_used(walk, [across], kept_off, Settings().grading)
    assert told.seen_m == pytest.approx(50, abs=6)


def test_without_roads_or_a_rule_nothing_is_said(walk, along):
    assert roads_used(walk, [], CROSSED_ONLY, Settings().grading) is None
    assert roads_used(walk, [along], Standard(name="Free"), Settings().grading) is None


def test_a_class_asks_and_grades_nobody_by_it(along, across):
    plan, track = audit.read_plan(DEMO / "plan.toml"), audit.read_track(DEMO / "walk.gpx")
    asked = audit.grade([plan], [track], CROSSED_ONLY, roads=[along, across])
    plain = audit.grade([plan], [track], CROSSED_ONLY)
    (told,) = [one for one in asked.findings if one.what == "on-a-road"]
    assert told.question
    assert "Mill Road" in told.message
    assert "beyond all error" in told.message
    assert asked.walkers[0].verdict == plain.walkers[0].verdict
    assert asked.to_dict()["walkers"][0]["roads"]["names"] == ["Mill Road"]
    assert asked_of_roads(plain.walkers, CROSSED_ONLY) == []
    (walker,) = asked.walkers
    assert result_from(result_text(walker)) == walker
