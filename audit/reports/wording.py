"""Every phrase about a leg: figures in words, rounded by `audit.reports.digits`."""

from __future__ import annotations

import math
from collections.abc import Sequence

from audit.debriefing.finished_debrief import LegDebrief
from audit.diagnosis.finding import Finding
from audit.guide.cause_names import CANNOT_TELL, CAUSE_KINDS, WITHIN_SKILL
from audit.leg_card import CardLeg
from audit.leg_card.told_numbers import listed_legs
from audit.measurement.leg_measures import LegAudit, LegMeasures
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.reports.inherited import inherited
from audit.settings import QualitySettings, ReportSettings
from audit.statistics.spread import TWO_SIDED_95
from audit.units import turn_degrees
from audit.words import say
from audit.words.compass_points import nearest_eighth
from audit.words.figures import Listed

_TURNS = frozenset(CAUSE_KINDS["Direction"])


def status_words(status: str) -> str:
    """Say what became of a leg."""
    return say(f"leg-{status}")


def status_told(audit: LegAudit) -> str:
    """Give the status that is told: what lies before the recording was not skipped."""
    return "before-recording" if audit.before_recording else audit.status


def status_of(leg: LegDebrief, radius_m: float) -> str:
    """Say what became of a leg, and how far from its start it was begun where that matters.

    Who begins beside the start and walks to the point has turned, and made no mistake by it.
    """
    measures = leg.audit.measures
    if measures is None:
        return status_words(status_told(leg.audit))
    off_m = math.hypot(*measures.ledger.inherited)
    if off_m <= max(radius_m, TWO_SIDED_95 * measures.miss_sd_m):
        return status_words(status_told(leg.audit))
    words = "leg-recorded-from" if measures.under_way else "leg-walked-from-off"
    return say(words, size=digits.metres(off_m, measures.miss_sd_m))


def leg_names(names: Sequence[str]) -> str:
    """List legs: "leg 2", "legs 2, 3 and 5"."""
    if len(names) == 1:
        return say("figure-leg", name=names[0])
    return say("figure-legs", names=listed_legs(names))


def sided(size: object, signed: float) -> str:
    """Say on which side: "7.2° left"."""
    return say("figure-right" if signed > 0 else "figure-left", size=size)


def half_interval_deg(measures: LegMeasures) -> float:
    """Give half the 95 % interval of the walked azimuth."""
    return measures.heading.told_half_95_deg


def azimuth_error(measures: LegMeasures, quality: QualitySettings) -> str:
    """Say how far the walked azimuth is off: "7° left", "as planned", or that nobody can tell."""
    half_deg = half_interval_deg(measures)
    if not azimuth_measured(measures, quality):
        return say("figure-unmeasured")
    if azimuth_as_planned(measures):
        return say("figure-as-planned")
    error_deg = measures.azimuth_error_deg
    return sided(digits.angle(error_deg, half_deg), error_deg)


def azimuth_measured(measures: LegMeasures, quality: QualitySettings) -> bool:
    """Tell whether the way was long enough for the receiver to show an azimuth."""
    return half_interval_deg(measures) <= quality.unmeasured_deg


def azimuth_as_planned(measures: LegMeasures) -> bool:
    """Tell whether the planned azimuth lies within the interval of the walked one."""
    heading = measures.heading
    return heading.may_be(heading.azimuth.degrees - measures.azimuth_error_deg)


def distance_as_planned(measures: LegMeasures) -> bool:
    """Tell whether the error of the distance lies within its own interval.

    Nobody can tell of a leg that was under way when the recording began.
    """
    return (
        not measures.under_way
        and abs(measures.distance_error_m) <= TWO_SIDED_95 * measures.straight_sd_m
    )


def azimuth_interval(measures: LegMeasures) -> str:
    """Write the 95 % interval of the walked azimuth: "60° to 62°"."""
    half_deg = half_interval_deg(measures)
    low, high = (digits.azimuth(end, half_deg) for end in measures.heading.as_told_95_deg)
    return say("figure-range", low=low, high=high)


