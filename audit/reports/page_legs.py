"""The legs as the page shows them: rows of the table, causes, advice, ledger; words only."""

from __future__ import annotations

from dataclasses import dataclass

from audit.debriefing.doubts import reckoned_notes
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.guide.cause_names import WITHIN_SKILL
from audit.measurement.leg_measures import LegMeasures
from audit.reports import digits, wording
from audit.reports.cause_words import advice_words
from audit.words import in_force, say, told
from audit.words.in_other_units import to_place

LEDGER_PARTS = ("inherited", "plan", "heading", "distance", "detour", "total")
"""Parts of the ledger, in the order of its columns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LegRow:
    """A line of the leg table; "" where a leg was not walked."""

    name: str
    ends: str
    status: str
    azimuth_planned: str
    azimuth_walked: str = ""
    azimuth_error: str = ""
    distance_planned: str
    distance_walked: str = ""
    distance_error: str = ""
    off_line: str = ""
    miss: str = ""
    found: str = ""
    cause: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CauseRow:
    """A candidate cause in words."""

    words: str
    probability: str
    evidence: str


def leg_row(leg: LegDebrief, radius_m: float) -> LegRow:
    """Give the line of the leg table."""
    card, measures = leg.audit.card, leg.audit.measures
    ends = say("figure-range", low=card.start.name, high=card.end.name)
    status = wording.status_of(leg, radius_m)
    azimuth = digits.card_azimuth(card.azimuth.degrees)
    distance = digits.stated_metres(card.distance_m)
    if measures is None:
        return LegRow(name=leg.name, ends=ends, status=status, azimuth_planned=azimuth,
                      distance_planned=distance, cause=wording.cause(leg))  # fmt: skip
    half_deg = wording.half_interval_deg(measures)
    return LegRow(
        name=leg.name,
        ends=ends,
        status=status,
        azimuth_planned=azimuth,
        azimuth_walked=(
            f"{digits.azimuth(measures.heading.azimuth.degrees, half_deg)} "
            f"{digits.half_interval(half_deg)}"
        ),
        azimuth_error=wording.azimuth_error(measures, leg.settings.quality),
        distance_planned=distance,
        distance_walked=_walked_distance(leg, measures),
        distance_error=wording.distance_error(measures),
        off_line=wording.offset(measures.cross_track.end_m, measures.miss_sd_m),
        miss=wording.short_miss(measures),
        found=wording.found(measures, radius_m),
        cause=wording.cause_told(leg),
    )


def _walked_distance(leg: LegDebrief, measures: LegMeasures) -> str:
    """Give the distance that stands between the planned one and the error of it."""
    along = wording.made_along_line(measures, leg.audit.card)
    if along:
        return say("leg-along-line", size=along)
    return digits.metres(measures.straight_m, measures.straight_sd_m)


def cause_rows(leg: LegDebrief) -> list[CauseRow]:
    """Give the candidate causes of a leg that are worth telling, the most probable first."""
    settings = leg.settings.reports
    return [
        CauseRow(
            words=wording.cause_of_leg(one, leg),
            probability=digits.percent(one.probability),
            evidence=told(one.evidence),
        )
        for number, one in enumerate(leg.causes[: settings.shown_causes])
        if number == 0 or one.probability >= settings.shown_cause_probability
    ]


def settles(leg: LegDebrief) -> str:
    """Give what would settle the cause of a leg; "" where there is nothing to settle."""
    first = wording.leading_cause(leg)
    if not leg.causes or (first is not None and first.cause == WITHIN_SKILL):
        return ""
    told_of = (leg.causes[0].settles,) if leg.one_of is None else leg.one_of.settles
    return " ".join(dict.fromkeys(told(one) for one in told_of if one))


def unsure(leg: LegDebrief) -> str:
    """Give what is not sure of a leg's part of the recording; "" where nothing is."""
    portion = leg.portion
    reckoned = [] if portion is None else reckoned_notes(leg.audit.card.name, portion)
    return " ".join(told(of) for of in (*reckoned, leg.doubt) if of)


def advice(leg: LegDebrief) -> str:
    """Give what to practise, where a mistake is named; else ""."""
    named = wording.named_mistake(leg)
    return "" if named is None else advice_words(named.cause)


def ledger_row(leg: LegDebrief) -> list[str] | None:
    """Give the parts of the ledger as "12 m E, 40 m N", or None for a leg not walked."""
    measures = leg.audit.measures
    if measures is None:
        return None
    return [
        _east_north(getattr(measures.ledger, part), measures.miss_sd_m) for part in LEDGER_PARTS
    ]


def ledger_rows(debrief: Debrief) -> list[tuple[str, list[str]]]:
    """Give (leg, parts) of every leg that was walked."""
    rows = ((leg.name, ledger_row(leg)) for leg in debrief.legs)
    return [(name, row) for name, row in rows if row is not None]


def _east_north(part: tuple[float, float], standard_error_m: float) -> str:
    place = digits.metres_place(standard_error_m)
    east, north = (to_place(in_force().units.length_from(abs(value)), place) for value in part)
    words = [
        f"{east} {_letter(part[0], 'eastward', 'westward')}" if east != "0" else "",
        f"{north} {_letter(part[1], 'north', 'south')}" if north != "0" else "",
    ]
    return ", ".join(word for word in words if word) or "0"


def _letter(signed: float, positive: str, negative: str) -> str:
    return say(f"figure-letters-{positive if signed > 0 else negative}")
