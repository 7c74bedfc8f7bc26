"""The result of a made class as its truth has it: quick to have, for pages and statistics.

Nothing is matched or measured: starts, claims and misses are the true ones, and how near
a walk came to a point is what its recording says.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
from walks.courses import to_geographic
from walks.truth import KINDS, LegTruth

from audit.classroom.class_legs import class_legs
from audit.classroom.class_result import ClassFinding, ClassResult
from audit.classroom.class_shows import class_shows
from audit.classroom.course_faults import course_faults
from audit.classroom.lane_result import LaneLeg, LanePoint, LaneResult
from audit.classroom.walker_result import LegResult, Miss, Trace, TrackFacts, WalkerResult
from audit.grading.verdicts import Approach, PointVerdict, WalkTime, WalkVerdict
from audit.measurement.leg_details import PointReached
from audit.settings import Settings
from audit.standard import Standard
from audit.units import turn_degrees, unit_vector, wrap_degrees
from audit.words import sentence
from classes.lanes import Lane
from classes.made_class import MadeClass, MadeWalk

STANDARD = Standard(name="Day course, for tests", points_to_find=4, time_limit_s=4 * 3600.0)
RADIUS_M, ERROR_M = 30.0, 12.0
_NO_EVIDENCE = PointVerdict(grade="no-evidence", proof=None, radius_m=RADIUS_M, error_m=ERROR_M)


def true_result(made: MadeClass) -> ClassResult:
    """Give the result of a class, with all that the class shows."""
    lanes = tuple(lane_result(lane) for lane in made.lanes)
    walkers = tuple(walker_result(one, made) for one in made.walks)
    settings = Settings().class_shows
    faults = course_faults(lanes, walkers, settings)
    shows = class_shows(lanes, walkers, faults, settings)
    out = {(fault.lane, fault.leg) for fault in faults}
    walkers = tuple(_left_out(walker, out) for walker in walkers)
    return ClassResult(
        name="Fernbank Plateau, class",
        version="0.0.0",
        standard=STANDARD,
        fingerprint="0123-4567-89ab-cdef",
        lanes=lanes,
        walkers=walkers,
        legs=class_legs(lanes, walkers, shows.findings),
        findings=(*shows.findings, *_questions(walkers)),
        notes=shows.notes,
    )


def _left_out(walker: WalkerResult, out: set) -> WalkerResult:
    legs = tuple(
        replace(leg, point=replace(leg.point, left_out=(walker.lane, leg.name) in out))
        for leg in walker.legs
    )
    return replace(walker, legs=legs)


def _questions(walkers: tuple[WalkerResult, ...]) -> list[ClassFinding]:
    return [
        ClassFinding(
            what="broken-file",
            message=f"{one.name}: {one.problem}",
            walkers=(one.ident,),
            question=True,
        )
        for one in walkers
        if one.state == "refused"
    ]


def lane_result(lane: Lane) -> LaneResult:
    """Give a lane as it is planned."""
    course = lane.course
    to = to_geographic(course.grid)
    points = {}
    for name, (east, north) in zip(lane.point_names, course.points_m, strict=True):
        longitude, latitude = to.transform(east, north)
        points.setdefault(
            name,
            LanePoint(name=name, east_m=float(east), north_m=float(north),
                      longitude_deg=longitude, latitude_deg=latitude, half_square_m=0.0),
        )  # fmt: skip
    legs = tuple(
        LaneLeg(
            name=str(number + 1),
            start=lane.point_names[number],
            end=lane.point_names[number + 1],
            azimuth_deg=course.card_azimuth_deg[number],
            magnetic_deg=wrap_degrees(
                course.card_azimuth_deg[number] - course.grid_magnetic_angle_deg
            ),
            distance_m=course.card_m[number],
            line=tuple((float(e), float(n)) for e, n in course.points_m[number : number + 2]),
            climb_m=20.0 + 10.0 * number,
        )
        for number in range(course.leg_count)
    )
    return LaneResult(
        name=lane.name,
        plan_file=f"{lane.name.lower().replace(' ', '-')}.toml",
        course=f"Fernbank Plateau, {lane.name}",
        grid=course.grid,
        date="2026-09-19",
        grid_magnetic_angle_deg=course.grid_magnetic_angle_deg,
        arrival_radius_m=RADIUS_M,
        points=tuple(points.values()),
        legs=legs,
        length_m=float(sum(course.card_m)),
        climb_m=sum(leg.climb_m or 0.0 for leg in legs),
        difficulty=0.4,
        fingerprint="fedc-ba98-7654-3210",
    )


def walker_result(one: MadeWalk, made: MadeClass) -> WalkerResult:
    """Give what became of one member, as the truth has it."""
    member = one.member
    lane = made.lanes[member.lane]
    ident = f"{member.device.lower()}-{member.attempt}"
    refused = member.broken
    trace = None if refused else _trace(one)
    legs = tuple(
        LegResult(name=str(leg.leg + 1), point=_NO_EVIDENCE, status=None)
        if refused
        else _leg(leg, one, lane, trace)
        for leg in one.walk.truth.legs
    )
    grades = [leg.point.grade for leg in legs]
    kinds = np.bincount(one.walk.truth.kind, minlength=len(KINDS))
    seconds = {kind: float(count) for kind, count in zip(KINDS, kinds, strict=True)}
    begun, ended = float(one.track.time_s[0]), float(one.track.time_s[-1])
    problem = f"{member.file}: line 812: is cut short; copy the file from the device again."
    return WalkerResult(
        ident=ident,
        name=member.name,
        lane=lane.name,
        attempt=member.attempt,
        device=member.device,
        compass=member.compass,
        tracks=(member.file,),
        state="refused" if refused else "graded",
        problem=problem if refused else None,
        legs=legs,
        verdict=WalkVerdict(
            grade="no-evidence" if refused else _grade(grades),
            reasons=(f"{grades.count('found')} of {len(grades)} points found.",),
            found=grades.count("found"),
            missed=grades.count("missed"),
            doubtful=grades.count("doubtful"),
            without_evidence=grades.count("no-evidence"),
            needed=4,
            late_s=None if refused else max(0.0, ended - begun - 4 * 3600.0),
            score=None,
        ),
        time=WalkTime(begun_s=None if refused else begun, ended_s=None if refused else ended,
                      elapsed_s=None if refused else ended - begun, error_s=5.0),
        moving_s=None if refused else seconds["walking"] + seconds["bypass"],
        searching_s=None if refused else seconds["search"],
        halted_s=None if refused else seconds["halt"] + seconds["at-point"],
        trace=trace,
        track=TrackFacts(fixes=len(one.track), start_s=begun, end_s=ended,
                         median_interval_s=member.interval_s, noise_m=4.0,
                         notes=(sentence("recording-simulated"),)),
        pages=() if refused else (f"debriefs/{ident}/debrief.html",),
    )  # fmt: skip


def _grade(grades: list[str]) -> str:
    if grades.count("found") >= STANDARD.points_to_find:
        return "pass"
    return "doubtful" if grades.count("doubtful") else "fail"


def _trace(one: MadeWalk) -> Trace:
    grid = to_geographic(one.walk.course.grid)
    wanted = np.arange(one.track.time_s[0], one.track.time_s[-1], 10.0)
    step = np.unique(np.searchsorted(one.track.time_s, wanted))
    east, north = grid.transform(
        one.track.longitude_deg[step], one.track.latitude_deg[step], direction="INVERSE"
    )
    return Trace(
        time_s=tuple(one.track.time_s[step].tolist()),
        east_m=tuple(np.round(east, 1).tolist()),
        north_m=tuple(np.round(north, 1).tolist()),
    )


def _leg(leg: LegTruth, one: MadeWalk, lane: Lane, trace: Trace) -> LegResult:
    name = str(leg.leg + 1)
    late_s = 25.0 if one.member.follows else 0.0
    if leg.status != "walked" or leg.claim_s is None or leg.start_s is None:
        status = leg.status
        point = _NO_EVIDENCE if status == "not-started" else _verdict(lane, leg.leg, trace, None)
        return LegResult(name=name, status=status, point=point)
    truth, course = one.walk.truth, lane.course
    ends = [truth.index_at(leg.start_s), truth.index_at(leg.claim_s)]
    start, claim = (np.array([truth.east_m[i], truth.north_m[i]]) for i in ends)
    off = claim - course.points_m[leg.leg + 1]
    brought = start - course.points_m[leg.leg]
    ahead = unit_vector(course.card_azimuth_deg[leg.leg])
    straight = float(np.hypot(*(claim - start)))
    started, claimed = leg.start_s + late_s, leg.claim_s + late_s
    first, last = np.searchsorted(trace.time_s, [started, claimed])
    return LegResult(
        name=name,
        status="walked",
        point=_verdict(lane, leg.leg, trace, (first, len(trace.east_m))),
        confidence=0.98,
        started_s=started,
        claimed_s=claimed,
        miss=Miss(
            east_m=float(off[0]),
            north_m=float(off[1]),
            along_m=float(off @ ahead),
            across_m=float(off[0] * ahead[1] - off[1] * ahead[0]),
            sd_m=5.0,
        ),
        began_off=(float(brought[0]), float(brought[1])),
        azimuth_error_deg=turn_degrees(course.card_azimuth_deg[leg.leg], leg.azimuth_deg or 0.0),
        azimuth_sd_deg=0.7,
        straight_m=straight,
        straight_sd_m=6.0,
        distance_error_m=straight - course.card_m[leg.leg],
        distance_ratio=straight / course.card_m[leg.leg],
        cause=leg.planted[0].cause if leg.planted else "within-skill",
        cause_probability=0.93,
        named_from=0.5,
        moving_s=claimed - started,
        searching_s=0.0 if leg.search_end_s is None else leg.search_end_s - leg.claim_s,
        halted_s=30.0,
        trace_from=int(first),
        trace_to=int(last) + 1,
    )


def _debriefed(nearest_m: float) -> PointReached:
    """What a debrief makes of the same approach."""
    return PointReached(
        verdict="found" if nearest_m <= RADIUS_M else "missed",
        probability=1.0 if nearest_m <= RADIUS_M else 0.0,
        radius_m=RADIUS_M,
        sd_m=6.0,
        unseen_m=0.0,
    )


def _verdict(lane: Lane, leg: int, trace: Trace, part: tuple[int, int] | None) -> PointVerdict:
    point = lane.course.points_m[leg + 1]
    places = np.column_stack([trace.east_m, trace.north_m])
    places = places if part is None else places[slice(*part)]
    nearest = float(np.hypot(*(places - point).T).min()) if len(places) else math.inf
    grade = "found" if nearest <= RADIUS_M else "missed"
    grade = "doubtful" if RADIUS_M < nearest <= RADIUS_M + ERROR_M else grade
    nearest_words = (
        f"The nearest approach is {nearest:.0f} m, and found is within {RADIUS_M:.0f} m."
    )
    against = (f"The recording errs by {ERROR_M:.0f} m at most.",) if grade == "missed" else ()
    return PointVerdict(
        grade=grade,
        proof="track",
        radius_m=RADIUS_M,
        error_m=ERROR_M,
        approach=Approach(distance_m=nearest, sd_m=6.0, debriefed=_debriefed(nearest)),
        evidence_for=(nearest_words,) if grade != "missed" else (),
        evidence_against=(nearest_words, *against) if grade == "missed" else (),
    )
