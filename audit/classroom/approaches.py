"""How near a walk came to each point of its lane, and whether the recording can tell at all."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from audit.classroom.come_to_in_turn import come_to_in_turn
from audit.classroom.recorded_part import begins_at, not_recorded, still_coming
from audit.classroom.setting_out import away_since_s
from audit.debriefing.finished_debrief import Debrief
from audit.diagnosis.passages import Passage
from audit.grading.verdicts import Approach
from audit.leg_card import CardPoint
from audit.measurement.nearest_approach import nearest_approach
from audit.measurement.point_reached import unseen_approach
from audit.settings import GradingSettings, Settings


def approaches(debrief: Debrief, settings: Settings) -> tuple[Approach | None, ...]:
    """Give the approach to the end of each leg; None where the recording cannot tell.

    A leg that was surely matched speaks for itself. Elsewhere, and where the walk came
    by the point at another time, it counts from the claim of the last leg before; a point that
    a free order leaves out has no leg before, and the whole recording counts. The end of a
    skipped leg that was passed in its turn was come to, though nothing fits the way there.
    A recording that comes near no point, the start among them, may be of another course, and
    tells nothing of this one.
    """
    if debrief.quality.elsewhere:
        return (None,) * len(debrief.legs)
    since_s = counted_since(debrief, settings.grading)
    on_no_leg = come_to_in_turn(debrief.on_no_leg)
    told: list[Approach | None] = []
    for number, after_s in enumerate(since_s):
        approach = _approach(debrief, number, after_s, settings, on_no_leg)
        measures = debrief.legs[number].audit.measures
        if approach is not None and measures is not None and measures.details is not None:
            approach = replace(approach, debriefed=measures.details.point)
        told.append(approach)
    return tuple(told)


def counted_since(debrief: Debrief, settings: GradingSettings) -> tuple[float, ...]:
    """Give for each leg from when on an approach to its end counts; infinity for never.

    To rest at the start before setting out is no arrival where the finish lies there too.
    """
    told, after_s, walked = [], float(debrief.clean.time_s[0]), False
    for leg in debrief.legs:
        end = leg.audit.card.end
        told.append(after_s if walked else max(after_s, _set_out_s(debrief, end, settings)))
        if leg.audit.measures is not None and leg.portion is not None:
            after_s, walked = max(after_s, leg.portion.claim_s or after_s), True
    return tuple(told)


def _set_out_s(debrief: Debrief, end: CardPoint, settings: GradingSettings) -> float:
    """Give from when on a point at the start counts; elsewhere the whole recording does."""
    start = debrief.card.legs[0].start
    from_start_m = math.hypot(end.east_m - start.east_m, end.north_m - start.north_m)
    if from_start_m > settings.start_m:
        return float(debrief.clean.time_s[0])
    away_s = away_since_s(debrief, settings)
    return math.inf if away_s is None else away_s


def _approach(
    debrief: Debrief,
    number: int,
    after_s: float,
    settings: Settings,
    passed: Mapping[int, Passage],
) -> Approach | None:
    leg, radius_m = debrief.legs[number], debrief.card.arrival_radius_m
    grading, measures, end = settings.grading, leg.audit.measures, leg.audit.card.end
    any_time = debrief.card.order == "free" and measures is None
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
    if any_time:  # it stands last only because nobody knows its turn
        after_s = _set_out_s(debrief, end, grading)
    if math.isinf(after_s):
        return None
    anyhow = _anyhow(debrief, end, after_s, settings)
    if begins_at(debrief, number, radius_m, grading):
        return replace(anyhow, in_turn=True, begins_here=True)
    if number in passed:
        return _of_passage(passed[number], anyhow, timed=debrief.clean.timed)
    if leg.audit.status == "skipped" and anyhow.distance_m > radius_m and not any_time:
        anyhow = replace(anyhow, in_turn=_between(debrief, number, after_s, anyhow, passed))
    nearest = anyhow
    if in_turn is not None:
        sure = leg.audit.confidence >= grading.sure_match and anyhow.distance_m > radius_m
        nearest = in_turn if sure or in_turn.distance_m <= anyhow.distance_m else anyhow
    if nearest.distance_m <= radius_m:
        return nearest
    unseen = in_turn is None and not_recorded(debrief, number, grading)
    return None if unseen or still_coming(debrief, number, nearest.distance_m, grading) else nearest


def _of_passage(passage: Passage, anyhow: Approach, *, timed: bool) -> Approach:
    time_s = passage.nearest_s if timed else None
    return replace(anyhow, distance_m=passage.away_m, time_s=time_s, in_turn=True)


def _between(
    debrief: Debrief,
    number: int,
    after_s: float,
    approach: Approach,
    passed: Mapping[int, Passage],
) -> bool:
    """Tell whether an approach lies between what was walked and passed before a leg and after."""
    if approach.time_s is None:
        return False
    later = [leg.portion for leg in debrief.legs[number + 1 :] if leg.audit.measures is not None]
    starts = [one.start_s for one in later if one is not None and one.start_s is not None]
    before = [one.nearest_s for leg, one in passed.items() if leg < number]
    after = [one.nearest_s for leg, one in passed.items() if leg > number]
    return max([after_s, *before]) <= approach.time_s <= min([*starts, *after], default=math.inf)


def _anyhow(debrief: Debrief, point: CardPoint, after_s: float, settings: Settings) -> Approach:
    """Give the nearest approach of the whole walk after a moment."""
    clean, measuring = debrief.clean, settings.measuring
    place = np.array([point.east_m, point.north_m])
    span_s = (after_s, float(clean.time_s[-1]))
    nearest_m, nearest_s = nearest_approach(clean, span_s, place)
    speed = _speed_m_s(debrief, settings.grading)
    logging_m = (clean.median_interval_s or 0.0) * speed / math.sqrt(12.0)
    square_m = point.half_square_m / math.sqrt(3.0)
    return Approach(
        distance_m=nearest_m,
        sd_m=math.hypot(debrief.quality.noise_m, logging_m, square_m),
        unseen_m=unseen_approach(clean, span_s, place, nearest_m, measuring.gap_speed * speed),
        time_s=nearest_s if clean.timed else None,
        in_turn=False,
    )


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
