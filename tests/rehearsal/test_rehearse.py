"""Mistakes walked on paper: where each ends, by sums that need no program."""

from __future__ import annotations

import json
import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
from rehearsal.courses import card, ends, only, rehearsed

from audit.diagnosis.causes import CAUSES
from audit.forecast.walker_scatter import ordinary_scatter
from audit.geodesy.areas_on_grid import GroundArea, GroundAreas
from audit.guide.cause_names import CAUSE_NAMES
from audit.rehearsal.changed_leg import with_end_moved
from audit.rehearsal.finished_rehearsal import LegRehearsal, Proposal, Rehearsal
from audit.rehearsal.leg_ways import leg_ways
from audit.rehearsal.look_alikes import look_alikes, resolution_m
from audit.rehearsal.rehearse import rehearse
from audit.rehearsal.ways_on_ground import Surroundings
from audit.reports.rehearsal_document import render_rehearsal_json
from audit.reports.rehearsal_report import render_rehearsal, render_rehearsal_html
from audit.reports.rehearsal_words import (
    alike_count,
    danger_sentences,
    planned_sentences,
    proposal_sentences,
)
from audit.settings import Settings

WEST, SOUTH = 700_000.0, 3_580_000.0


def box(west: float, south: float, east: float, north: float) -> shapely.Polygon:
    return shapely.box(WEST + west, SOUTH + south, WEST + east, SOUTH + north)


def test_every_mistake_of_the_catalogue_is_walked_or_said_why_not():
    for leg in rehearsed().legs:
        walked = {end.way.cause for end in leg.ends}
        named = {cause for cause, _ in leg.not_here}
        assert walked | named == {cause.name for cause in CAUSES}
        assert walked & named == set()
        assert walked <= set(CAUSE_NAMES)


def test_turns_end_where_trigonometry_says():
    leg = rehearsed().legs[0]  # north, 600 m; the angle is 7.5 degrees west
    end = only(leg, "gm-angle-omitted")
    assert end.across_m == pytest.approx(-600.0 * math.sin(math.radians(7.5)), abs=0.01)
    assert end.along_m == pytest.approx(600.0 * (math.cos(math.radians(7.5)) - 1.0), abs=0.01)
    assert end.way.words == "7.5° left"
    assert only(leg, "gm-angle-reversed").across_m == pytest.approx(-155.3, abs=0.05)
    assert only(leg, "reciprocal").along_m == pytest.approx(-1200.0)
    # Bezel the wrong way: r = -2 M; M is 7.5, so the leg runs 15 degrees to the left.
    assert only(leg, "bezel-wrong-way").way.size == pytest.approx(-15.0)
    clicks = sorted(end.way.size for end in ends(leg, "bezel-clicks"))
    assert clicks == [-12.0, -9.0, -6.0, -3.0, 3.0, 6.0, 9.0, 12.0]


def test_lengths_and_places_end_where_they_should():
    leg = rehearsed().legs[1]  # east, 800 m
    hundreds = sorted(round(end.along_m) for end in ends(leg, "hundred-miscounted"))
    assert hundreds == [-200, -100, 100, 200]
    assert sorted(round(end.along_m) for end in ends(leg, "single-double-pace")) == [-400, 800]
    lines = {(round(e.along_m), round(e.across_m)) for e in ends(leg, "wrong-grid-line")}
    assert lines == {(1000, 0), (-1000, 0), (0, 1000), (0, -1000)}
    wrong = ends(leg, "wrong-point")
    assert {end.near[0].point for end in wrong} == {"A", "D"}


