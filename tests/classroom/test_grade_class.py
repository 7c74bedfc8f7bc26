"""A class end to end on walks laid out by hand: every grade is known beforehand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from classroom.hand_made import BEGIN_S, lane, track
from classroom.test_handed_in import drafted
from walks import make_walk

from audit.classroom.arrival import arrival
from audit.classroom.assemble import assemble
from audit.classroom.attempt_of_walker import whose_walk_is_asked
from audit.classroom.grade_class import grade
from audit.classroom.kept_result import result_from, result_text
from audit.classroom.lane import lane_of
from audit.classroom.walker_task import grade_walker
from audit.classroom.walks_in_file import part_of
from audit.debriefing.debrief_walk import debrief
from audit.grading.verdicts import Approach, PointVerdict
from audit.readers.standard_file import read_standard
from audit.reports.class_page import render_class_html
from audit.roster import PunchEntry, PunchList, Roster, RosterEntry
from audit.settings import GradingSettings

PLACES = ((600.0, 100.0), (900.0, -500.0), (300.0, -700.0), (-200.0, -200.0))
WALK = ((0.0, 0.0), *PLACES)
LANE = lane("east", *PLACES)


def off(number, east_m, north_m):
    """The walk with one point missed by so much; the walker goes on from where he was."""
    places = list(WALK)
    places[number] = (places[number][0] + east_m, places[number][1] + north_m)
    return tuple(places)


@pytest.fixture(scope="module")
def result():
    whole = track(*WALK, source="whole.gpx")
    tracks = [
        whole,
        track(*off(2, 150.0, 0.0), source="astray.gpx"),
        replace(part_of(whole, (0.0, BEGIN_S + 900.0)), source="broken-off.gpx"),
        track((90_000.0, 0.0), (90_500.0, 0.0), source="far.gpx"),
    ]
    names = ("whole", "astray", "broken-off", "far", "nobody")
    roster = Roster(
        entries=tuple(
            RosterEntry(name=name, files=(f"{name}.gpx",) if name != "nobody" else ())
            for name in names
        )
    )
    punches = PunchList(
        entries=(
            PunchEntry(point="east3", code="KT"),
            PunchEntry(point="east3", code="KT", name="nobody"),
            PunchEntry(point="east3", code="ZZ", name="whole"),
        )
    )
    standard = replace(read_standard("day-course"), points_to_find=3)
    return grade({"east": LANE.plan}, tracks, standard, roster=roster, punches=punches)


def walker(result, name):
    return next(one for one in result.walkers if one.name == name)


def grades(result, name):
    return [leg.point.grade for leg in walker(result, name).legs]


def test_points_are_graded_as_they_were_walked(result):
    assert grades(result, "astray") == ["found", "missed", "found", "found"]
    miss = walker(result, "astray").legs[1].miss
    assert (miss.east_m, miss.north_m) == pytest.approx((150.0, 0.0), abs=8.0)  # m, as planted


def test_a_wrong_code_makes_a_point_doubtful_and_a_right_one_proves_it(result):
    assert grades(result, "whole") == ["found", "found", "doubtful", "found"]
    assert grades(result, "nobody") == ["no-evidence", "no-evidence", "found", "no-evidence"]


def test_a_recording_that_breaks_off_fails_nobody(result):
    assert grades(result, "broken-off")[0] == "found"
    assert grades(result, "broken-off")[2:] == ["no-evidence", "no-evidence"]
    assert walker(result, "broken-off").verdict.grade == "doubtful"


def test_a_leg_that_was_not_walked_has_no_seconds(result):
    """Bug: it had 0.0 seconds moving, searching and halted, which is a figure."""
    legs = walker(result, "broken-off").legs
    assert {leg.status for leg in legs} > {"walked"}
    for leg in legs:
        seconds = (leg.moving_s, leg.searching_s, leg.halted_s)
        assert all((one is None) == (leg.status != "walked") for one in seconds), leg.status


def test_a_recording_of_elsewhere_is_told_and_fails_nobody(result):
    far = walker(result, "far")
    assert (far.state, far.verdict.grade) == ("refused", "no-evidence")
    assert "no nearer than" in far.problem
    assert [one.what for one in result.findings if far.ident in one.walkers] == ["broken-file"]


def test_the_time_is_from_leaving_the_start_to_the_last_point(result):
    time = walker(result, "astray").time
    way = np.hypot(*np.diff(np.array(off(2, 150.0, 0.0)), axis=0).T).sum()
    assert time.elapsed_s == pytest.approx(way / 1.2 + 3 * 60.0, abs=60.0)  # 1.2 m/s, three halts


def test_legs_over_all_walkers_count_what_the_walkers_have(result):
    for number, leg in enumerate(result.legs):
        of_leg = [one.legs[number].point.grade for one in result.walkers]
        assert leg.found == of_leg.count("found")
        assert leg.walkers == len(result.walkers)
        assert leg.found + leg.missed + leg.doubtful + leg.without_evidence == leg.walkers


def test_the_document_has_the_fields_that_were_promised(result):
    document = result.to_dict()
    assert document["format"] == 1
    assert {"course", "walkers", "legs", "findings"} <= set(document)
    for one in document["walkers"]:
        assert {"name", "track", "points_found", "points_missed", "points_doubtful",
                "verdict", "legs"} <= set(one)  # fmt: skip
        assert all({"name", "point", "miss_m", "cause"} <= set(leg) for leg in one["legs"])
    assert all({"name", "walkers", "missed", "mean_miss", "finding"} <= set(leg)
               for leg in document["legs"])  # fmt: skip


def test_results_are_kept_without_a_loss(result):
    for one in result.walkers:
        assert result_from(result_text(one)) == one
    with pytest.raises(ValueError, match="other fields"):
        result_from('{"ident": "x"}')


def test_a_free_order_is_graded_by_the_points_and_a_recording_without_times_has_no_clock():
    plan = replace(LANE.plan, order="free")
    way = ((0.0, 0.0), PLACES[2], PLACES[0], PLACES[1])
    untimed = track(*way, source="a.gpx")
    untimed = replace(untimed, time_s=np.full(len(untimed), np.nan))
    standard = replace(read_standard("day-course"), points_to_find=3, time_limit_s=None)
    timed = track(*way, source="b.gpx")
    made = grade({"free": plan}, [untimed, timed], standard)
    first, second = made.walkers
    assert [leg.name for leg in second.legs] == [leg.name for leg in plan.legs]
    assert [leg.point.grade for leg in second.legs][:3] == ["found", "found", "found"]
    assert second.legs[3].point.grade != "found"
    assert (first.time.elapsed_s, first.moving_s) == (None, None)
    assert first.trace.time_s is None
    assert len(made.to_dict()["walkers"]) == 2


def test_a_point_that_is_missed_in_its_turn_and_passed_later_is_doubtful():
    astray = (*off(1, 0.0, 160.0), PLACES[0])
    made = grade({"east": LANE.plan}, [track(*astray, source="a.gpx")], read_standard("day-course"))
    verdict = made.walkers[0].legs[0].point
    assert verdict.grade == "doubtful"
    assert not verdict.approach.in_turn
    assert "another time" in " ".join(verdict.evidence_against)


@pytest.mark.parametrize("ends_m", [0.0, 60.0])
def test_a_recording_that_ends_where_the_lane_passes_its_finish_fails_nobody(ends_m):
    """Bug: what came after was held to be missed, for the recording ends at the finish."""
    loops = lane("loops", (400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    walk = track((0.0, 0.0), (400.0, 100.0), (ends_m, 0.0), source="a.gpx")
    (one,) = grade({"loops": loops.plan}, [walk], read_standard("day-course")).walkers
    assert one.legs[0].point.grade == "found"
    assert one.legs[2].point.grade == "no-evidence"
    assert one.verdict.grade == "doubtful"


@pytest.mark.parametrize("planned_m", [2.0, 8.0])
def test_class_and_debrief_go_by_the_radius_of_the_standard(planned_m):
    """Bug: found by the class, 20 m off and in turn, was missed on the page it led to, or doubtful.

    The approach was held against the radius of the plan, and the verdict against the standard's.
    """
    lane_of_plan = replace(LANE, plan=replace(LANE.plan, arrival_radius_m=planned_m))
    walk = track(*off(1, 0.0, 20.0), source="a.gpx")
    draft = drafted([walk], lanes=(lane_of_plan,))
    result, found = grade_walker(draft.tasks[0], lane_of_plan)
    assert result.legs[0].point.grade == "found"
    assert result.legs[0].point.approach.in_turn
    assert found.legs[0].audit.measures.details.point.verdict == "found"
    said = f"within {planned_m:.0f} m"
    assert said in " ".join(found.quality.notes)
    (told,) = assemble(draft, [result]).lanes
    assert said in " ".join(told.notes)


def test_one_radius_needs_no_word():
    draft = drafted([track(*WALK, source="a.gpx")], lanes=(LANE,))
    result, found = grade_walker(draft.tasks[0], LANE)
    assert not any("within 30 m" in note for note in found.quality.notes)
    assert not any("within 30 m" in note for note in assemble(draft, [result]).lanes[0].notes)


@pytest.mark.parametrize(
    ("seed", "family", "walker", "leg"),
    [(700102, "novice", 0, "4"), (700103, "ordinary", 3, "8"), (700105, "novice", 2, "2")],
)
def test_no_point_is_missed_by_the_class_and_too_close_to_call_by_the_debrief(
    seed, family, walker, leg
):
    """Bug: a point was missed for good, and too close to call on the page that it led to."""
    walk = make_walk(seed, family, walker=walker)
    plan = make_walk(seed, family, walker=0).plan
    own = lane_of("lane", replace(plan, date=None, source="lane.toml"), walk.plan.date)
    draft = drafted([replace(walk.track, source="a.gpx")], lanes=(own,),
                    standard=read_standard("day-course"))  # fmt: skip
    result, found = grade_walker(draft.tasks[0], own)
    debriefed = {
        one.name: one.audit.measures.point_verdict
        for one in found.legs
        if one.audit.measures is not None
    }
    points = {one.name: one.point for one in result.legs}
    assert debriefed[leg] == "too close to call"
    approach = points[leg].approach
    assert approach.distance_m > points[leg].radius_m + points[leg].error_m
    assert points[leg].grade == "doubtful"
    for name, verdict in debriefed.items():
        assert (verdict, points[name].grade) != ("too close to call", "missed")
        differs = verdict == "missed" and points[name].grade != "missed"
        assert ("debrief says missed" in " ".join(points[name].evidence_against)) == differs


def test_nobody_finishes_at_a_moment_far_from_the_last_point():
    told = {"proof": "track", "radius_m": 30.0, "error_m": 10.0}
    far = Approach(distance_m=70.0, sd_m=5.0, time_s=900.0)
    near = replace(far, distance_m=38.0)
    walked = debrief(LANE.plan, track(*WALK))
    for approach, arrives in ((near, True), (far, False)):
        last = PointVerdict(grade="doubtful", approach=approach, **told)
        arrived = arrival(walked, last, BEGIN_S, GradingSettings())
        assert (arrived is not None) == arrives


def test_a_last_point_found_by_its_code_alone_has_no_moment_by_the_recording():
    """Bug: it came no nearer than 299 m, and the time ended there, to 57 s."""
    walk, last = track(*WALK[:-1], (-500.0, -200.0), source="a.gpx"), LANE.card.legs[-1].end.name
    codes = [
        PunchEntry(name="", lane="", point=last, code="KT"),
        PunchEntry(name="a", lane="", point=last, code="KT", time="12:40"),
    ]
    punches = PunchList(entries=tuple(codes), source="codes.csv")
    standard = read_standard("day-course")
    (walker,) = grade({"east": LANE.plan}, [walk], standard, punches=punches).walkers
    assert walker.legs[-1].point.grade == "found"
    assert walker.time.ended_s is None
    assert any("noted at 12:40" in reason for reason in walker.verdict.reasons)


def test_a_standard_that_asks_for_more_points_than_a_lane_has_is_told():
    """Bug: 9 points asked of lanes with 7 were told of each walker, and never of the class."""
    standard = read_standard("day-course")
    asks = [replace(standard, points_to_find=count) for count in (5, 4)]
    whole = track(*WALK, source="whole.gpx")
    told = [
        [note for note in grade({"east": LANE.plan}, [whole], one).notes if "only" in note]
        for one in asks
    ]
    (said,) = told[0]
    assert said.startswith(
        f"The standard {standard.name} asks for 5 points, but east has only 4: all of them"
    )
    assert told[1] == []


def test_one_point_left_out_of_a_free_course_leaves_the_time_told():
    """Bug: the time ended at the last leg of the card, and that one was not visited."""
    plan = replace(LANE.plan, order="free")
    way = ((0.0, 0.0), PLACES[2], PLACES[0], PLACES[1], (0.0, 0.0))
    standard = replace(read_standard("night-course"), points_to_find=2)
    key = PunchEntry(point=plan.legs[3].end, code="KT")
    brought = PunchEntry(point=plan.legs[3].end, code="KT", name="b")
    for punches in (None, PunchList(entries=(key, brought))):
        (one,) = grade(
            {"free": plan}, [track(*way, source="b.gpx")], standard, punches=punches
        ).walkers
        assert one.legs[3].point.grade == ("missed" if punches is None else "found")
        walked = np.hypot(*np.diff(np.array(way[:-1]), axis=0).T).sum()
        assert one.time.elapsed_s == pytest.approx(walked / 1.2 + 2 * 60.0, abs=60.0)
        assert one.verdict.grade == "pass"


def test_the_free_order_of_a_plan_comes_before_the_order_of_a_standard():
    """Bug: all standards that ship say "planned", and a point passed later was out of turn."""
    plan = replace(LANE.plan, order="free")
    standard = read_standard("practice-circuit")
    assert standard.order == "planned"
    for held, order in ((plan, "free"), (LANE.plan, "planned")):
        astray = (*off(1, 0.0, 160.0), PLACES[0])
        made = grade({"lane": held}, [track(*astray, source="a.gpx")], standard)
        points = [leg.point for leg in made.walkers[0].legs]
        assert (points[0].grade == "found") == (order == "free")
        assert made.order_asked == order
        document, page = made.to_dict()["course"]["lanes"][0], render_class_html(made)
        assert (document["length_m"] is None) == (order == "free")
        assert all((leg["distance_m"] is None) == (order == "free") for leg in document["legs"])
        # Bug: the legs of a free course stood there in the order of the file.
        assert ("Leg by leg" in page) == (order == "planned")
        assert ("Point by point" in page) == (order == "free")
        assert any("in any order" in note for note in made.lanes[0].notes) == (order == "free")


def test_a_recording_of_another_course_nearby_is_asked_about_and_has_no_missed_point():
    """Bug: it was graded as missed, with no question of whose it is."""
    away = track((0.0, 1500.0), (-300.0, 1900.0), (200.0, 2300.0), source="a.gpx")
    made = grade({"east": LANE.plan}, [away], read_standard("day-course"))
    assert [one.what for one in made.findings] == ["other-course"]
    assert "may be of another course" in made.findings[0].message
    assert {leg.point.grade for leg in made.walkers[0].legs} == {"no-evidence"}
    assert whose_walk_is_asked(made) == {made.walkers[0].ident}
