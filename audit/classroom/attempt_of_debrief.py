"""What the records keep of a debrief: the walker's figures, and nothing of the recording."""

from __future__ import annotations

from typing import Any

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.school_records.attempt import Attempt, LegOfAttempt, course_print
from audit.school_records.day_or_night import light_between
from audit.school_records.day_walked import day_walked
from audit.track import calls_itself_simulated


def attempt_of_debrief(debrief: Debrief, walker: str, version: str) -> Attempt:
    """Give the attempt of a pseudonym; the debrief must not be a private one, for its times."""
    card, paces = debrief.card, debrief.paces
    walked = [leg.audit.measures for leg in debrief.legs if leg.audit.measures is not None]
    begun = [float(one.start.time_s) for one in walked if one.start.time_s is not None]
    ended = [float(one.claim.time_s) for one in walked if one.claim.time_s is not None]
    begun_s, ended_s = min(begun, default=None), max(ended, default=None)
    first, limits = card.points[0], debrief.settings.records
    counted = None if paces is None else paces.counted
    return Attempt(
        walker=walker,
        walked_on=day_walked(begun_s, first.longitude_deg, card.date),
        begun_s=begun_s,
        ended_s=ended_s,
        light=light_between(begun_s, ended_s, first.longitude_deg, first.latitude_deg, limits),
        course=card.name,
        lane="",
        course_print=course_print(card.points),
        standard_print=None,
        version=version,
        verdict=None,
        noise_m=float(debrief.quality.noise_m),
        paces_per_100m=None if counted is None else counted.per_100m,
        paces_sd=None if counted is None else counted.sd,
        pace_unit="double" if paces is None else paces.unit,
        simulated=bool(calls_itself_simulated(debrief.quality.notes)),
        legs=tuple(_leg(leg) for leg in debrief.legs),
    )


def _leg(leg: LegDebrief) -> LegOfAttempt:
    audit, measures = leg.audit, leg.audit.measures
    told: dict[str, Any] = {
        "name": leg.name,
        "status": audit.status,
        "confidence": float(audit.confidence),
        "point": None,
        "causes": tuple((one.cause, float(one.probability)) for one in leg.causes),
    }
    if measures is None:
        return LegOfAttempt(**told, light="unknown")
    start = measures.start
    return LegOfAttempt(
        **told,
        light=light_between(
            start.time_s,
            measures.claim.time_s,
            start.longitude_deg,
            start.latitude_deg,
            leg.settings.records,
        ),
        heading_error_deg=float(measures.azimuth_error_deg),
        heading_sd_deg=float(measures.heading.sd_deg),
        distance_ratio=float(measures.distance_ratio) if measures.line_followed else None,
        ratio_sd=float(measures.straight_sd_m / audit.card.distance_m),
        miss_along_m=float(measures.miss_along_m),
        miss_across_m=float(measures.miss_across_m),
        miss_sd_m=float(measures.miss_sd_m),
    )
