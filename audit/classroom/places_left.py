"""Where each able walker left a point from, and where he claimed it, from the planned point."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from audit.classroom.lane_result import LaneResult
from audit.classroom.walker_result import LegResult, WalkerResult
from audit.settings.class_shows import ClassShowsSettings
from audit.units import FloatArray, unit_vector


def able_walkers(
    walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> list[WalkerResult]:
    """Give those who found most of the other points, by what the evidence says of them."""
    able = []
    for walker in walkers:
        grades = [one.point.grade for n, one in enumerate(walker.legs) if n != leg]
        told = [grade for grade in grades if grade in {"found", "missed"}]
        if told and told.count("found") >= settings.able_share * len(told):
            able.append(walker)
    return able


def left_from(
    lane: LaneResult, walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> tuple[FloatArray, FloatArray]:
    """Give where walkers left the point of a leg from, (n, 2), and the error per axis, (n,).

    Those whose next leg is not known are left aside.
    """
    point = _place_of(lane, lane.legs[leg].end)
    offsets, errors = [], []
    for walker in walkers:
        if leg + 1 >= len(walker.legs):
            continue
        place = _began_at(walker, walker.legs[leg + 1])
        if place is not None:
            offsets.append(place - point)
            track = walker.track
            errors.append(settings.usual_noise_m if track is None else track.noise_m)
    return np.array(offsets).reshape(-1, 2), np.array(errors)


def own_claims(
    lane: LaneResult, walkers: Sequence[WalkerResult], leg: int, settings: ClassShowsSettings
) -> FloatArray:
    """Give the misses of a leg as they would be of walkers without habits, (n, 2).

    What was brought along from the start of the leg is taken off, and what the walker
    turns and paces on his other legs.
    """
    offsets = []
    for walker in walkers:
        here = walker.legs[leg]
        began = _began_at(walker, here)
        habit = _habit(walker, leg, settings.least_other_legs)
        if here.miss is None or began is None or habit is None:
            continue
        planned = lane.legs[leg]
        turn_deg, ratio = habit
        usual = ratio * unit_vector(planned.azimuth_deg + turn_deg)
        usual = planned.distance_m * (usual - unit_vector(planned.azimuth_deg))
        brought = began - _place_of(lane, planned.start)
        offsets.append(np.array([here.miss.east_m, here.miss.north_m]) - brought - usual)
    return np.array(offsets).reshape(-1, 2)


def usual_turn_deg(walker: WalkerResult) -> float:
    """Give the middle of what a walker turned on his legs, right positive; NaN of none."""
    turns = [leg.azimuth_error_deg for leg in walker.legs if leg.azimuth_error_deg is not None]
    return float(np.median(turns)) if turns else float("nan")


def _habit(walker: WalkerResult, leg: int, least: int) -> tuple[float, float] | None:
    """Give turn and ratio of distance, the middle over the other legs; None of too few."""
    others = [
        (one.azimuth_error_deg, one.distance_ratio)
        for number, one in enumerate(walker.legs)
        if number != leg and one.azimuth_error_deg is not None and one.distance_ratio
    ]
    if len(others) < least:
        return None
    turn, ratio = np.median(np.array(others, dtype=float), axis=0)
    return float(turn), float(ratio)


def _began_at(walker: WalkerResult, leg: LegResult) -> FloatArray | None:
    """Give where a walker left for a leg; None where that is not known."""
    trace = walker.trace
    if trace is None or leg.status != "walked" or not trace.east_m:
        return None
    if trace.time_s is not None and leg.started_s is not None:
        times = np.array(trace.time_s)
        if not times[0] < leg.started_s <= times[-1]:
            return None
        return np.array(
            [float(np.interp(leg.started_s, times, axis)) for axis in (trace.east_m, trace.north_m)]
        )
    if leg.trace_from is None or leg.trace_from == 0:
        return None
    return np.array([trace.east_m[leg.trace_from], trace.north_m[leg.trace_from]])


def _place_of(lane: LaneResult, name: str) -> FloatArray:
    point = next(point for point in lane.points if point.name == name)
    return np.array([point.east_m, point.north_m])
