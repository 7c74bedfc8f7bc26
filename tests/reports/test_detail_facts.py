"""What else was measured of a leg, in words, on the demo's walk."""

from __future__ import annotations

import re
from dataclasses import replace
from importlib.resources import as_file, files

import pytest
from reports.sample_debrief import sample_debrief

import audit
from audit.measurement.paces_of_walk import PaceRate, WalkPaces
from audit.plan import PlannedLeg
from audit.positions import Position
from audit.reports import digits
from audit.reports.detail_facts import detail_facts
from audit.reports.leg_facts import miss_along_and_across, walked_facts
from audit.reports.page_legs import leg_row
from audit.reports.page_parts import heading_facts


@pytest.fixture(scope="module")
def debrief():
    with as_file(files("audit").joinpath("demo_course")) as folder:
        plan, track = audit.read_plan(folder / "plan.toml"), audit.read_track(folder / "walk.gpx")
        return audit.debrief(plan, track, log=audit.read_log(folder / "log.csv"))


def test_every_walked_leg_tells_of_line_and_point(debrief):
    for leg in debrief.legs:
        facts = dict(detail_facts(leg))
        assert facts["Line kept"].startswith("on the planned line for ")
        assert facts["Point"].split(";")[0] in {"found", "missed", "too close to call"}


def test_what_was_planted_in_the_demo_is_told(debrief):
    # tests/demo/story.py: a marsh stepped round on leg 3, searches after legs 4 and 6.
    facts = [dict(detail_facts(leg)) for leg in debrief.legs]
    assert "m out" in facts[2]["Bypass"]
    assert "Search" in facts[5]
    assert "Bypass" not in facts[0]
    assert "off it for good from" in facts[5]["Line kept"]
    assert "to the left" in facts[5]["Line kept"]


def test_leg_not_walked_tells_nothing(debrief):
    from dataclasses import replace

    leg = debrief.legs[0]
    assert detail_facts(replace(leg, audit=replace(leg.audit, measures=None))) == []


def test_paces_that_nobody_counted_are_told_as_expected() -> None:
    """Bug: "Double paces: 276, by the pace count", of a walk without a log."""
    leg = sample_debrief().legs[0]
    said = [words for _, words in walked_facts(leg) if "pace count" in words]
    assert said == [f"{leg.audit.measures.paces:.0f} to be expected by the pace count, not counted"]
    counted = replace(leg.audit.measures, paces_from="log")
    told = walked_facts(replace(leg, audit=replace(leg.audit, measures=counted)))
    assert any(words.endswith("counted, by the log") for _, words in told)


def test_the_walkers_own_pace_count_stands_beside_the_plans() -> None:
    """Bug: the file had 72.7 paces to 100 m by the log's counts, the page nothing of it."""
    debrief = sample_debrief()
    rate = PaceRate(per_100m=72.7, sd=0.8, metres=4000.0)
    paces = WalkPaces(unit="double", counted=rate, counted_on={}, by_cadence=None, by_cadence_on={})
    planned = f"{debrief.card.paces_per_100m:.0f} paces to 100 m"
    assert dict(heading_facts(replace(debrief, paces=None)))["Pace count"] == planned
    told = dict(heading_facts(replace(debrief, paces=paces)))["Pace count"]
    own = "by the counts of the log and the ground walked 73, give or take 2"
    assert told == f"{planned}; {own}"


def test_who_ended_level_with_his_point_is_not_beyond_it() -> None:
    """Bug: "0 m beyond it, 40 m left"."""
    measures = sample_debrief().legs[0].audit.measures
    level = replace(measures, miss_along_m=0.3, miss_across_m=-40.0, miss_sd_m=5.0)
    assert miss_along_and_across(level) == "level with it, 40 m left"
    assert miss_along_and_across(replace(level, miss_along_m=12.0)).startswith("12 m beyond it")


def test_metres_made_good_along_a_bent_line_are_printed_where_they_are_compared():
    """Bug: of a leg along via positions the page gave the straight metres beside an error that was
    reckoned from those made good along its line."""
    with as_file(files("audit").joinpath("demo_course")) as folder:
        plan, track = audit.read_plan(folder / "plan.toml"), audit.read_track(folder / "walk.gpx")
    start, end = (plan.points[number].position for number in (0, 1))
    halfway = Position(
        latitude_deg=(start.latitude_deg + end.latitude_deg) / 2 + 0.0005,
        longitude_deg=(start.longitude_deg + end.longitude_deg) / 2,
    )
    bent = PlannedLeg(name="1", start=plan.legs[0].start, end=plan.legs[0].end, via=(halfway,))
    leg = audit.debrief(replace(plan, legs=(bent, *plan.legs[1:])), track).legs[0]
    made_m = leg.audit.measures.made_good_m
    assert made_m > leg.audit.measures.straight_m + 5.0
    made = digits.metres(made_m, leg.audit.measures.straight_sd_m)
    assert f", {made} made good along the planned line: " in dict(walked_facts(leg))["Distance"]
    assert leg_row(leg, 30.0).distance_walked == f"{made} along the line"


def test_facts_of_line_and_point_are_whole_sentences(debrief):
    """Bug: "305 m right at the claim, by the planned line", "that the walker came within 30 m:
    under 1 % by what was seen" and "to the 10 m that can be told" had to be read twice."""
    leg = debrief.legs[0]
    facts = dict(walked_facts(leg)) | dict(detail_facts(leg))
    assert facts["Off the line"].endswith(" root mean square; measured from the planned line")
    assert re.search(r" of the way \(to \d+ m: no closer can be told\); ", facts["Line kept"])
    assert (
        "; that the walker came within 30 m is over 99 % likely by what was seen"
        in (facts["Point"])
    )