def test_shapes_are_as_long_as_the_count_and_end_where_they_lead():
    leg = rehearsed().legs[0]
    veer = {end.way.words: end for end in ends(leg, "veer")}["to the right"]
    assert np.hypot(*np.diff(veer.way.line, axis=0).T).sum() == pytest.approx(600.0)
    # An even bend of 30 degrees turns the chord by half of it.
    assert math.degrees(math.atan2(veer.across_m, 600.0 + veer.along_m)) == pytest.approx(
        15.0, abs=0.1
    )
    paced = ends(leg, "bypass-paced")
    assert [round(end.along_m) for end in paced] == [-80, -80]  # 40 m out and 40 m back
    unequal = sorted(round(end.across_m) for end in ends(leg, "bypass-unequal"))
    assert unequal == [-20, 20]
    assert sorted(round(end.across_m) for end in ends(leg, "obstacle-one-side")) == [-45, 45]
    assert only(leg, "passed-unseen").along_m == pytest.approx(100.0)
    start = {end.way.words: end for end in ends(leg, "wrong-start")}["100 m east"]
    assert (start.across_m, start.along_m) == (pytest.approx(100.0), pytest.approx(0.0, abs=1e-6))
    assert only(leg, "point-skipped").near[0].point == "C"


def test_areas_bounds_and_points_beside_are_met_and_nothing_else():
    lake = GroundArea(name="Lake", shape=box(-120, 560, -40, 640))
    cliff = GroundArea(
        name="Cliff", shape=shapely.LineString([(WEST + 5, SOUTH + 650), (WEST + 60, SOUTH + 650)])
    )
    areas = GroundAreas(bounds=box(-500, -100, 1200, 1000), no_go=(lake,), hazards=(cliff,))
    beside = replace(card().points[0], name="Elm", east_m=WEST - 78.3, north_m=SOUTH + 594.9)
    leg = rehearse(card(), Surroundings(areas=areas, beside=(("Lane 2", beside),))).legs[0]
    omitted = only(leg, "gm-angle-omitted")
    assert omitted.ends_in == ("Lake",)
    assert [(one.point, one.course) for one in omitted.near] == [("Elm", "Lane 2")]
    assert omitted.dangerous
    assert not omitted.leaves_bounds
    for end in leg.ends:
        inside = shapely.Point(end.east_m, end.north_m)
        assert ("Lake" in end.ends_in) == lake.shape.intersects(inside)
        assert end.ends_outside == (not areas.bounds.covers(inside))
        crossed = shapely.LineString(end.way.line).intersects(cliff.shape)
        assert ("Cliff" in (*end.through, *end.ends_in)) == crossed
    assert only(leg, "reciprocal").ends_outside
    doubled = only(leg, "gm-angle-doubled")
    assert not doubled.dangerous
    assert doubled.near == ()


def test_look_alikes_end_within_the_resolution_and_all_are_found():
    # 2 x 1.645 standard deviations of a place measured against another: 4.5 m at either end.
    assert resolution_m(Settings()) == pytest.approx(2 * 1.6449 * math.sqrt(2) * 4.5, abs=0.01)
    for leg in rehearsed().legs:
        pairs = {(pair.first, pair.second) for pair in leg.look_alikes}
        for first, one in enumerate(leg.ends):
            for second in range(first + 1, len(leg.ends)):
                other = leg.ends[second]
                apart = math.hypot(one.east_m - other.east_m, one.north_m - other.north_m)
                alike = apart < rehearsed().resolution_m and one.way.cause != other.way.cause
                assert ((first, second) in pairs) == alike


def test_a_line_that_runs_elsewhere_is_no_blind_pair():
    # A box that is not walked back ends 20 m aside, as does a turn of 2 degrees: one line bulges
    # by 40 m, the other does not.
    leg = rehearsed().legs[0]
    pairs = [
        pair
        for pair in leg.look_alikes
        if {leg.ends[pair.first].way.cause, leg.ends[pair.second].way.cause}
        == {"bezel-clicks", "bypass-unequal"}
    ]
    assert pairs
    assert all(pair.by_line for pair in pairs)


