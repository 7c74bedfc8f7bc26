"""The walk in two or three sentences, the worst error first."""

from __future__ import annotations

import math

from audit.debriefing.records import Debrief, LegDebrief
from audit.leg_card.wording import leg_names
from audit.measurement.leg_measures import LegMeasures
from audit.reports import digits, wording
from audit.reports.cause_words import CANNOT_TELL, cause_words
from audit.reports.joint_story import joint_story


def verdict(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences: what legs share, the worst leg and why, what became of the rest."""
    shared = joint_story(debrief)
    walked = [(leg, leg.audit.measures) for leg in debrief.legs if leg.audit.measures is not None]
    if not walked:
        return ("No leg of the plan was found in this recording.", _count(debrief))
    worst, measures = max(walked, key=lambda pair: pair[1].miss_m)
    radius_m = debrief.card.arrival_radius_m
    if measures.miss_m <= radius_m:
        first = _all_arrived(worst, measures, radius_m)
        return *shared, first, _count(debrief)
    return *shared, _worst(worst, measures), _why(debrief, worst), _count(debrief)


def _all_arrived(worst: LegDebrief, measures: LegMeasures, radius_m: float) -> str:
    size = digits.metres(measures.miss_m, measures.miss_sd_m)
    return (
        f"Every leg that was walked ended within {digits.whole(radius_m)} m of its point; "
        f"the largest miss is {size}, on leg {worst.name}."
    )


def _worst(leg: LegDebrief, measures: LegMeasures) -> str:
    end = leg.audit.card.end.name
    after = "" if measures.found else "; the point was not found"
    return (
        f"The worst is leg {leg.name}: its count ended {wording.miss(measures)} of {end}, "
        f"{_main_part(measures)}{after}."
    )


def _main_part(measures: LegMeasures) -> str:
    """Name the largest part of the ledger, unless it is no larger than its own error."""
    ledger = measures.ledger
    azimuth, distance = wording.azimuth_error(measures), wording.distance_error(measures)
    sizes = {
        f"it was walked {azimuth} of the planned azimuth": ledger.heading,
        f"it was walked {distance}": ledger.distance,
        "it began away from its point": ledger.inherited,
        "the card and the points of the plan disagree": ledger.plan,
        "a detour was not walked back": ledger.detour,
    }
    largest = max(sizes, key=lambda words: math.hypot(*sizes[words]))
    if wording.AS_PLANNED in largest:
        return "and no part of that stands out from the error of measuring it"
    return f"mostly because {largest}"


def _why(debrief: Debrief, worst: LegDebrief) -> str:
    """Say what the worst leg is consistent with, and which other legs share that."""
    named = wording.named_mistake(worst)
    if named is None:
        if not worst.causes or worst.causes[0].cause == CANNOT_TELL:
            return "The evidence does not say why."
        said = wording.cause(worst)
        if said.startswith("undecided"):
            return f"The cause is {said}."
        return f"That is consistent with {said}."
    also = [leg.name for leg in debrief.legs if leg is not worst and _same_cause(leg, named.cause)]
    if any(story.cause == named.cause for story in debrief.stories):
        also = []  # the story has told them
    shared = f", and so {'is' if len(also) == 1 else 'are'} {leg_names(also)}" if also else ""
    return (
        f"That is consistent with {cause_words(named.cause)} "
        f"({digits.percent(named.probability)}){shared}."
    )


def _same_cause(leg: LegDebrief, cause: str) -> bool:
    named = wording.named_mistake(leg)
    return named is not None and named.cause == cause


def _count(debrief: Debrief) -> str:
    """Say how many legs were walked, how many points reached, and what was left out."""
    legs = debrief.legs
    measured = [leg.audit.measures for leg in legs if leg.audit.measures is not None]
    reached = sum(measures.found for measures in measured)
    text = f"{len(measured)} of {_number(len(legs), 'leg')} walked, {reached} of "
    text += f"{_number(len(legs), 'point')} reached"
    for status in ("skipped", "unfinished", "not-started"):
        names = [leg.name for leg in legs if leg.audit.status == status]
        if names:
            text += f"; {leg_names(names)} {wording.STATUS_WORDS[status]}"
    return f"{text}."


def _number(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"