def distance_error(measures: LegMeasures) -> str:
    """Say how far the walked distance is off: "22 m short", "95 m too far", or "as planned".

    Of a bent line that was not followed, and of a leg of which the recording has a part, only
    that is said.
    """
    error_m, standard_error_m = measures.distance_error_m, measures.straight_sd_m
    if not measures.line_followed:
        return say("figure-line-left")
    if measures.under_way:
        return say("figure-in-part")
    if distance_as_planned(measures):
        return say("figure-as-planned")
    size = digits.metres(abs(error_m), standard_error_m)
    return say("figure-too-far" if error_m > 0 else "figure-short", size=size)


def made_along_line(measures: LegMeasures, card: CardLeg) -> str:
    """Write what was made along a planned line with bends, which is what its length is set against.

    "" of a straight leg, and of a line that was not followed.
    """
    if len(card.line) <= 2 or measures.made_good_m is None:
        return ""
    return digits.metres(measures.made_good_m, measures.straight_sd_m)


def offset(offset_m: float, standard_error_m: float) -> str:
    """Say on which side of a line, and how far: "108 m left", or "on the line"."""
    size = digits.metres(abs(offset_m), standard_error_m)
    if _is_nothing(size):
        return say("figure-on-line")
    return sided(size, offset_m)


def _is_nothing(size: str) -> bool:
    """Tell whether a length rounds to nothing, which lies on no side."""
    return size.startswith("0 ")


def direction(degrees: float) -> str:
    """Name the nearest of the eight points of the compass."""
    return say(f"figure-{nearest_eighth(degrees)}")


def short_miss(measures: LegMeasures) -> str:
    """Write the miss for a table: "111 m NW"."""
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    letters = say(f"figure-letters-{nearest_eighth(measures.miss_azimuth.degrees)}")
    return size if _is_nothing(size) else f"{size} {letters}"


def miss(measures: LegMeasures) -> str:
    """Write the miss: "111 m north-west"."""
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    if _is_nothing(size):
        return size
    where = direction(measures.miss_azimuth.degrees)
    return say("figure-at-direction", size=size, direction=where)


def arrival(measures: LegMeasures, radius_m: float, reports: ReportSettings) -> str:
    """Say how the leg ended, and where the walk came far past the point, or near it elsewhere."""
    ended, past_m = _ended(measures, radius_m), past_the_point_m(measures, reports)
    if past_m is not None:
        ended = say("leg-then-past", ended=ended, past=digits.metres(past_m, measures.miss_sd_m))
    near_m = near_elsewhere_m(measures, reports)
    if near_m is not None:
        ended = say(
            "leg-near-elsewhere", ended=ended, near=digits.metres(near_m, measures.miss_sd_m)
        )
    return ended


def past_the_point_m(measures: LegMeasures, reports: ReportSettings) -> float | None:
    """Give how far straight on past the point the walk went after the claim; None if little."""
    search = None if measures.details is None else measures.details.search
    far = search is not None and search.past_m >= reports.told_past_m
    return search.past_m if search is not None and far else None


def near_elsewhere_m(measures: LegMeasures, reports: ReportSettings) -> float | None:
    """Give how near the recording comes to a point that its leg did not find; None if no nearer."""
    point = None if measures.details is None else measures.details.point
    if measures.found or point is None or point.elsewhere_m is None:
        return None
    nearer = measures.nearest_m - point.elsewhere_m >= reports.told_nearer_m
    return point.elsewhere_m if nearer and point.elsewhere_m <= reports.told_elsewhere_m else None


