"""What a recording shows of a walk where it begins late, breaks off, or goes on at the finish."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from classroom.hand_made import BEGIN_S, lane, track

from audit.classroom.approaches import approaches
from audit.classroom.grade_class import grade
from audit.classroom.recorded_part import _from_line_m
from audit.classroom.walks_in_file import part_of
from audit.debriefing.debrief_walk import debrief
from audit.readers.standard_file import read_standard
from audit.settings import Settings

ROUND = ((600.0, 100.0), (900.0, -500.0), (300.0, -700.0), (0.0, 0.0))
WALK = ((0.0, 0.0), *ROUND)
LANE = lane("round", *ROUND)
LIMIT_S = 3000.0
"""The way of 2659 m at 1.2 m/s and three halts of 60 s take 2400 s."""
STOPS_M = np.cumsum([0.0, *np.hypot(*np.diff(np.array(WALK), axis=0).T)])
STANDARD = replace(read_standard("day-course"), points_to_find=None, time_limit_s=LIMIT_S)


def graded(*tracks):
    result = grade({"round": LANE.plan}, [*tracks], STANDARD)
    return {one.name: one for one in result.walkers}


def points(walker):
    return [leg.point.grade for leg in walker.legs]


def until(metres, **about):
    """The recording of the walk up to so many metres of its way, halts left in."""
    whole = track(*WALK, **about)
    halts = 60.0 * (1 + np.count_nonzero(STOPS_M[1:] <= metres))
    return part_of(whole, (0.0, BEGIN_S + halts + metres / 1.2))


def stopped_on_arriving(walk, source):
    """The recording without the halt of 60 s at its last place."""
    return replace(part_of(walk, (0.0, float(walk.time_s[-1]) - 65.0)), source=source)


WHOLE_M = float(STOPS_M[-1])


@pytest.fixture(scope="module")
def walkers():
    home = ((0.0, 0.0), *ROUND[:2], (0.0, 0.0), (0.0, 0.0))
    return graded(
        track(*WALK, source="whole.gpx"),
        track(*WALK, *[(0.0, 0.0)] * 25, source="rests-25-min.gpx"),
        until(120.0, source="breaks-off-early.gpx"),
        part_of(track(*WALK, source="never-left.gpx"), (0.0, BEGIN_S + 50.0)),
        until(WHOLE_M - 110.0, source="breaks-off-late.gpx"),
        until(WHOLE_M - 70.0, source="breaks-off-near.gpx"),
        track(*home, source="went-home.gpx"),
        part_of(track(*WALK, source="begins-at-1.gpx"), (BEGIN_S + 575.0, np.inf)),
    )


def test_the_time_ends_on_arriving_however_long_the_walker_rests_at_the_finish(walkers):
    """Bug: the nearest approach while resting at the finish was the time; failed as too late."""
    whole, rests = walkers["whole"], walkers["rests-25-min"]
    truth_s = WHOLE_M / 1.2 + 3 * 60.0
    for one in (whole, rests):
        assert one.time.elapsed_s == pytest.approx(truth_s, abs=one.time.error_s)
        assert one.verdict.grade == "pass"
    assert rests.time.elapsed_s == pytest.approx(whole.time.elapsed_s, abs=5.0)
    assert whole.time.error_s < 60.0  # s: no more than a way across the circle of 30 m


def test_rest_before_the_start_and_after_the_finish_is_no_time_of_the_walk(walkers):
    """Bug: waiting at both was counted as halted, though the page says from start to claim."""
    for one in (walkers["whole"], walkers["rests-25-min"]):
        assert one.halted_s == pytest.approx(3 * 60.0, abs=60.0)  # s, three halts on the way
        spent = one.moving_s + one.searching_s + one.halted_s
        assert spent == pytest.approx(one.time.elapsed_s, abs=60.0)


@pytest.mark.parametrize("name", ["breaks-off-early", "never-left"])
def test_a_recording_that_ends_near_the_start_is_no_evidence(walkers, name):
    """Bug: what broke off within 150 m of the start was missed, and a fail."""
    assert set(points(walkers[name])) == {"no-evidence"}
    assert walkers[name].verdict.grade == "no-evidence"
    assert walkers[name].time.ended_s is None  # nor is the rest before setting out an arrival


@pytest.mark.parametrize("name", ["breaks-off-late", "breaks-off-near"])
def test_a_recording_that_ends_on_the_way_to_the_finish_misses_nothing(walkers, name):
    """Bug: what broke off within 150 m of the finish was missed, and a fail."""
    assert points(walkers[name]) == ["found", "found", "found", "no-evidence"]
    assert walkers[name].verdict.grade == "doubtful"


def test_who_went_home_with_the_recorder_running_missed_the_rest(walkers):
    assert points(walkers["went-home"])[:3] == ["found", "found", "missed"]
    assert walkers["went-home"].verdict.grade == "fail"


def test_a_recording_that_begins_at_a_point_has_found_it_in_turn(walkers):
    """Bug: it was doubtful, as if the walker had been there at another time of the walk."""
    begun = walkers["begins-at-1"]
    assert points(begun) == ["found"] * 4
    said = [*begun.legs[0].point.evidence_for, *begun.legs[0].point.evidence_against]
    assert any("recording begins at this point" in one for one in said)
    assert not any("another time" in one for one in said)


def test_a_start_that_was_left_twice_is_told_and_is_in_the_error():
    astray = ((0.0, 0.0), *[(-150.0, 0.0)] * 8, *WALK)
    walker = graded(track(*astray, source="twice.gpx"))["twice"]
    assert walker.time.error_s > 300.0 / 1.2 + 8 * 60.0  # s: there, a rest, and back
    assert walker.verdict.grade == "doubtful"
    assert any("start was left 2 times" in note for note in walker.notes)


def test_who_passed_the_finish_and_came_back_has_both_moments_in_the_time():
    """A claim 90 m beyond the finish, a halt, and back: the way past took 150 s more."""
    places = (*WALK[:-1], (-38.0, 82.0), (0.0, 0.0))
    walker = graded(track(*places, source="past.gpx"))["past"]
    passed_s = WHOLE_M / 1.2 + 3 * 60.0
    assert walker.legs[-1].point.grade == "found"
    assert abs(walker.time.elapsed_s - passed_s) < walker.time.error_s
    assert abs(walker.time.elapsed_s - passed_s - 60.0 - 180.0 / 1.2) < walker.time.error_s


def test_a_point_before_a_walked_leg_is_missed_wherever_the_recorder_was_stopped():
    """Bug: stopped at the finish, the nearest place to the point left out, it was no evidence."""
    far = lane("far", (700.0, 0.0), (0.0, 700.0), (700.0, -500.0), (0.0, 0.0))
    walk = track((0.0, 0.0), (700.0, 0.0), (700.0, -500.0), (0.0, 0.0), source="rests.gpx")
    tracks = [walk, stopped_on_arriving(walk, "stops.gpx")]
    for walker in grade({"far": far.plan}, tracks, STANDARD).walkers:
        assert points(walker)[1] == "missed"


def test_a_last_point_that_the_debrief_calls_missed_is_missed_by_the_class():
    """Bug: the recorder stopped on arriving 156 m off, and the class had no evidence."""
    walk = track(*WALK[:-1], (-150.0, -60.0))
    (walker,) = graded(stopped_on_arriving(walk, "aside.gpx")).values()
    assert walker.legs[-1].status == "walked"
    assert walker.legs[-1].point.approach.debriefed.verdict == "missed"
    assert points(walker) == ["found", "found", "found", "missed"]


def test_a_recording_that_ends_straight_before_a_point_misses_nothing_whatever_the_debrief_says():
    """Bug: with 45 m to go the debrief takes the end of the recording for that of the leg."""
    found = debrief(LANE.plan, until(WHOLE_M - 48.0))
    leg = found.legs[-1]
    measures = leg.audit.measures
    point = replace(measures.details.point, verdict="missed")
    measures = replace(measures, details=replace(measures.details, point=point))
    legs = (*found.legs[:-1], replace(leg, audit=replace(leg.audit, measures=measures)))
    assert approaches(replace(found, legs=legs), Settings())[-1] is None


def test_a_point_that_the_recording_does_not_show_says_so(walkers):
    """Bug: the verdict no evidence had not a sentence."""
    open_points = [leg.point for leg in walkers["breaks-off-early"].legs]
    for point in (*open_points, walkers["breaks-off-late"].legs[-1].point):
        assert any("does not show the way" in one for one in point.evidence_for)


@pytest.mark.parametrize("late_m", [40.0, 60.0, 140.0])
def test_a_recording_that_begins_near_the_start_hides_no_point_left_out(late_m):
    """Bug: begun 41 to 150 m from the start it hid a first point 608 m away."""
    walk = track((0.0, 0.0), *ROUND[1:])
    (walker,) = graded(part_of(walk, (BEGIN_S + 55.0 + late_m / 1.2, np.inf))).values()
    assert points(walker)[0] == "missed"


@pytest.mark.parametrize(("third", "before_m"), [((-100.0, 80.0), 110.0), ((-60.0, 150.0), 20.0)])
def test_a_recording_that_begins_where_a_later_leg_comes_by_the_start_misses_nothing(
    third, before_m
):
    """Begun on the third leg, which passes the start: what came before is open."""
    places = ((600.0, 100.0), (600.0, -400.0), third, (-700.0, -300.0))
    way_m = np.hypot(*np.diff(np.array([(0.0, 0.0), *places]), axis=0).T)
    begun_m = way_m[:2].sum() + np.hypot(600.0, 400.0) - before_m
    late = part_of(track((0.0, 0.0), *places), (BEGIN_S + 180.0 + begun_m / 1.2, np.inf))
    (walker,) = grade({"by": lane("by", *places).plan}, [late], STANDARD).walkers
    assert points(walker)[:2] == ["no-evidence", "no-evidence"]


def test_a_round_recorded_from_its_last_point_on_has_found_it_in_turn():
    """Bug: the finish, which is the start, was taken for having been at the start before."""
    late = part_of(track(*WALK), (BEGIN_S + 190.0 + STOPS_M[3] / 1.2, np.inf))
    (walker,) = graded(late).values()
    assert points(walker) == ["no-evidence", "no-evidence", "found", "found"]


def test_a_place_on_the_line_of_a_bent_leg_lies_on_it():
    """Bug: the via positions were left out, and a place on the line was told 500 m off."""
    leg = LANE.card.legs[1]
    begin, end = leg.line
    bend = begin + 500.0
    bent = replace(leg, line=np.array([begin, bend, end]))
    assert _from_line_m(complex(*bend), bent) == 0.0
    assert _from_line_m(complex(*(begin + bend) / 2.0), bent) == pytest.approx(0.0, abs=1e-6)
    assert _from_line_m(complex(*bend), leg) > 300.0
