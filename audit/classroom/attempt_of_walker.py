"""What the records keep of a graded walker."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import Any

from audit.classroom.assemble import OTHER_COURSE
from audit.classroom.class_draft import OTHER_LANE, PERHAPS_TWO, ClassDraft
from audit.classroom.class_result import ClassResult
from audit.classroom.days_asked import OTHER_DAY
from audit.classroom.lane_result import LaneLeg, LaneResult
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.school_records.attempt import Attempt, LegOfAttempt, course_print
from audit.school_records.day_or_night import light_between
from audit.school_records.day_walked import day_walked
from audit.settings import RecordsSettings
from audit.track import calls_itself_simulated

Place = tuple[float, float]
"""Longitude and latitude."""


def attempts_of_class(
    result: ClassResult, draft: ClassDraft, pseudonym: Callable[[str], str]
) -> list[Attempt]:
    """Give the attempts of all walkers that were graded, and of whose walk nobody asks.

    The roster's names count, so that a class without names keeps the same walkers, but no
    time of the day.
    """
    asked = whose_walk_is_asked(result)
    entries = draft.inputs.roster.entries if draft.inputs.roster is not None else ()
    names, limits = [entry.name for entry in entries], draft.inputs.settings.records
    names += [walker.name for walker in result.walkers[len(names) :]]
    attempts = [
        attempt_of_walker(result, walker, pseudonym(name), limits)
        for walker, name in zip(result.walkers, names, strict=False)
        if walker.state == "graded" and walker.ident not in asked
    ]
    return [one.without_clock for one in attempts] if draft.inputs.private else attempts


def whose_walk_is_asked(result: ClassResult) -> frozenset[str]:
    """Give the walkers whose recording may be of another lane, course or day, or hold two walks.

    It may be another's walk: a record cannot be asked about it any more.
    """
    return frozenset(
        walker
        for finding in result.findings
        if finding.question and finding.what in (OTHER_LANE, OTHER_COURSE, PERHAPS_TWO, OTHER_DAY)
        for walker in finding.walkers
    )


def attempt_of_walker(
    result: ClassResult, walker: WalkerResult, pseudonym: str, settings: RecordsSettings
) -> Attempt:
    """Give the attempt of a walker that was graded, of a class with its names and times.

    A class has no logs, so that nothing is known of pace counts.
    """
    lane = result.lane(walker.lane)
    begun = [float(leg.started_s) for leg in walker.legs if leg.started_s is not None]
    ended = [float(leg.claimed_s) for leg in walker.legs if leg.claimed_s is not None]
    begun_s, ended_s = min(begun, default=None), max(ended, default=None)
    planned_on = None if lane.date is None else dt.date.fromisoformat(lane.date)
    first = lane.points[0]
    place = (first.longitude_deg, first.latitude_deg)
    notes = walker.track.notes if walker.track is not None else ()
    return Attempt(
        walker=pseudonym,
        walked_on=day_walked(begun_s, first.longitude_deg, planned_on),
        begun_s=None if begun_s is None else begun_s - walker.shift_s,
        ended_s=None if ended_s is None else ended_s - walker.shift_s,
        light=light_between(begun_s, ended_s, *place, settings),
        course=lane.course,
        lane=lane.name,
        course_print=course_print(lane.points),
        standard_print=lane.fingerprint,
        version=result.version,
        verdict=walker.verdict.grade,
        noise_m=None if walker.track is None else walker.track.noise_m,
        paces_per_100m=None,
        paces_sd=None,
        pace_unit="double",
        simulated=bool(calls_itself_simulated(notes)),
        legs=tuple(
            _leg(leg, planned, _start_of(planned, lane), settings)
            for leg, planned in zip(walker.legs, lane.legs, strict=True)
        ),
    )


def _leg(leg: LegResult, planned: LaneLeg, place: Place, settings: RecordsSettings) -> LegOfAttempt:
    told: dict[str, Any] = {
        "name": leg.name,
        "status": leg.status or "not-started",
        "confidence": leg.confidence or 0.0,
        "point": leg.point.grade,
        "causes": leg.causes,
    }
    if leg.miss is None:
        return LegOfAttempt(**told, light="unknown")
    sd_m = leg.straight_sd_m
    return LegOfAttempt(
        **told,
        light=light_between(leg.started_s, leg.claimed_s, *place, settings),
        heading_error_deg=leg.azimuth_error_deg,
        heading_sd_deg=leg.azimuth_sd_deg,
        distance_ratio=leg.distance_ratio,
        ratio_sd=None if sd_m is None else sd_m / planned.distance_m,
        miss_along_m=leg.miss.along_m,
        miss_across_m=leg.miss.across_m,
        miss_sd_m=leg.miss.sd_m,
    )


def _start_of(leg: LaneLeg, lane: LaneResult) -> Place:
    """Give where a leg begins, or the course where its start is no point of it."""
    point = next((one for one in lane.points if one.name == leg.start), lane.points[0])
    return point.longitude_deg, point.latitude_deg
