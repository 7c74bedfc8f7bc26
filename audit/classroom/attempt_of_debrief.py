"""What the records keep of a debrief: the walker's figures, and nothing of the recording."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from audit.debriefing.records import Debrief, LegDebrief
from audit.leg_card import LegCard
from audit.measurement.leg_measures import LegMeasures
from audit.school_records.attempt import Attempt, LegOfAttempt, Light, fingerprint
from audit.school_records.light import light_at


@dataclass(frozen=True, slots=True, kw_only=True)
class Graded:
    """What a standard made of the walk; by default none was applied.

    Attributes
    ----------
    points : mapping
        The verdict of each leg's point, by the name of the leg.
    shift_s : float
        Added to the recorder's clock before anything else.
    """

    lane: str = ""
    standard_print: str | None = None
    verdict: str | None = None
    points: Mapping[str, str] | None = None
    shift_s: float = 0.0


def attempt_of_debrief(
    debrief: Debrief, walker: str, version: str, graded: Graded | None = None
) -> Attempt:
    """Give the attempt of a pseudonym; the debrief must not be a private one, for its times."""
    graded = graded or Graded()
    card, paces = debrief.card, debrief.paces
    walked = [leg.audit.measures for leg in debrief.legs if leg.audit.measures is not None]
    begun_s = _one_of(min, [one.start.time_s for one in walked])
    ended_s = _one_of(max, [one.claim.time_s for one in walked])
    first = card.points[0]
    middle_s = None if begun_s is None or ended_s is None else (begun_s + ended_s) / 2.0
    counted = None if paces is None else paces.counted
    notes = (*card.notes, *debrief.quality.notes)
    return Attempt(
        walker=walker,
        walked_on=card.date,
        begun_s=None if begun_s is None else begun_s - graded.shift_s,
        ended_s=None if ended_s is None else ended_s - graded.shift_s,
        light=light_at(middle_s, first.longitude_deg, first.latitude_deg),
        course=card.name,
        lane=graded.lane,
        course_print=course_print(card),
        standard_print=graded.standard_print,
        version=version,
        verdict=graded.verdict,
        noise_m=float(debrief.quality.noise_m),
        paces_per_100m=None if counted is None else counted.per_100m,
        paces_sd=None if counted is None else counted.sd,
        pace_unit="double" if paces is None else paces.unit,
        simulated=any("simulated" in note.lower() for note in notes),
        legs=tuple(_leg(leg, graded) for leg in debrief.legs),
    )


def course_print(card: LegCard) -> str:
    """Give the fingerprint of the points of a course, to some 0.1 m."""
    points = [(p.name, round(p.longitude_deg, 6), round(p.latitude_deg, 6)) for p in card.points]
    return fingerprint(points)


def _leg(leg: LegDebrief, graded: Graded) -> LegOfAttempt:
    audit, measures = leg.audit, leg.audit.measures
    told: dict[str, Any] = {
        "name": leg.name,
        "status": audit.status,
        "confidence": float(audit.confidence),
        "point": (graded.points or {}).get(leg.name),
        "causes": tuple((one.cause, float(one.probability)) for one in leg.causes),
    }
    if measures is None:
        return LegOfAttempt(**told, light="unknown")
    return LegOfAttempt(
        **told,
        light=_light(measures),
        heading_error_deg=float(measures.azimuth_error_deg),
        heading_sd_deg=float(measures.heading.sd_deg),
        distance_ratio=float(measures.distance_ratio),
        ratio_sd=float(measures.straight_sd_m / audit.card.distance_m),
        miss_along_m=float(measures.miss_along_m),
        miss_across_m=float(measures.miss_across_m),
        miss_sd_m=float(measures.miss_sd_m),
    )


def _light(measures: LegMeasures) -> Light:
    """Tell the light in the middle of a leg."""
    start, claim = measures.start, measures.claim
    middle_s = None
    if start.time_s is not None and claim.time_s is not None:
        middle_s = (start.time_s + claim.time_s) / 2.0
    return light_at(middle_s, start.longitude_deg, start.latitude_deg)


def _one_of(choose: Callable[[list[float]], float], times: list[float | None]) -> float | None:
    known = [float(one) for one in times if one is not None]
    return choose(known) if known else None