def test_a_hundred_and_a_ratio_are_alike_where_they_are_as_long():
    # On paper: 1.16 of 600 m is 96 m too far, next to the hundred; on 900 m it is 144 m.
    leg = rehearsed().legs[0]
    blind = {
        frozenset((leg.ends[p.first].way.cause, leg.ends[p.second].way.cause))
        for p in leg.look_alikes
        if not p.by_line
    }
    assert frozenset(("hundred-miscounted", "pace-long")) in blind
    assert frozenset(("gm-angle-omitted", "steady-bias")) in blind  # 7.5 degrees, both


def test_proposals_do_what_they_say_when_worked_out_again():
    settings = Settings()
    found = [
        (number, one)
        for number, leg in enumerate(rehearsed().legs)
        for one in leg.proposals
        if one.end is not None
    ]
    assert len(found) >= 3
    for number, one in found:
        changed = with_end_moved(card(), number, one.longer_m, one.turned_deg)
        leg = changed.legs[number]
        assert (leg.end.east_m, leg.end.north_m) == pytest.approx(one.end)
        ways, _ = leg_ways(changed, number, None, settings)
        places = {
            cause: [way.line[-1] for way in ways if way.cause == cause] for cause in one.causes
        }
        first, second = places.values()
        nearest = min((math.dist(a, b) for a in first for b in second), default=math.inf)
        assert nearest == pytest.approx(one.apart_m)
        assert one.pairs_after <= one.pairs_before
        again = look_alikes(ways, rehearsed().legs[number].forecast, settings)
        blind = {
            frozenset((ways[p.first].cause, ways[p.second].cause)) for p in again if not p.by_line
        }
        assert frozenset(one.causes) not in blind


def test_a_change_leaves_no_more_look_alikes_by_the_count_that_is_told():
    """Bug: "74 now, 77 then" of pairs of ways, on a leg said to have 38 pairs of mistakes."""
    told = 0
    for number, leg in enumerate(rehearsed().legs):
        for one in leg.proposals:
            assert one.pairs_before == alike_count(leg)
            if one.end is None:
                continue
            changed = with_end_moved(card(), number, one.longer_m, one.turned_deg)
            again = rehearse(changed).legs[number]
            assert one.pairs_after == alike_count(again) <= one.pairs_before
            told += 1
    assert told


def test_no_change_is_proposed_onto_bad_ground():
    # All ground but the legs themselves, and they end at the edge of it.
    legs = shapely.union_all([shapely.LineString(leg.line) for leg in card().legs]).buffer(1.0)
    bog = GroundArea(name="Bog", shape=box(-2000, -2000, 3000, 3000).difference(legs))
    made = rehearse(card(), Surroundings(areas=GroundAreas(hazards=(bog,))))
    assert all(leg.planned_through == () for leg in made.legs)
    assert all(one.end is None for leg in made.legs for one in leg.proposals)


def with_hazard(shape) -> list[LegRehearsal]:
    areas = GroundAreas(hazards=(GroundArea(name="Edge", shape=shape),))
    return list(rehearse(card(), Surroundings(areas=areas)).legs)


def first_proposed() -> tuple[int, Proposal]:
    return next(
        (number, one)
        for number, leg in enumerate(rehearsed().legs)
        for one in leg.proposals
        if one.end is not None
    )


def test_no_change_brings_the_point_near_a_hazard():
    """Bug: a point was moved to 16 m from a quarry's edge, with an arrival radius of 25 m."""
    number, one = first_proposed()
    east, north = one.end
    edge = shapely.box(east + 16.0, north + 16.0, east + 30.0, north + 30.0)
    reach_m = card().arrival_radius_m
    for leg in with_hazard(edge):
        ends = [made.end for made in leg.proposals if made.end is not None]
        assert all(edge.distance(shapely.Point(end)) > reach_m for end in ends)
    assert shapely.Point(one.end).distance(edge) < reach_m
    again = {made.causes: made for made in with_hazard(edge)[number].proposals}[one.causes]
    assert again.end != one.end


