"""Whose recording is whose: fits, swaps, parts and leftovers, on lanes laid out by hand."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from classroom.hand_made import BEGIN_S, lane, track

from audit.classroom.class_draft import ClassInputs, draft_class
from audit.classroom.walks_in_file import look_through, part_of, put_together
from audit.errors import InputRefusedError
from audit.roster import Roster, RosterEntry
from audit.settings import Settings
from audit.standard import Standard

EAST = lane("east", (600.0, 100.0), (900.0, -500.0), (300.0, -700.0), (0.0, 0.0))
WEST = lane("west", (-600.0, 200.0), (-900.0, 700.0), (-200.0, 800.0), (0.0, 0.0))
EAST_WALK = ((0.0, 0.0), (600.0, 100.0), (900.0, -500.0), (300.0, -700.0), (0.0, 0.0))
WEST_WALK = ((0.0, 0.0), (-600.0, 200.0), (-900.0, 700.0), (-200.0, 800.0), (0.0, 0.0))
SETTINGS = Settings()


STANDARD = Standard(name="test", radius_m=30.0)


def drafted(tracks, *rows, lanes=(EAST, WEST), standard=STANDARD, **about):
    recordings = tuple(look_through(one.source, one, lanes, SETTINGS) for one in tracks)
    roster = Roster(entries=rows, source="roster.csv") if rows else None
    return draft_class(
        ClassInputs(lanes=lanes, recordings=recordings, standard=standard, version="1",
                    roster=roster, **about)
    )  # fmt: skip


def whats(draft):
    return [finding.what for finding in draft.findings]


def test_without_a_roster_each_recording_has_the_lane_it_fits():
    draft = drafted([track(*WEST_WALK, source="one.gpx"), track(*EAST_WALK, source="two.gpx")])
    assert [(task.name, task.lane) for task in draft.tasks] == [("one", "west"), ("two", "east")]
    assert draft.findings == ()


def test_a_lane_walked_the_other_way_round_is_not_that_lane():
    (task,) = drafted([track(*EAST_WALK[::-1])], lanes=(EAST,)).tasks
    assert task.own_lane_fit is not None
    assert task.own_lane_fit.passed < 0.7


def test_swapped_devices_are_asked_about_and_nothing_is_moved():
    draft = drafted(
        [track(*WEST_WALK, source="R1.gpx"), track(*EAST_WALK, source="R2.gpx")],
        RosterEntry(name="Adder", lane="east", device="R1"),
        RosterEntry(name="Bittern", lane="west", device="R2"),
    )
    assert [(task.lane, task.tracks) for task in draft.tasks] == [
        ("east", ("R1.gpx",)), ("west", ("R2.gpx",))
    ]  # fmt: skip
    assert whats(draft) == ["other-lane", "other-lane"]
    assert all(finding.question for finding in draft.findings)


def test_a_device_is_a_word_of_the_file_s_name():
    draft = drafted(
        [track(*EAST_WALK, source="R1_09.gpx"), track(*EAST_WALK, source="R11_09.gpx")],
        RosterEntry(name="Adder", device="R11"),
        RosterEntry(name="Bittern", device="R1"),
    )
    assert [task.tracks for task in draft.tasks] == [("R11_09.gpx",), ("R1_09.gpx",)]


def test_one_walk_in_two_files_is_joined_and_told():
    whole = track(*EAST_WALK)
    cut = BEGIN_S + 900.0
    parts = [
        replace(part_of(whole, (0.0, cut)), source="a.gpx"),
        replace(part_of(whole, (cut + 60.0, np.inf)), source="b.gpx"),
    ]
    draft = drafted(parts)
    (task,) = draft.tasks
    assert task.tracks == ("a.gpx", "b.gpx")
    assert task.track is not None
    assert len(task.track) == len(parts[0]) + len(parts[1])
    assert whats(draft) == ["files-joined"]


def test_one_who_sets_out_as_another_comes_in_is_not_joined_to_him():
    first = track(*EAST_WALK, source="a.gpx")
    second = track(*EAST_WALK, source="b.gpx", begin_s=float(first.time_s[-1]) + 30.0)
    draft = drafted([first, second])
    assert len(draft.tasks) == 2
    assert draft.findings == ()


def test_two_walks_in_one_file_are_parted_at_the_start():
    both = track(*EAST_WALK, *WEST_WALK[1:], source="both.gpx")
    draft = drafted([both])
    assert [(task.lane, task.attempt) for task in draft.tasks] == [("east", 1), ("west", 2)]
    lengths = [len(task.track) for task in draft.tasks]
    assert abs(sum(lengths) - len(both)) <= 1
    assert min(lengths) > 0.3 * len(both)


def test_a_lane_that_passes_its_start_again_is_one_walk():
    """Bug: at each return to the start the walk was cut, and a rest there was a walk as well."""
    loops = lane("loops", (400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    way = ((0.0, 0.0), (400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    rest = ((60.0, 0.0), (0.0, 0.0))  # left and come back to, as by who fetches water
    walk = track(*rest, *way, *rest)
    (task,) = drafted([walk], lanes=(loops,)).tasks
    assert len(task.track) == len(walk)
    other_way_round = track(way[0], way[3], way[0], way[1], way[0])
    assert len(drafted([other_way_round], lanes=(loops,)).tasks) == 1


@pytest.mark.parametrize("walks", [2, 3])
def test_walks_of_a_lane_that_passes_its_start_again_are_parted_between_them(walks):
    loops = lane("loops", (400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    way = ((400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    tasks = drafted([track((0.0, 0.0), *way * walks)], lanes=(loops,)).tasks
    assert [task.own_lane_fit.passed for task in tasks] == [1.0] * walks
    lengths = [len(task.track) for task in tasks]
    assert max(lengths) < 1.1 * min(lengths)


def one_after_another(*walks, gap_s):
    """One recording of walks from the start, the second so long after the first."""
    first = track((0.0, 0.0), *walks[0])
    begin_s = float(first.time_s[-1]) + 5.0 + gap_s
    return replace(put_together([first, track((0.0, 0.0), *walks[1], begin_s=begin_s)]),
                   source="both.gpx")  # fmt: skip


@pytest.mark.parametrize("gap_s", [0.0, 1200.0, 86_400.0])
def test_a_loop_walked_twice_with_other_points_missed_is_two_walks(gap_s):
    """Bug: it was graded as one walk that passed, made up of the points of both."""
    one, two, three, home = EAST_WALK[1:]
    draft = drafted([one_after_another((one, two, home), (two, three, home), gap_s=gap_s)])
    assert [task.own_lane_fit.passed for task in draft.tasks] == [0.8, 0.8]
    assert draft.findings == ()


def test_one_walk_or_two_that_the_points_do_not_tell_apart_is_asked_about():
    """It may be one walk that came by the start, or two that gave up: a silence there tells."""
    way = ((600.0, 100.0), (900.0, -300.0), (800.0, -900.0), (200.0, -800.0), (0.0, 0.0))
    loop, halves = lane("loop", *way), (way[:2] + way[4:], way[2:])
    draft = drafted([one_after_another(*halves, gap_s=0.0)], lanes=(loop,))
    assert [task.own_lane_fit.passed for task in draft.tasks] == [1.0]
    assert [(one.what, one.walkers, one.question) for one in draft.findings] == [
        ("perhaps-two-walks", ("both",), True)
    ]
    assert len(drafted([one_after_another(*halves, gap_s=1200.0)], lanes=(loop,)).tasks) == 2


def test_a_rest_at_the_start_parts_no_walk_of_a_lane_that_comes_back_there():
    way = ((400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    loops = lane("loops", *way)
    draft = drafted([one_after_another(way[:2], way[2:], gap_s=1200.0)], lanes=(loops,))
    assert len(draft.tasks) == 1
    assert draft.findings == ()


@pytest.mark.parametrize("gap_s", [0.0, 1200.0])
def test_a_lane_whose_leg_comes_by_its_start_is_one_walk_and_not_asked_about(gap_s):
    way = ((400.0, 300.0), (600.0, 0.0), (-600.0, 0.0), (-400.0, -300.0), (0.0, 0.0))
    eight = lane("eight", *way)
    halves = (*way[:2], way[-1]), way[2:]
    draft = drafted([one_after_another(*halves, gap_s=gap_s)], lanes=(eight,))
    assert len(draft.tasks) == 1
    assert draft.findings == ()
    assert len(drafted([one_after_another(way, way, gap_s=gap_s)], lanes=(eight,)).tasks) == 2


def test_a_short_lane_and_a_long_one_in_one_file_are_two_walks():
    """Bug: what the short one passed was held against the many points of the long one."""
    short = lane("short", (-250.0, 150.0), (-250.0, -150.0))
    way = ((300, 100), (600, 150), (900, 0), (1000, -300), (900, -600), (600, -700), (300, -650),
           (100, -400), (0, 0))  # fmt: skip
    both = track((0, 0), (-250, 150), (-250, -150), (0, 0), *way)
    draft = drafted([both], lanes=(short, lane("long", *way)))
    assert [task.lane for task in draft.tasks] == ["short", "long"]


def test_a_lane_within_another_parts_no_walk_of_the_longer():
    out_and_back = lane("short", (400.0, 100.0), (0.0, 0.0))
    loops = lane("loops", (400.0, 100.0), (0.0, 0.0), (-300.0, 400.0), (0.0, 0.0))
    walk = track((0.0, 0.0), (400.0, 100.0), (0.0, 0.0), (-300.0, 420.0), (0.0, 0.0))
    assert len(drafted([walk], lanes=(out_and_back, loops)).tasks) == 1


def test_a_roster_gives_each_of_two_walks_in_one_file_its_own():
    both = track(*EAST_WALK, *EAST_WALK[1:], source="both.gpx")
    rows = [RosterEntry(name="Adder", files=("both.gpx",), attempt=n) for n in (1, 2)]
    first, second = drafted([both], *rows, lanes=(EAST,)).tasks
    assert first.track.time_s[-1] <= second.track.time_s[0] + 1e-6


def test_leftovers_are_told():
    draft = drafted(
        [track(*EAST_WALK, source="R1.gpx"), track(*EAST_WALK, source="R9.gpx")],
        RosterEntry(name="Adder", lane="east", device="R1"),
        RosterEntry(name="Bittern", lane="east", files=("R2.gpx",)),
    )
    assert sorted(whats(draft)) == ["no-recording", "recording-missing", "recording-without-walker"]


def test_a_recording_that_was_copied_is_asked_about_once():
    """Bug: the copy of a walk was another walk too, and somebody was asked who had walked it."""
    tracks = [track(*EAST_WALK, source=f"{name}.gpx") for name in ("R3", "R3 (1)")]
    copies = tuple(
        replace(look_through(one.source, one, (EAST,), SETTINGS), digest="same") for one in tracks
    )
    roster = Roster(entries=(RosterEntry(name="Adder", lane="east", device="R3"),))
    standard = Standard(name="test", radius_m=30.0)
    inputs = ClassInputs(
        lanes=(EAST,), recordings=copies, standard=standard, version="1", roster=roster
    )
    assert whats(draft_class(inputs)) == ["same-recording"]


def test_unknown_lanes_are_refused_with_all_of_them():
    rows = [RosterEntry(name="Adder", lane=one, line=n) for n, one in enumerate(("n", "east", "s"))]
    with pytest.raises(InputRefusedError) as refused:
        drafted([track(*EAST_WALK)], *rows)
    assert len(refused.value.problems) == 2


@pytest.mark.parametrize("written", ["east", "East", "Lane east", "lane-EAST"])
def test_a_lane_is_known_by_its_plan_or_course_whatever_the_signs(written):
    draft = drafted([track(*EAST_WALK)], RosterEntry(name="Adder", lane=written, files=("t",)))
    assert draft.tasks[0].lane == "east"


def test_the_clock_of_a_batch_is_put_right_by_the_first_crossing():
    slow_s = 3600.0
    tracks = [
        track(*EAST_WALK, source=f"R{n}.gpx", begin_s=BEGIN_S + 600.0 * n - slow_s)
        for n in range(3)
    ]
    rows = [
        RosterEntry(
            name=f"W{n}", device=f"R{n}", lane="east",
            start=dt.datetime.fromtimestamp(BEGIN_S + 600.0 * n + 60.0, dt.UTC),
        )
        for n in range(3)
    ]  # fmt: skip
    asked = drafted(tracks, *rows)
    assert "clock" in whats(asked)
    right = drafted(tracks, *rows, shift_s=None)
    assert right.clock.shift_s == pytest.approx(slow_s, abs=20.0)  # a halt of a minute at the gate
    assert "clock" not in whats(right)
    assert right.tasks[0].track.time_s[0] == pytest.approx(BEGIN_S, abs=20.0)


def test_one_device_used_twice_gives_each_row_the_walk_that_begins_at_its_start():
    late_s = BEGIN_S + 6.0 * 3600.0
    tracks = [track(*EAST_WALK, source="R1-2.gpx", begin_s=late_s),
              track(*EAST_WALK, source="R1.gpx")]  # fmt: skip
    starts = [dt.datetime.fromtimestamp(at, dt.UTC) for at in (late_s, BEGIN_S)]
    rows = [RosterEntry(name=f"W{n}", device="R1", start=at) for n, at in enumerate(starts)]
    draft = drafted(tracks, *rows)
    assert [task.tracks for task in draft.tasks] == [("R1-2.gpx",), ("R1.gpx",)]
    without = drafted(tracks, *[replace(row, start=None) for row in rows])
    assert [task.tracks for task in without.tasks] == [("R1.gpx",), ("R1-2.gpx",)]
    alone = drafted(tracks, rows[0])
    assert alone.tasks[0].tracks == ("R1-2.gpx",)
    assert whats(alone) == ["walks-in-one-file"]


def test_files_in_one_cell_are_one_walk():
    whole = track(*EAST_WALK)
    cut = BEGIN_S + 900.0
    parts = [replace(part_of(whole, (0.0, cut)), source="a.gpx"),
             replace(part_of(whole, (cut + 60.0, np.inf)), source="b.gpx")]  # fmt: skip
    draft = drafted(parts, RosterEntry(name="Adder", lane="east", files=("b.gpx", "a.gpx")))
    (task,) = draft.tasks
    assert len(task.track) == len(parts[0]) + len(parts[1])
    assert np.all(np.diff(task.track.time_s) > 0.0)  # in order of time, whatever the cell's
    assert draft.findings == ()


DAY_S = 86_400.0
DAY = dt.datetime.fromtimestamp(BEGIN_S, dt.UTC).date()
DATED = lane("east", *EAST_WALK[1:], date=DAY)


def weekend(*walks):
    """One recording of walks on the days before the planned one and on it, at the same hour."""
    tracks = [
        track(*walk, begin_s=BEGIN_S + DAY_S * (number + 1 - len(walks)))
        for number, walk in enumerate(walks)
    ]
    return replace(put_together(tracks), source="weekend.gpx")


def test_of_a_recording_of_several_days_a_row_has_the_walk_of_the_plan_s_day():
    """Bug: a clock time returns each day, so that all tied and the first day's was graded."""
    clock = dt.datetime.fromtimestamp(BEGIN_S + 60.0, dt.UTC).timetz()
    row = RosterEntry(name="Adder", lane="east", files=("weekend.gpx",), start=clock)
    walks = (EAST_WALK, WEST_WALK, EAST_WALK)
    (task,) = drafted([weekend(*walks)], row, lanes=(DATED, WEST)).tasks
    assert task.track.time_s[0] == pytest.approx(BEGIN_S, abs=120.0)
    friday = dt.datetime.fromtimestamp(BEGIN_S - 2.0 * DAY_S, dt.UTC)
    (task,) = drafted([weekend(*walks)], replace(row, start=friday), lanes=(DATED, WEST)).tasks
    assert task.track.time_s[0] == pytest.approx(BEGIN_S - 2.0 * DAY_S, abs=120.0)


