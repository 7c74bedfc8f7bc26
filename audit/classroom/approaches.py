"""How near a walk came to each point of its lane, and whether the recording can tell at all."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from audit.debriefing.records import Debrief, LegDebrief
from audit.grading.verdicts import Approach
from audit.leg_card import CardPoint
from audit.measurement.point_reached import unseen_approach
from audit.settings import GradingSettings, Settings
from audit.units import FloatArray


def approaches(debrief: Debrief, settings: Settings) -> tuple[Approach | None, ...]:
    """Give the approach to the end of each leg; None where the recording cannot tell.

    A leg that was surely matched speaks for itself. Elsewhere, and where the walk came
    by the point at another time, it counts from the claim of the last leg before.
    """
    told: list[Approach | None] = []
    after_s = float(debrief.clean.time_s[0])
    for leg in debrief.legs:
        approach, measures = _approach(debrief, leg, after_s, settings), leg.audit.measures
        if approach is not None and measures is not None and measures.details is not None:
            approach = replace(approach, debriefed=measures.details.point)
        told.append(approach)
        if leg.audit.measures is not None and leg.portion is not None:
            after_s = max(after_s, leg.portion.claim_s or after_s)
    return tuple(told)


def _approach(
    debrief: Debrief, leg: LegDebrief, after_s: float, settings: Settings
) -> Approach | None:
    grading, measures = settings.grading, leg.audit.measures
    radius_m = debrief.card.arrival_radius_m
    in_turn = None
    if measures is not None and measures.details is not None:
        point = measures.details.point
        in_turn = Approach(
            distance_m=float(measures.nearest_m),
            sd_m=float(point.sd_m),
            unseen_m=float(point.unseen_m),
            time_s=measures.nearest_s,
        )
        if in_turn.distance_m <= radius_m:
            return in_turn
    anyhow = _anyhow(debrief, leg.audit.card.end, after_s, settings)
    if in_turn is not None:
        sure = leg.audit.confidence >= grading.sure_match and anyhow.distance_m > radius_m
        return in_turn if sure or in_turn.distance_m <= anyhow.distance_m else anyhow
    if anyhow.distance_m > radius_m and _unseen(debrief, leg, grading):
        return None
    return anyhow


def _anyhow(debrief: Debrief, point: CardPoint, after_s: float, settings: Settings) -> Approach:
    """Give the nearest approach of the whole walk after a moment."""
    clean, measuring = debrief.clean, settings.measuring
    later = np.flatnonzero(clean.time_s >= after_s)
    place = np.array([point.east_m, point.north_m])
    steps = np.column_stack([clean.east_m, clean.north_m])[later]
    nearest_m, nearest = _nearest(steps, place)
    speed = _speed_m_s(debrief, settings.grading)
    logging_m = (clean.median_interval_s or 0.0) * speed / math.sqrt(12.0)
    square_m = point.half_square_m / math.sqrt(3.0)
    span_s = (float(clean.time_s[later[0]]), float(clean.time_s[-1]))
    return Approach(
        distance_m=nearest_m,
        sd_m=math.hypot(debrief.quality.noise_m, logging_m, square_m),
        unseen_m=unseen_approach(clean, span_s, place, nearest_m, measuring.gap_speed * speed),
        time_s=float(clean.time_s[later[nearest]]) if clean.timed else None,
        in_turn=False,
    )


def _nearest(steps: FloatArray, place: FloatArray) -> tuple[float, int]:
    """Give the nearest distance of a path to a place, and the fix before it."""
    if len(steps) < 2:
        return float(np.hypot(*(steps[0] - place))), 0
    start, way = steps[:-1], np.diff(steps, axis=0)
    length = np.maximum((way**2).sum(axis=1), 1e-12)
    along = np.clip(((place - start) * way).sum(axis=1) / length, 0.0, 1.0)
    away_m = np.hypot(*(start + along[:, None] * way - place).T)
    nearest = int(away_m.argmin())
    return float(away_m[nearest]), nearest


def _unseen(debrief: Debrief, leg: LegDebrief, settings: GradingSettings) -> bool:
    """Tell whether the leg may have been walked before the recording began or after it ended.

    A recording that ends, or begins, out on the course says nothing of what came after,
    or before; nor does one that ends, or begins, where the course comes by its own finish,
    or start, in between.
    """
    legs, clean = debrief.card.legs, debrief.clean
    numbers = [n for n, one in enumerate(debrief.legs) if one.audit.measures is not None]
    number = debrief.legs.index(leg)
    first, last = (numbers[0], numbers[-1]) if numbers else (len(legs) - 1, 0)
    start, finish = legs[0].start, legs[-1].end
    on_the_way = [
        {_place(one.start) for one in legs[1 : first + 1]},
        {_place(one.end) for one in legs[last:-1]},
    ]

    def out(fix: int) -> bool:
        return all(
            _place(end) in on_the_way[fix]
            or math.hypot(clean.east_m[fix] - end.east_m, clean.north_m[fix] - end.north_m)
            > settings.course_ends_m
            for end in (start, finish)
        )

    after = not numbers or number > last
    before = not numbers or number < first
    return (after and out(-1)) or (before and out(0))


def _place(point: CardPoint) -> tuple[float, float]:
    return point.east_m, point.north_m


def _speed_m_s(debrief: Debrief, settings: GradingSettings) -> float:
    """Give the middle speed of this walk over its legs."""
    speeds = [
        one.path_m / (one.duration_s - (one.halted_s or 0.0))
        for leg in debrief.legs
        if (one := leg.audit.measures) is not None
        and one.duration_s is not None
        and one.duration_s - (one.halted_s or 0.0) > 0.0
    ]
    return float(np.median(speeds)) if speeds else settings.walking_m_s
