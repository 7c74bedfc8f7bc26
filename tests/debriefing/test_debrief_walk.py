"""The whole pipeline: plan and recording in, finished debrief out."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from debriefing.hand_walked import (
    COURSE,
    NO_TIMES,
    TIME_S,
    WALK,
    plan_of,
    track_of,
)
from measurement.hand_made import BEGIN, HandWalk, receiver
from real.debriefs import check as holds_of_every_debrief
from walks import make_walk

import audit
from audit.reports import page_legs
from audit.reports.json_report import render_json
from audit.walkers_log import LogEntry, WalkersLog

DEGENERATE = {
    "two fixes": (COURSE, [BEGIN, BEGIN + 600], [(0, 0), (400, 0)]),
    "two fixes, five seconds": (COURSE, [BEGIN, BEGIN + 5], [(0, 0), (6, 0)]),
    "two fixes, one second": (COURSE, [BEGIN, BEGIN + 1], [(0, 0), (1, 0)]),
    "two fixes without times": (COURSE, [np.nan] * 2, [(0, 0), (400, 0)]),
    "three fixes": (COURSE, [BEGIN, BEGIN + 300, BEGIN + 600], COURSE),
    "all fixes in one place": (COURSE, TIME_S, np.zeros_like(WALK)),
    "all fixes in one place, not at a point": (COURSE, TIME_S, np.zeros_like(WALK) + 900.0),
    "a leg of a metre": (((0.0, 0.0), (1.0, 0.0)), TIME_S, WALK),
    "a leg of a metre and one of 399": (((0.0, 0.0), (1.0, 0.0), (400.0, 0.0)), TIME_S, WALK),
    "every minute": (COURSE, TIME_S[::60], WALK[::60]),
    "every two minutes": (COURSE, TIME_S[::120], WALK[::120]),
    "without times": (COURSE, NO_TIMES, WALK),
    "without times, every 50 m": (COURSE, NO_TIMES[::40], WALK[::40]),
    "one time for all": (COURSE, np.full(len(WALK), BEGIN), WALK),
    "beside the course": (COURSE, TIME_S, WALK + np.array([0.0, 2000.0])),
    "half of it far away": (
        COURSE,
        TIME_S,
        WALK + (TIME_S > BEGIN + 300)[:, None] * np.array([5e4, 0.0]),
    ),
    "the course backward": (COURSE, TIME_S, WALK[::-1]),
    "every fix twice": (COURSE, np.repeat(TIME_S, 2), np.repeat(WALK, 2, axis=0)),
}


def check(debrief) -> dict:
    """What holds of every debrief, and of places that the recorder saw."""
    holds_of_every_debrief(debrief)
    for leg in debrief.legs:
        measures = leg.audit.measures
        if measures is None:
            continue
        assert all(0.0 <= cause.probability <= 1.0 for cause in leg.causes)
        assert measures.miss_m == pytest.approx(np.hypot(*measures.ledger.total), abs=1e-6)
        assert measures.path_m >= measures.straight_m - 1e-9
        assert measures.nearest_m <= measures.miss_m + 1e-9
        assert measures.found == (measures.nearest_m <= debrief.card.arrival_radius_m)
        assert measures.heading.sd_deg > 0.0
    frame = debrief.legs_frame()
    assert len(frame) == len(debrief.legs)
    return debrief.to_dict()


@pytest.mark.parametrize("name", DEGENERATE)
def test_poor_recordings_give_a_result_or_one_sentence(name) -> None:
    course, time_s, place = DEGENERATE[name]
    found = audit.debrief(plan_of(*course), track_of(time_s, place))
    check(found)
    if not any(leg.audit.measures for leg in found.legs):
        # Nobody is left with "not started" and no word why.
        told = [n for n in found.quality.notes if "no leg can be recognised" in n or "No leg" in n]
        assert len(told) == 1


def test_single_fix_is_no_walk() -> None:
    with pytest.raises(audit.InputRefusedError, match=r"walk\.gpx: 1 usable fix is no walk\. Give"):
        audit.debrief(plan_of(*COURSE), track_of([BEGIN], [(0.0, 0.0)]))


def test_walk_of_another_course_is_refused() -> None:
    with pytest.raises(audit.InputRefusedError) as refused:
        audit.debrief(plan_of(*COURSE), track_of(TIME_S, WALK + np.array([0.0, 9000.0])))
    (problem,) = refused.value.problems
    assert "comes no nearer than 8.7 km to the course (nearest point: P2)" in str(problem)
    assert "walk.gpx" in str(problem)


@pytest.fixture(scope="module")
def good():
    noise = receiver(4, 3.0)
    return audit.debrief(
        plan_of(*COURSE, paces_per_100m=65.0), track_of(TIME_S, WALK + noise(len(WALK)))
    )


def test_course_walked_well(good) -> None:
    document = check(good)
    assert [leg.audit.status for leg in good.legs] == ["walked", "walked"]
    for leg, azimuth, length in zip(good.legs, (90.0, 0.0), (400.0, 300.0), strict=True):
        measures = leg.audit.measures
        assert measures.azimuth_error_deg == pytest.approx(0.0, abs=2.0)
        assert measures.straight_m == pytest.approx(length, abs=10.0)
        assert measures.found
        assert leg.causes[0].cause == "within-skill"
        assert measures.paces == pytest.approx(0.65 * measures.straight_m)
        turn = (measures.heading.azimuth.degrees - azimuth + 180.0) % 360.0 - 180.0
        assert turn == pytest.approx(measures.azimuth_error_deg, abs=1e-9)
    assert document["track"]["median_interval_s"] == 1.0
    assert document["track"]["start"] == "2026-10-03T08:00:00Z"


def test_paces_of_the_log_stand_against_their_leg() -> None:
    log = WalkersLog(entries=(LogEntry(leg="2", paces=199.0),))
    found = audit.debrief(plan_of(*COURSE), track_of(TIME_S, WALK), log=log)
    first, second = (leg.audit.measures for leg in found.legs)
    assert first.paces is None
    assert (second.paces, second.paces_from) == (199.0, "log")


def test_recording_without_times_has_no_time_figures() -> None:
    found = audit.debrief(plan_of(*COURSE), track_of(NO_TIMES, WALK))
    document = found.to_dict()
    assert document["track"]["start"] is None
    assert document["track"]["median_interval_s"] is None
    assert all(span["start"] is None for span in document["spans"])
    for leg in document["legs"]:
        assert leg["walked"]["duration_s"] is None
        assert leg["walked"]["halted_s"] is None
        assert leg["start"]["time"] is None
        assert leg["nearest_approach"]["time"] is None
        assert leg["walked"]["straight_m"] > 250.0
    assert any("no usable times" in note for note in document["track"]["notes"])


def test_legs_that_were_not_walked_have_null_measurements() -> None:
    # Walks the first leg and goes home.
    walk = HandWalk().halt(60).walk(90, 400).halt(120).walk(225, 500)
    place = np.array(walk.places)
    plan = plan_of((0, 0), (400, 0), (400, 400), (0, 400))
    document = audit.debrief(plan, track_of(BEGIN + np.arange(len(place)), place)).to_dict()
    last = document["legs"][-1]
    assert last["status"] == "not-started"
    for key in ("start", "end", "walked", "azimuth_error_deg", "distance_error_m", "distance_ratio",
                "cross_track", "own_cross_track", "miss", "found", "ledger"):  # fmt: skip
        assert last[key] is None
    assert last["causes"] == []


def test_day_of_the_walk_is_the_tracks_where_the_plan_has_none() -> None:
    plan = replace(plan_of(*COURSE), date=None, grid_magnetic_angle_deg=None)
    found = audit.debrief(plan, track_of(TIME_S, WALK))
    assert found.card.date == dt.date(2026, 10, 3)
    assert found.card.date_source == "track"
    assert found.card.angle_source == "model"


@pytest.mark.parametrize("difficulty", ["ordinary", "novice", "worst-day"])
@pytest.mark.parametrize("seed", range(4))
def test_made_walks_hold_what_every_debrief_holds(difficulty, seed) -> None:
    walk = make_walk(seed, difficulty)
    check(audit.debrief(walk.plan, walk.track))


def test_same_walk_gives_the_same_bytes() -> None:
    walk = make_walk(3, "ordinary")
    texts = {render_json(audit.debrief(walk.plan, walk.track)) for _ in range(2)}
    assert len(texts) == 1


def test_what_was_reckoned_into_a_silence_is_told_and_not_called_seen() -> None:
    """The recorder is silent from 50 m before the first point until 50 m after it.

    Nobody saw the walker there, so he is not said to have come nearer than he was seen.
    """
    silent = (TIME_S > BEGIN + 60 + 280) & (TIME_S < BEGIN + 60 + 320 + 60 + 40)
    debrief = audit.debrief(plan_of(*COURSE), track_of(TIME_S[~silent], WALK[~silent]))
    one, two = (leg["details"] for leg in debrief.to_dict()["legs"])
    assert one["claim_cut"]["marked_by"] == two["start_cut"]["marked_by"] == "reckoned"
    assert one["claim_cut"]["place_sd_m"] > 15.0
    first = debrief.to_dict()["legs"][0]
    assert first["nearest_approach"]["distance_m"] > 30.0
    assert first["miss"]["distance_m"] < 2.0 * one["claim_cut"]["place_sd_m"]
    told = [note for note in debrief.quality.notes if "was silent when leg" in note]
    assert len(told) == 2
    assert "on along the way walked before" in told[0]
    assert "back along the way walked afterwards" in told[1]
    # Each leg's own part of the page says so of its own end.
    assert [told[0] in page_legs.unsure(leg) for leg in debrief.legs[:2]] == [True, False]
    assert [told[1] in page_legs.unsure(leg) for leg in debrief.legs[:2]] == [False, True]


def test_log_and_card_are_read_where_their_paths_are_given(tmp_path) -> None:
    """Bug: AttributeError on `log="log.csv"`."""
    log, card = tmp_path / "log.csv", tmp_path / "card.csv"
    log.write_text("leg,magnetic_azimuth_deg,paces\n1,97,260\n", encoding="utf-8")
    plan, track = plan_of(*COURSE), track_of(TIME_S, WALK)
    first = plan.legs[0]
    card.write_text(f"from,to,paces\n{first.start},{first.end},260\n", encoding="utf-8")
    read = audit.debrief(
        plan,
        track,
        log=audit.read_log(log),
        own_card=audit.read_plan(card, points=plan.points, grid=plan.grid),
    )
    for form in (str, Path):
        given = audit.debrief(plan, track, log=form(log), own_card=form(card))
        assert given.to_dict() == read.to_dict()


@pytest.mark.parametrize("name", ["plan", "track"])
def test_a_path_of_plan_or_track_is_told_how_to_be_read(name) -> None:
    """Bug: AttributeError: 'str' object has no attribute 'grid'."""
    given = {"plan": plan_of(*COURSE), "track": track_of(TIME_S, WALK)} | {name: "a file"}
    with pytest.raises(TypeError, match=rf"{name} is a str; give what audit\.read_{name} makes"):
        audit.debrief(**given)


def test_how_near_a_walk_came_is_told_of_a_leg_that_was_not_walked() -> None:
    """Bug: null, though the document says how near the walker came to the point at all."""
    far = plan_of(*COURSE, (900.0, 300.0), order="free")
    document = audit.debrief(far, track_of(TIME_S, WALK)).to_dict()
    (left,) = [leg for leg in document["legs"] if leg["status"] != "walked"]
    assert left["nearest_approach"]["distance_m"] == pytest.approx(500.0, abs=1.0)
    assert left["nearest_approach"]["time"] >= "2026"
    assert left["miss"] is None