def test_of_a_plan_used_again_a_row_has_the_walk_that_begins_at_its_start():
    """Bug: the walk of the day nearer to the plan's was taken, hours off the row's start."""
    at_s = BEGIN_S + 7.0 * DAY_S
    walks = [track(*EAST_WALK, begin_s=begun_s) for begun_s in (at_s - 19.0 * 3600.0, at_s)]
    clock = dt.datetime.fromtimestamp(at_s, dt.UTC).timetz()
    row = RosterEntry(name="Adder", lane="east", files=("week.gpx",), start=clock)
    (task,) = drafted([replace(put_together(walks), source="week.gpx")], row, lanes=(DATED,)).tasks
    assert task.track.time_s[0] == pytest.approx(at_s, abs=120.0)


def test_where_no_start_is_known_a_row_has_the_walk_that_fits_its_lane():
    both = track(*WEST_WALK, *EAST_WALK[1:], source="both.gpx")
    draft = drafted([both], RosterEntry(name="Adder", lane="east", files=("both.gpx",)))
    assert draft.tasks[0].better_lane is None
    assert whats(draft) == ["walks-in-one-file"]


def days(*begun, **about):
    tracks = [
        track(*EAST_WALK, source=f"{number}.gpx", begin_s=BEGIN_S + DAY_S * day)
        for number, day in enumerate(begun)
    ]
    asked = drafted(tracks, lanes=(DATED,), **about).findings
    return [(one.what, one.walkers, one.question) for one in asked]


