"""What the page says beside the strip of a leg: card, heading, distance, time, miss."""

from __future__ import annotations

import math

from audit.debriefing.records import LegDebrief
from audit.measurement.leg_measures import LegMeasures
from audit.reports import digits, page_coaching, wording
from audit.track import utc_text


def planned_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give what the card says of a leg, as (name, words)."""
    card = leg.audit.card
    set_to = (
        f"grid {digits.card_azimuth(card.azimuth.degrees)}, "
        f"magnetic {digits.card_azimuth(card.magnetic.degrees)}, "
        f"back {digits.card_azimuth(card.azimuth.back().degrees)} grid"
    )
    count = f"{digits.whole(card.distance_m)} m"
    if card.paces is not None:
        count += f", {digits.whole(card.paces)} paces"
    return [("Planned", f"{set_to}; {count}"), *([("Note", card.note)] if card.note else [])]


def walked_facts(leg: LegDebrief) -> list[tuple[str, str]]:
    """Give what was walked of a leg, as (name, words); nothing for a leg not walked."""
    measures = leg.audit.measures
    if measures is None:
        return []
    facts = [
        ("Azimuth", _azimuth(measures)),
        ("Distance", _distance(measures)),
        *_paces_and_time(measures),
        ("Off the line", _off_the_line(measures)),
        ("Own line", _off_own_line(measures)),
        ("Miss", _miss(measures)),
        ("Nearest", _nearest(measures)),
        ("Match", f"{digits.percent(leg.audit.confidence)} sure of this part of the recording"),
    ]
    if measures.gap_share > 0.0:
        share = digits.percent(measures.gap_share)
        facts.append(("Gaps", f"{share} of the distance was not recorded"))
    facts += [("Step", words) for words in page_coaching.step_sentences(leg)]
    if leg.what_if is not None:
        facts.append(("What if", page_coaching.what_if_sentence(leg)))
    return facts


def _azimuth(measures: LegMeasures) -> str:
    half_deg = wording.half_interval_deg(measures)
    walked = digits.azimuth(measures.heading.azimuth.degrees, half_deg)
    return (
        f"{walked} grid (95 % interval {wording.azimuth_interval(measures)}): "
        f"{wording.azimuth_error(measures)}"
    )


def _distance(measures: LegMeasures) -> str:
    straight = digits.metres(measures.straight_m, measures.straight_sd_m)
    path = digits.metres(measures.path_m, measures.straight_sd_m)
    ratio = f"{measures.distance_ratio:.2f}"
    return (
        f"{straight} straight, {path} over the ground: {wording.distance_error(measures)} "
        f"({ratio} of plan)"
    )


def _paces_and_time(measures: LegMeasures) -> list[tuple[str, str]]:
    facts = []
    if measures.paces is not None:
        source = "counted, by the log" if measures.paces_from == "log" else "by the pace count"
        facts.append(("Paces", f"{digits.whole(measures.paces)}, {source}"))
    if measures.duration_s is not None:
        text = wording.duration(measures.duration_s)
        if measures.halted_s:
            text += f", of it {wording.duration(measures.halted_s)} standing"
        if measures.start.time_s is not None and measures.claim.time_s is not None:
            begin, end = clock(measures.start.time_s), clock(measures.claim.time_s)
            text += f" ({begin} to {end} UTC)"
        facts.append(("Time", text))
    return facts


def _off_the_line(measures: LegMeasures) -> str:
    error_m, curve = measures.miss_sd_m, measures.cross_track
    return (
        f"{wording.offset(curve.end_m, error_m)} at the claim, "
        f"{digits.metres(curve.max_abs_m, error_m)} at most, "
        f"{digits.metres(curve.rms_m, error_m)} root mean square"
    )


def _off_own_line(measures: LegMeasures) -> str:
    """Say the same of the planned azimuth drawn from where the walker really began."""
    began = digits.metres(math.hypot(*measures.ledger.inherited), measures.miss_sd_m)
    own = wording.offset(measures.own_cross_track.end_m, measures.miss_sd_m)
    side = "on the own line" if own == "on the line" else f"{own} of the own line"
    return f"began {began} from the point; {side} at the claim"


def miss_along_and_across(measures: LegMeasures) -> str:
    """Say where the claim lies from its point: "12 m beyond it, 40 m left"."""
    error_m = measures.miss_sd_m
    along = digits.metres(abs(measures.miss_along_m), error_m)
    beyond = "beyond" if measures.miss_along_m > 0 else "short of"
    return f"{along} {beyond} it, {wording.offset(measures.miss_across_m, error_m)}"


def _miss(measures: LegMeasures) -> str:
    error = digits.metres(measures.miss_sd_m, measures.miss_sd_m)
    return (
        f"{wording.miss(measures)} of the point, ±{error} each way (standard error): "
        f"{miss_along_and_across(measures)}"
    )


def _nearest(measures: LegMeasures) -> str:
    text = digits.metres(measures.nearest_m, measures.miss_sd_m)
    if measures.nearest_s is not None:
        text += f" from the point, at {clock(measures.nearest_s)} UTC"
    return f"{text}; {'reached' if measures.found else 'not reached'}"


def clock(time_s: float) -> str:
    """Write the time of day in UTC to the second."""
    return utc_text(round(time_s))[11:19]