def _ended(measures: LegMeasures, radius_m: float) -> str:
    """Say how the leg ended: arrived, at the edge, missed and then found, passed, not found."""
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    if not measures.found:
        nearest = digits.metres(measures.nearest_m, measures.miss_sd_m)
        missed = measures.point_verdict == "missed"
        if measures.ends_reckoned[1] and measures.miss_m <= radius_m:
            return say("leg-reckoned-near", size=size, nearest=nearest)
        return say("leg-not-found" if missed else "leg-too-close", size=size, nearest=nearest)
    if measures.miss_m <= radius_m:
        return say("leg-arrived", size=size)
    if measures.at_the_edge(radius_m):
        return say("leg-at-edge", size=size)
    if measures.came_back(radius_m):
        return say("leg-then-found", size=size)
    nearest = digits.metres(measures.nearest_m, measures.miss_sd_m)
    return say("leg-passed", size=size, nearest=nearest)


def found(measures: LegMeasures, radius_m: float) -> str:
    """Say in the fewest words whether the point was reached."""
    if not measures.found:
        missed = measures.point_verdict == "missed"
        return say("leg-found-no" if missed else "leg-found-too-close")
    if measures.miss_m <= radius_m or measures.at_the_edge(radius_m):
        return say("leg-found-yes")
    return say("leg-found-later" if measures.came_back(radius_m) else "leg-found-passed")


def duration(seconds: float) -> str:
    """Write a stretch of time: "16 min 50 s", "2 h 05 min"."""
    whole = round(seconds)
    minutes, rest_s = divmod(whole, 60)
    if minutes >= 60:
        return f"{minutes // 60} h {minutes % 60:02d} min"
    return f"{minutes} min {rest_s:02d} s" if minutes else f"{rest_s} s"


def reckoned_time(seconds: float) -> str:
    """Write a time that is only reckoned, to the minute: "17 min", "2 h 05 min"."""
    minutes = max(round(seconds / 60.0), 1)
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02d} min"


def leading_cause(leg: LegDebrief) -> Finding | None:
    """Give the most probable cause where it may be named alone, else None.

    Where it was one of two, neither is named alone, be the one a little likelier than not.
    """
    if not leg.causes or leg.one_of is not None:
        return None
    first = leg.causes[0]
    return first if first.probability >= leg.settings.reports.named_cause_probability else None


def named_mistake(leg: LegDebrief) -> Finding | None:
    """Give the cause of a leg's error, where one is named and is a mistake at all."""
    first = leading_cause(leg)
    return None if first is None or first.cause in {WITHIN_SKILL, CANNOT_TELL} else first


def cause(leg: LegDebrief, *, own: bool = False) -> str:
    """Say what a leg's error is consistent with, or that nothing can be told; "" if not judged.

    ``own``: what brought the walker to where it began is told already.
    """
    if not leg.causes:
        return ""
    first = leading_cause(leg)
    if first is None:
        likely = Listed(
            things=[_with_chance(one, leg, own=own) for one in leg.causes[:2]], link="or"
        )
        if leg.one_of is not None:
            return say("leg-one-of-two", causes=likely, sure=digits.percent(leg.one_of.probability))
        return say("leg-undecided-two", causes=likely)
    off = _unlike_length(leg, first)
    if off:
        words = _with_chance(first, leg, own=own)
        return say("leg-undecided-length", cause=words, off=off)
    if first.cause == CANNOT_TELL and leg.carried_from is None:
        return say("leg-undecided-none", sure=digits.percent(first.probability))
    return _with_chance(first, leg, own=own)


def cause_told(leg: LegDebrief) -> str:
    """Say the same in the row of a leg, with what the mistake leaves over of the azimuth."""
    said, left = cause(leg), left_over(leg)
    return say("leg-cause-left-over", cause=said, left=left) if left else said