def test_a_recording_of_another_day_than_the_plan_is_asked_about():
    assert days(0, 0, 0) == []
    assert days(0, -1, 0) == [("other-day", ("1",), True)]
    assert days(3) == [("other-day", ("0",), True)]


def test_a_plan_used_again_is_asked_about_once_and_so_is_who_differs():
    assert days(7, 7, 7) == [("day", (), True)]
    assert days(7, 0, 7) == [("day", (), True), ("other-day", ("1",), True)]


def test_who_walked_on_the_day_that_the_roster_names_is_not_asked_about():
    """Bug: a make-up walk was asked about, and its record thrown away, whatever the roster said."""
    tracks = [
        track(*EAST_WALK, source=f"{number}.gpx", begin_s=BEGIN_S + DAY_S * day)
        for number, day in enumerate((0, 0, 3))
    ]
    starts = [dt.datetime.fromtimestamp(one.time_s[0] - 600.0, dt.UTC) for one in tracks]
    rows = [
        RosterEntry(name=str(number), lane="east", files=(f"{number}.gpx",), start=start)
        for number, start in enumerate(starts)
    ]
    assert "other-day" not in whats(drafted(tracks, *rows, lanes=(DATED,)))
    rows[2] = replace(rows[2], start=starts[2] - dt.timedelta(days=1))
    assert "other-day" in whats(drafted(tracks, *rows, lanes=(DATED,)))
    rows[2] = replace(rows[2], start=starts[2].timetz())
    assert "other-day" in whats(drafted(tracks, *rows, lanes=(DATED,)))


def test_a_class_without_names_tells_no_other_day_than_the_plan_s():
    tracks = [track(*EAST_WALK, source=f"{n}.gpx", begin_s=BEGIN_S - DAY_S) for n in range(2)]
    (finding,) = drafted(tracks, lanes=(DATED,), private=True).findings
    assert DAY.isoformat() in finding.message
    assert (DAY - dt.timedelta(days=1)).isoformat() not in finding.message
