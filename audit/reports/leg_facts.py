"""What the page says beside the strip of a leg: card, heading, distance, time, miss."""

from __future__ import annotations

import math

from audit.debriefing.finished_debrief import LegDebrief
from audit.leg_card import CardLeg
from audit.measurement.leg_measures import LegMeasures
from audit.moments import EARLIEST_MOMENT_S, utc_text
from audit.reports import digits, page_coaching, wording
from audit.settings import QualitySettings
from audit.words import say
from audit.words.figures import Number, Paces


def planned_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give what the card says of a leg, and what the walker wrote beside it, as (name, words)."""
    card = leg.audit.card
    planned = say(
        "fact-planned-said",
        grid=digits.card_azimuth(card.azimuth.degrees),
        magnetic=digits.card_azimuth(card.magnetic.degrees),
        back=digits.card_azimuth(card.azimuth.back().degrees),
        distance=digits.stated_metres(card.distance_m),
        paces="none" if card.paces is None else Paces(counted=card.paces),
    )
    note = [(say("fact-note"), card.note)] if card.note else []
    noted = [(say("fact-log-note"), leg.noted)] if leg.noted else []
    return [(say("fact-planned"), planned), *note, *noted]


def walked_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give what was walked of a leg, as (name, words); nothing for a leg not walked."""
    measures = leg.audit.measures
    if measures is None:
        return []
    facts = [
        ("azimuth", _azimuth(measures, leg.settings.quality)),
        ("distance", _distance(measures, leg.audit.card)),
        *_paces_and_time(measures),
        ("off-line", _off_the_line(measures)),
        *([] if measures.under_way else [("own-line", _off_own_line(leg, measures))]),
        ("miss", _miss(measures)),
        ("nearest", _nearest(measures)),
        ("match", say("fact-match-said", sure=digits.percent(leg.audit.confidence))),
    ]
    if measures.gap_share > 0.0 or any(measures.ends_reckoned):
        facts.append(("gaps", _gaps(measures)))
    facts += [("step", words) for words in page_coaching.step_sentences(leg)]
    if leg.what_if is not None:
        facts.append(("what-if", page_coaching.what_if_sentence(leg)))
    return [(say(f"fact-{name}"), words) for name, words in facts]


def _gaps(measures: LegMeasures) -> str:
    unseen_s = measures.unseen_s
    return say(
        "fact-gaps-said",
        share=digits.percent(measures.gap_share),
        time=wording.duration(unseen_s) if unseen_s else "none",
        reckoned=_RECKONED[measures.ends_reckoned],
    )


_RECKONED = {
    (False, False): "none",
    (True, False): "start",
    (False, True): "claim",
    (True, True): "both",
}


def _azimuth(measures: LegMeasures, quality: QualitySettings) -> str:
    half_deg = wording.half_interval_deg(measures)
    return say(
        "fact-azimuth-said",
        walked=digits.azimuth(measures.heading.azimuth.degrees, half_deg),
        interval=wording.azimuth_interval(measures),
        doubted="yes" if measures.heading.widened else "no",
        error=wording.azimuth_error(measures, quality),
    )


def _distance(measures: LegMeasures, card: CardLeg) -> str:
    straight = digits.metres(measures.straight_m, measures.straight_sd_m)
    path = digits.metres(measures.path_m, measures.path_sd_m)
    if not measures.line_followed:
        line = digits.stated_metres(card.distance_m)
        return say("fact-distance-line-left", straight=straight, path=path, line=line)
    if measures.under_way:
        return say("fact-distance-in-part", straight=straight, path=path)
    return say(
        "fact-distance-said",
        straight=straight,
        path=path,
        along=wording.made_along_line(measures, card) or "none",
        error=wording.distance_error(measures),
        ratio=Number(value=measures.distance_ratio, decimals=2),
    )


def _paces_and_time(measures: LegMeasures) -> list[tuple[str, str]]:
    facts = []
    if measures.paces is not None:
        source = "log" if measures.paces_from == "log" else "count"
        said = say(f"fact-paces-by-{source}", paces=Paces(counted=measures.paces))
        facts.append(("paces", said))
    if measures.duration_s is not None:
        halted_s, ends = measures.halted_s, (measures.start.time_s, measures.claim.time_s)
        begin, end = ("none" if at is None or None in ends else clock(at) for at in ends)
        said = say(
            "fact-time-said",
            time=wording.duration(measures.duration_s),
            standing=wording.duration(halted_s) if halted_s else "none",
            unseen=wording.duration(measures.unseen_s) if measures.unseen_s else "none",
            begin=begin,
            end=end,
            clock=clock_name(measures.start.time_s),
        )
        facts.append(("time", said))
    return facts


def _off_the_line(measures: LegMeasures) -> str:
    error_m, curve = measures.miss_sd_m, measures.cross_track
    return say(
        "fact-off-line-said",
        end=wording.offset(curve.end_m, error_m),
        most=digits.metres(curve.max_abs_m, error_m),
        rms=digits.metres(curve.rms_m, error_m),
    )


def _off_own_line(leg: LegDebrief, measures: LegMeasures) -> str:
    """Say the same of the planned azimuth drawn from where the walker really began."""
    began = digits.metres(math.hypot(*measures.ledger.inherited), measures.miss_sd_m)
    start = leg.audit.card.start.name
    side = wording.offset(measures.own_cross_track.end_m, measures.miss_sd_m)
    if side == say("figure-on-line"):
        return say("fact-own-line-on", began=began, start=start)
    return say("fact-own-line-off", began=began, start=start, side=side)


def miss_along_and_across(measures: LegMeasures) -> str:
    """Say where the claim lies from its point: "12 m beyond it, 40 m left"."""
    error_m = measures.miss_sd_m
    if digits.metres(abs(measures.miss_along_m), error_m) == digits.metres(0.0, error_m):
        return say("fact-level-with", across=wording.offset(measures.miss_across_m, error_m))
    return say(
        "fact-beyond" if measures.miss_along_m > 0 else "fact-short-of",
        along=digits.metres(abs(measures.miss_along_m), error_m),
        across=wording.offset(measures.miss_across_m, error_m),
    )


def _miss(measures: LegMeasures) -> str:
    return say(
        "fact-miss-said",
        miss=wording.miss(measures),
        error=digits.metres(measures.miss_sd_m, measures.miss_sd_m),
        where=miss_along_and_across(measures),
    )


def _nearest(measures: LegMeasures) -> str:
    return say(
        _NEAREST[measures.point_verdict],
        size=digits.metres(measures.nearest_m, measures.miss_sd_m),
        time="none" if measures.nearest_s is None else clock(measures.nearest_s),
        clock=clock_name(measures.nearest_s),
    )


_NEAREST = {
    "found": "fact-nearest-reached",
    "missed": "fact-nearest-not",
    "too close to call": "fact-nearest-too-close",
}


def clock_name(time_s: float | None) -> str:
    """Say by what clock a moment is told: a private debrief counts from its first fix."""
    from_start = time_s is not None and time_s < EARLIEST_MOMENT_S
    return say("fact-clock-from-start" if from_start else "fact-clock-utc")


def clock(time_s: float) -> str:
    """Write the time of day in UTC to the second."""
    return utc_text(round(time_s))[11:19]
