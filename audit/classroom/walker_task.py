"""One walker's part of a class: everything that it is made from, and what is made of it."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace

from audit.areas import Area
from audit.classroom.approaches import approaches, counted_since
from audit.classroom.arrival import last_arrival
from audit.classroom.lane import Lane, two_radii
from audit.classroom.leg_results import leg_results, skills, time_spent, trace_of
from audit.classroom.nearest_fix import with_nearest_fixes
from audit.classroom.roads_used import roads_used
from audit.classroom.setting_out import left_before_first_leg
from audit.classroom.walk_time import NO_TIME, left_again, walk_time
from audit.classroom.walker_result import LaneFit, LegResult, TrackFacts, WalkerResult, WalkerState
from audit.debriefing.debrief_walk import debrief
from audit.debriefing.finished_debrief import Debrief
from audit.errors import InputRefusedError
from audit.grading.judge_point import judge_point
from audit.grading.judge_walk import judge_walk
from audit.grading.verdicts import PointVerdict, Punch
from audit.plan import Plan
from audit.settings import Settings
from audit.standard import Standard
from audit.track import Track
from audit.words import PLAIN_ENGLISH, Words


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkerTask:
    """One attempt of one walker, ready to be graded anywhere: it can be sent to a process.

    Attributes
    ----------
    track : Track or None
        The whole of the one walk, its clock put right; None where there is none.
    problem : str or None
        Why there is none.
    left_s, start_s : float or None
        When the recording left the start, and when the roster let the walker go.
    shift_s : float
        What was added to the clock of the recording.
    day_named : bool
        Whether the roster names the day of that, and not the clock time alone.
    punches : tuple of (str, Punch)
        By name of point.
    day : date or None
        Of the lane, where neither its plan nor the recording names one.
    roads : tuple of Area
        Against which the standard's rule for roads is held.
    words : Words
        In which the walker's debrief is told.
    key : str
        Of the content of all of this.
    """

    ident: str
    name: str
    lane: str
    plan: Plan
    standard: Standard
    settings: Settings
    attempt: int = 1
    device: str = ""
    compass: str = ""
    tracks: tuple[str, ...] = ()
    track: Track | None = None
    problem: str | None = None
    left_s: float | None = None
    start_s: float | None = None
    shift_s: float = 0.0
    day_named: bool = False
    punches: tuple[tuple[str, Punch], ...] = ()
    own_lane_fit: LaneFit | None = None
    better_lane: LaneFit | None = None
    notes: tuple[str, ...] = ()
    private: bool = False
    day: dt.date | None = None
    roads: tuple[Area, ...] = ()
    words: Words = PLAIN_ENGLISH
    key: str = ""


def grade_walker(task: WalkerTask, lane: Lane) -> tuple[WalkerResult, Debrief | None]:
    """Debrief a walk and grade it; one that cannot be debriefed is told and not failed."""
    found = None
    problem = task.problem
    if task.track is not None:
        try:
            plan = _by_standard(task.plan, task.standard)
            found = debrief(plan, task.track, settings=task.settings)
        except InputRefusedError as refused:
            problem = " ".join(str(one) for one in refused.problems)
    if found is None:
        state: WalkerState = "refused" if task.tracks else "no-track"
        return _without_walk(task, lane, state, problem), None
    bare = _without_walk(task, lane, "graded", None)
    return _graded(task, bare, found), _noted(found, two_radii(task.plan, task.standard))


def _noted(found: Debrief, note: str | None) -> Debrief:
    """Give a debrief with a note; the class says it once, and not of each walker."""
    if note is None:
        return found
    return replace(found, quality=replace(found.quality, notes=(*found.quality.notes, note)))


def _by_standard(plan: Plan, standard: Standard) -> Plan:
    """Give a plan with the radius of a standard that names one: class and debrief have one."""
    if standard.radius_m is None:
        return plan
    return replace(plan, arrival_radius_m=standard.radius_m)


def refused_walker(task: WalkerTask, lane: Lane, problem: str) -> WalkerResult:
    """Give the result of a walker whose recording could not be used, and why."""
    return _without_walk(task, lane, "refused", problem)


def _graded(task: WalkerTask, bare: WalkerResult, found: Debrief) -> WalkerResult:
    settings, punches = task.settings, dict(task.punches)
    radius_m = found.card.arrival_radius_m
    seen = approaches(found, settings)
    if task.track is not None:
        seen = with_nearest_fixes(seen, found, task.track)
    points = tuple(
        judge_point(
            approach,
            punches.get(leg.audit.card.end.name),
            task.standard,
            radius_m,
            settings.grading,
            recorded=True,
        )
        for leg, approach in zip(found.legs, seen, strict=True)
    )
    since_s = counted_since(found, settings.grading)
    arrived = last_arrival(found, points, since_s, settings.grading)
    left = left_before_first_leg(found, task.left_s, settings.grading)
    interval_s = found.quality.median_interval_s
    taken = walk_time(left, task.start_s, arrived, interval_s, settings.grading)
    trace = trace_of(found, settings.grading)
    legs = _in_plan_order(leg_results(found, points, trace), task.plan)
    moving_s, searching_s, halted_s = time_spent(found)
    return replace(
        bare,
        state="graded",
        legs=legs,
        verdict=judge_walk(points, taken, skills(legs), task.standard),
        time=taken,
        notes=(*bare.notes, *left_again(left, taken)),
        moving_s=moving_s,
        searching_s=searching_s,
        halted_s=halted_s,
        bias_deg=float(found.match.bias_deg),
        pace_scale=float(found.match.pace_scale),
        trace=trace,
        roads=roads_used(found, task.roads, task.standard, settings.grading),
        track=TrackFacts(
            fixes=found.quality.fixes,
            start_s=found.quality.start_s,
            end_s=found.quality.end_s,
            median_interval_s=found.quality.median_interval_s,
            noise_m=float(found.quality.noise_m),
            notes=found.quality.notes,
            elsewhere=found.quality.elsewhere,
        ),
    )


def _in_plan_order(legs: tuple[LegResult, ...], plan: Plan) -> tuple[LegResult, ...]:
    """Put legs that were walked in a free order back into that of the plan."""
    if plan.order != "free":
        return legs
    place = {leg.name: number for number, leg in enumerate(plan.legs)}
    return tuple(sorted(legs, key=lambda leg: place.get(leg.name, len(place))))


def _without_walk(
    task: WalkerTask, lane: Lane, state: WalkerState, problem: str | None
) -> WalkerResult:
    """Grade what was brought back alone: without a recording there is no evidence of the rest."""
    punches, legs = dict(task.punches), lane.card.legs
    points = tuple(
        judge_point(
            None,
            punches.get(leg.end.name),
            task.standard,
            lane.card.arrival_radius_m,
            task.settings.grading,
        )
        for leg in legs
    )
    return WalkerResult(
        ident=task.ident,
        name=task.name,
        lane=task.lane,
        attempt=task.attempt,
        device=task.device,
        compass=task.compass,
        tracks=task.tracks,
        start_s=task.start_s,
        shift_s=task.shift_s,
        own_lane_fit=task.own_lane_fit,
        better_lane=task.better_lane,
        notes=task.notes,
        key=task.key,
        state=state,
        legs=tuple(
            LegResult(name=leg.name, point=point, status=None)
            for leg, point in zip(legs, points, strict=True)
        ),
        verdict=judge_walk(points, NO_TIME, (), task.standard),
        time=NO_TIME,
        problem=problem,
    )


def regraded(walker: WalkerResult, left_out: frozenset[str], standard: Standard) -> WalkerResult:
    """Grade a walker again with the points of some legs left out."""
    if not left_out & {leg.name for leg in walker.legs}:
        return walker
    legs = tuple(
        replace(leg, point=replace(leg.point, left_out=leg.name in left_out)) for leg in walker.legs
    )
    points: tuple[PointVerdict, ...] = tuple(leg.point for leg in legs)
    verdict = judge_walk(points, walker.time, skills(legs), standard)
    return replace(walker, legs=legs, verdict=verdict)