def left_over(leg: LegDebrief) -> str:
    """Say what a mistake of direction leaves over: "11° right"; "" where it is no more than error.

    It is a second error beside the mistake, more than twice what this walker scatters by and what
    the azimuth is measured to. Where another turn was made too, that is what it is.
    """
    named, measures = named_mistake(leg), leg.audit.measures
    if named is None or measures is None or named.predicted is None or named.unit != "deg":
        return ""
    others = [one for one in leg.causes if one is not named and one.cause in _TURNS]
    if named.cause not in _TURNS or any((one.made or 0.0) >= 0.5 for one in others):
        return ""
    left_deg = turn_degrees(named.predicted, measures.azimuth_error_deg)
    half_deg = half_interval_deg(measures)
    scatter_deg = math.hypot(leg.scatter.turn_deg, half_deg)
    if abs(left_deg) <= max(2.0 * scatter_deg, leg.settings.coaching.held_azimuth_deg):
        return ""
    return sided(digits.angle(left_deg, half_deg), left_deg)


def is_undecided(leg: LegDebrief) -> bool:
    """Tell whether `cause` names no single cause of a leg that was judged."""
    first = leading_cause(leg)
    if first is None:
        return bool(leg.causes)
    return first.cause == CANNOT_TELL or bool(_unlike_length(leg, first))


def _unlike_length(leg: LegDebrief, first: Finding) -> str:
    """Give the error of a distance that no skill makes, of a leg that is called ordinary.

    Who began off, and came to his point all the same, walked as far as that took; why he did is
    not known.
    """
    measures = leg.audit.measures
    if first.cause != WITHIN_SKILL or measures is None:
        return ""
    if measures.under_way or not measures.line_followed:
        return ""
    out = abs(measures.distance_ratio - 1.0) > leg.settings.reports.ordinary_share
    return distance_error(measures) if out and not distance_as_planned(measures) else ""


def _with_chance(one: Finding, leg: LegDebrief, *, own: bool) -> str:
    words = cause_words(one.cause) if own else cause_of_leg(one, leg)
    if one.cause == CANNOT_TELL and leg.carried_from is None:
        words = say("leg-no-cause")
    return say("leg-cause", cause=words, sure=digits.percent(one.probability))


def cause_of_leg(one: Finding, leg: LegDebrief) -> str:
    """Give the words of a cause on a leg.

    Ordinary error on a leg that began off says where the rest is, and one that was measured from
    a wrong plot where it was made. A point left out is told by its name: beside the leg that
    leads on from it, it would be taken for that leg's own.
    """
    if one.cause == CANNOT_TELL and leg.carried_from is not None:
        return say("leg-carried", leg=leg_names([leg.carried_from]))
    if one.cause == WITHIN_SKILL and inherited(leg):
        return say("leg-inherited")
    return say("leg-left-out", point=one.point) if one.point else cause_words(one.cause)


def errors_worst_first(audit: LegAudit, quality: QualitySettings) -> list[str]:
    """Say azimuth and distance, and a false start where it matters, the worst of them first.

    Of a leg that was under way when the recording began: from where on it was recorded, first.
    """
    measures = audit.measures
    if measures is None:
        return []
    ledger = measures.ledger
    error = azimuth_error(measures, quality)
    turned = say("leg-azimuth", error=error, interval=_plus_minus(measures))
    if not azimuth_measured(measures, quality):
        turned = say("leg-azimuth-unmeasured")
    began_off_m = math.hypot(*ledger.inherited)
    if measures.under_way:  # what is missing before it is the recording's, and no error
        where = digits.metres(began_off_m, measures.miss_sd_m)
        return [say("leg-recorded-on", size=where), turned]
    sized = [
        (math.hypot(*ledger.heading), turned),
        (math.hypot(*ledger.distance), say("leg-distance", error=distance_error(measures))),
    ]
    if began_off_m > TWO_SIDED_95 * measures.miss_sd_m:
        where = digits.metres(began_off_m, measures.miss_sd_m)
        sized.append((began_off_m, say("leg-began-off", size=where)))
    return [words for _, words in sorted(sized, key=lambda pair: -pair[0])]


def _plus_minus(measures: LegMeasures) -> str:
    return digits.half_interval(half_interval_deg(measures))
