"""Every phrase about a leg: figures in words, rounded by `audit.reports.digits`."""

from __future__ import annotations

import math

from audit.debriefing.records import LegDebrief
from audit.diagnosis.finding import Finding
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.reports import digits
from audit.reports.cause_words import CANNOT_TELL, WITHIN_SKILL, cause_words
from audit.settings import Settings
from audit.units import turn_degrees, wrap_degrees

STATUS_WORDS = {
    "walked": "walked",
    "skipped": "skipped",
    "unfinished": "not finished",
    "not-started": "not started",
}

AS_PLANNED = "as planned"
"""Said of an error that lies within its own interval."""

_POINTS_OF_THE_COMPASS = (
    "north",
    "north-east",
    "east",
    "south-east",
    "south",
    "south-west",
    "west",
    "north-west",
)
_TWO_SIDED_95 = 1.96


def half_interval_deg(measures: LegMeasures) -> float:
    """Give half the 95 % interval of the walked azimuth."""
    return wrap_degrees(turn_degrees(measures.heading.low_deg, measures.heading.high_deg)) / 2


def azimuth_error(measures: LegMeasures) -> str:
    """Say how far the walked azimuth is off: "7° left", or "as planned"."""
    half_deg = half_interval_deg(measures)
    if abs(measures.azimuth_error_deg) <= half_deg:
        return AS_PLANNED
    side = "right" if measures.azimuth_error_deg > 0 else "left"
    return f"{digits.angle(measures.azimuth_error_deg, half_deg)} {side}"


def azimuth_interval(measures: LegMeasures) -> str:
    """Write the 95 % interval of the walked azimuth: "60° to 62°"."""
    half_deg = half_interval_deg(measures)
    low = digits.azimuth(measures.heading.low_deg, half_deg)
    high = digits.azimuth(measures.heading.high_deg, half_deg)
    return f"{low} to {high}"


def distance_error(measures: LegMeasures) -> str:
    """Say how far the walked distance is off: "22 m short", "95 m too far", or "as planned"."""
    error_m, standard_error_m = measures.distance_error_m, measures.straight_sd_m
    if abs(error_m) <= _TWO_SIDED_95 * standard_error_m:
        return AS_PLANNED
    size = digits.metres(abs(error_m), standard_error_m)
    return f"{size} too far" if error_m > 0 else f"{size} short"


def offset(offset_m: float, standard_error_m: float) -> str:
    """Say on which side of a line, and how far: "108 m left", or "on the line"."""
    size = digits.metres(abs(offset_m), standard_error_m)
    if size == "0 m":
        return "on the line"
    return f"{size} {'right' if offset_m > 0 else 'left'}"


def direction(degrees: float) -> str:
    """Name the nearest of the eight points of the compass."""
    eighth = math.floor(wrap_degrees(degrees) / 45.0 + 0.5) % len(_POINTS_OF_THE_COMPASS)
    return _POINTS_OF_THE_COMPASS[eighth]


def short_miss(measures: LegMeasures) -> str:
    """Write the miss for a table: "111 m NW"."""
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    whole = direction(measures.miss_azimuth.degrees)
    return size if size == "0 m" else f"{size} {''.join(w[0] for w in whole.split('-')).upper()}"


def miss(measures: LegMeasures) -> str:
    """Write the miss: "111 m north-west"."""
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    return size if size == "0 m" else f"{size} {direction(measures.miss_azimuth.degrees)}"


def arrival(measures: LegMeasures, radius_m: float) -> str:
    """Say how the leg ended: arrived, missed and then found, or not found."""
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    if not measures.found:
        nearest = digits.metres(measures.nearest_m, measures.miss_sd_m)
        return f"missed by {size}, point not found (nearest {nearest})"
    if measures.miss_m <= radius_m:
        return f"arrived, {size} off"
    return f"missed by {size}, then found"


def found(measures: LegMeasures, radius_m: float) -> str:
    """Say in the fewest words whether the point was reached."""
    if not measures.found:
        return "no"
    return "yes" if measures.miss_m <= radius_m else "yes, later"


def duration(seconds: float) -> str:
    """Write a stretch of time: "16 min 50 s", "2 h 05 min"."""
    whole = round(seconds)
    minutes, rest_s = divmod(whole, 60)
    if minutes >= 60:
        return f"{minutes // 60} h {minutes % 60:02d} min"
    return f"{minutes} min {rest_s:02d} s" if minutes else f"{rest_s} s"


def leading_cause(leg: LegDebrief) -> Finding | None:
    """Give the most probable cause where it may be named alone, else None."""
    if not leg.causes:
        return None
    first = leg.causes[0]
    return first if first.probability >= Settings().reports.named_cause_probability else None


def named_mistake(leg: LegDebrief) -> Finding | None:
    """Give the cause of a leg's error, where one is named and is a mistake at all."""
    first = leading_cause(leg)
    return None if first is None or first.cause in {WITHIN_SKILL, CANNOT_TELL} else first


def cause(leg: LegDebrief) -> str:
    """Say what a leg's error is consistent with, or that nothing can be told; "" if not judged."""
    if not leg.causes:
        return ""
    first = leading_cause(leg)
    if first is None:
        likely = " or ".join(
            f"{cause_words(one.cause)} ({digits.percent(one.probability)})"
            for one in leg.causes[:2]
        )
        return f"undecided: {likely}"
    if first.cause == CANNOT_TELL:
        return f"undecided: no cause stands out ({digits.percent(first.probability)})"
    return f"{cause_words(first.cause)} ({digits.percent(first.probability)})"


def errors_worst_first(audit: LegAudit) -> list[str]:
    """Say azimuth and distance, and a false start where it matters, the worst of them first."""
    measures = audit.measures
    if measures is None:
        return []
    ledger = measures.ledger
    turned = f"azimuth {azimuth_error(measures)} ({_plus_minus(measures)})"
    sized = [
        (math.hypot(*ledger.heading), turned),
        (math.hypot(*ledger.distance), f"distance {distance_error(measures)}"),
    ]
    began_off_m = math.hypot(*ledger.inherited)
    if began_off_m > _TWO_SIDED_95 * measures.miss_sd_m:
        where = digits.metres(began_off_m, measures.miss_sd_m)
        sized.append((began_off_m, f"began {where} off the point"))
    return [words for _, words in sorted(sized, key=lambda pair: -pair[0])]


def _plus_minus(measures: LegMeasures) -> str:
    return digits.half_interval(half_interval_deg(measures))