def test_no_change_keeps_a_leg_through_a_hazard():
    """Bug: a leg through a quarry's edge was to be turned by 5 degrees, still through it."""
    ford = shapely.box(WEST - 500.0, SOUTH + 200.0, WEST + 500.0, SOUTH + 220.0)
    leg = with_hazard(ford)[0]
    assert leg.planned_through == ("Edge",)
    assert all(one.end is None for one in leg.proposals)
    would = [one for one in rehearsed().legs[0].proposals if one.end is not None]
    assert {one.causes for one in leg.proposals if one.kept_off == ("Edge",)} >= {
        one.causes for one in would
    }
    assert any("leads into Edge" in words for words in proposal_sentences(leg)) == bool(would)


def test_slopes_make_mistakes_of_their_own():
    # On paper: a plane falling 0.4 to the east; going north, downhill is to the right.
    made = rehearse(card(), heights=lambda places: -0.4 * (places[:, 0] - WEST))
    north, east, _ = made.legs
    assert {round(end.way.size, 1) for end in ends(north, "sidehill")} == {2.5, 4.0, 5.5, 7.5}
    assert dict(north.not_here)["slope-paced"]
    paced = only(east, "slope-paced")
    assert paced.way.size == pytest.approx(1.0 / math.hypot(1.0, 0.4), abs=1e-6)
    assert "sidehill" in dict(rehearsed().legs[0].not_here)


def test_ordinary_error_hides_small_mistakes_only():
    leg = rehearsed().legs[0]
    assert only(leg, "reciprocal").quantile > 0.999
    by_size = {end.way.size: end.quantile for end in ends(leg, "bezel-clicks")}
    assert by_size[3.0] < 0.5 < by_size[12.0]
    walker = ordinary_scatter()
    # Two degrees of freedom: three standard deviations across leave 1 in 90 outside.
    turn = 12.0 / walker.turn_sd_deg
    assert by_size[12.0] == pytest.approx(1.0 - math.exp(-0.5 * turn**2), abs=0.02)


def test_what_the_planned_leg_goes_through_is_told_of_the_leg():
    made = with_ford()
    leg = made.legs[0]
    assert leg.planned_through == ("Ford",)
    said = planned_sentences(made)
    assert said == ["Leg 1 itself, walked as planned, leads into Ford: move it."]
    assert all(words.startswith("Leg 1 ends in Ford:") for words in danger_sentences(leg))


def test_planned_legs_through_hazards_come_before_all_mistakes():
    """Bug: a leg planned through a quarry's edge stood third from the end of 20 mistakes."""
    made = with_ford()
    told = "Leg 1 itself, walked as planned, leads into Ford"
    for text in (render_rehearsal(made), render_rehearsal_html(made, ford())):
        assert text.count(told) == 1
        assert text.index(told) < text.index("Leg 1 ends in Ford")
        assert text.index("The course as planned") < text.index(told)
    assert f"<strong>{told}" in render_rehearsal_html(made, ford())


def test_a_point_near_a_hazard_is_told_of_the_course():
    """Bug: a rehearsal said nothing of a point that lay 16 m from a hazard."""
    # North of the first leg's point, which walks come to from the south.
    edge = GroundArea(name="Edge", shape=box(-40, 616, 40, 617))
    made = rehearse(card(), Surroundings(areas=GroundAreas(hazards=(edge,))))
    (said,) = planned_sentences(made)
    assert "lies 16 m from the hazard Edge" in said
    assert "in 100 ordinary walks of leg 1 reach it" in said
    entry = json.loads(render_rehearsal_json(made))["near_areas"][0]
    assert (entry["leg"], entry["area"], round(entry["away_m"])) == ("1", "Edge", 16)


def ford() -> GroundAreas:
    return GroundAreas(hazards=(GroundArea(name="Ford", shape=box(-50, 200, 50, 220)),))


def with_ford() -> Rehearsal:
    return rehearse(card(), Surroundings(areas=ford()))
