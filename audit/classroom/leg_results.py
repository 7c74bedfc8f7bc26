"""What is kept of each leg of a debrief for the class."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.classroom.walker_result import LegResult, Miss, Trace
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.grading.judge_walk import LegSkill
from audit.grading.verdicts import PointVerdict
from audit.measurement.leg_measures import SpanKind
from audit.settings import GradingSettings
from audit.statistics.runs import runs_of_one

_MOST_CAUSES = 5
_MOVING: tuple[SpanKind, ...] = ("walking", "bypass")
_STILL: tuple[SpanKind, ...] = ("halt", "at-point")


def leg_results(
    debrief: Debrief, points: Sequence[PointVerdict], trace: Trace
) -> tuple[LegResult, ...]:
    """Give the legs in the order of the card, each with the verdict of its point."""
    return tuple(
        _leg_result(debrief, number, leg, point, trace)
        for number, (leg, point) in enumerate(zip(debrief.legs, points, strict=True))
    )


def _leg_result(
    debrief: Debrief, number: int, leg: LegDebrief, point: PointVerdict, trace: Trace
) -> LegResult:
    told = LegResult(
        name=leg.name,
        point=point,
        status=leg.audit.status,
        confidence=float(leg.audit.confidence),
        cause=leg.causes[0].cause if leg.causes else None,
        cause_probability=float(leg.causes[0].probability) if leg.causes else None,
        causes=tuple((one.cause, float(one.probability)) for one in leg.causes[:_MOST_CAUSES]),
        left_out=leg.causes[0].point if leg.causes else "",
        named_from=leg.settings.reports.named_cause_probability,
    )
    return _measured(debrief, number, told, trace)


def _measured(debrief: Debrief, number: int, told: LegResult, trace: Trace) -> LegResult:
    """Add what was measured, where the leg was walked; of another nothing is a figure, not 0."""
    leg, timed = debrief.legs[number], debrief.clean.timed
    one = leg.audit.measures
    if one is None:
        return told
    moving_s, searching_s, halted_s = time_spent(debrief, number)
    east_m, north_m = one.ledger.total
    ground = None if one.details is None else one.details.ground
    start, claim = _in_trace(leg, trace) or (None, None)
    whole = one.line_followed and not one.under_way
    brought_east_m, brought_north_m = one.ledger.inherited
    return LegResult(
        name=told.name,
        point=told.point,
        status=told.status,
        confidence=told.confidence,
        started_s=one.start.time_s if timed else None,
        claimed_s=one.claim.time_s if timed else None,
        miss=Miss(
            east_m=float(east_m),
            north_m=float(north_m),
            along_m=float(one.miss_along_m),
            across_m=float(one.miss_across_m),
            sd_m=float(one.miss_sd_m),
        ),
        began_off=None if one.under_way else (float(brought_east_m), float(brought_north_m)),
        azimuth_error_deg=float(one.azimuth_error_deg),
        azimuth_sd_deg=float(one.heading.sd_deg),
        straight_m=float(one.straight_m),
        straight_sd_m=float(one.straight_sd_m),
        distance_error_m=float(one.distance_error_m) if whole else None,
        distance_ratio=float(one.distance_ratio) if whole else None,
        cause=told.cause,
        cause_probability=told.cause_probability,
        causes=told.causes,
        left_out=told.left_out,
        named_from=told.named_from,
        moving_s=moving_s,
        searching_s=searching_s,
        halted_s=halted_s,
        climb_m=ground.climb_m if ground is not None and ground.trusted else None,
        descent_m=ground.descent_m if ground is not None and ground.trusted else None,
        trace_from=start,
        trace_to=claim,
    )


def _in_trace(leg: LegDebrief, trace: Trace) -> tuple[int, int] | None:
    """Give the slice of a trace that lies between leaving and claim."""
    portion = leg.portion
    if portion is None or trace.time_s is None or portion.start_s is None:
        return None
    ends = [portion.start_s, portion.claim_s or portion.start_s]
    first, last = np.searchsorted(trace.time_s, ends)
    return max(int(first) - 1, 0), int(last) + 1


def skills(legs: Sequence[LegResult]) -> tuple[LegSkill, ...]:
    """Give how each walked leg was walked, for the coaching score."""
    return tuple(
        LegSkill(
            azimuth_error_deg=leg.azimuth_error_deg,
            azimuth_sd_deg=leg.azimuth_sd_deg or 0.0,
            distance_ratio=leg.distance_ratio,
            ratio_sd=(leg.straight_sd_m or 0.0) * leg.distance_ratio / leg.straight_m,
        )
        for leg in legs
        if leg.azimuth_error_deg is not None and leg.distance_ratio is not None and leg.straight_m
    )


def time_spent(
    debrief: Debrief, leg: int | None = None
) -> tuple[float | None, float | None, float | None]:
    """Give seconds moving, searching and halted: on one leg, or on the walk.

    The walk is from leaving the start to the end of the last leg, the search for its point
    included; the rest before and after it is none of it.
    """
    if not debrief.clean.timed:
        return None, None, None
    kinds = dict.fromkeys(("moving", "searching", "halted"), 0.0)
    of_legs = [number for number, span in enumerate(debrief.spans) if span.leg is not None]
    course = debrief.spans[of_legs[0] : of_legs[-1] + 1] if of_legs else ()
    for span in course:
        if leg is not None and span.leg != leg:
            continue
        seconds = span.end_s - span.start_s
        if span.kind in _MOVING:
            kinds["moving"] += seconds
        elif span.kind == "search":
            kinds["searching"] += seconds
        elif span.kind in _STILL:
            kinds["halted"] += seconds
    return kinds["moving"], kinds["searching"], kinds["halted"]


def trace_of(debrief: Debrief, settings: GradingSettings) -> Trace:
    """Thin a walk to one fix in so many seconds, to the nearest decimetre."""
    clean = debrief.clean
    steps = np.floor((clean.time_s - clean.time_s[0]) / settings.trace_step_s)
    kept = runs_of_one(steps)[:, 0]
    kept = np.union1d(kept, [len(clean) - 1])
    # With times, no more than one fix in a step; without, the axis is that of an even walk.
    return Trace(
        time_s=tuple(float(one) for one in clean.time_s[kept]) if clean.timed else None,
        east_m=tuple(round(float(one), 1) for one in clean.east_m[kept]),
        north_m=tuple(round(float(one), 1) for one in clean.north_m[kept]),
    )
