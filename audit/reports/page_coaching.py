"""What to keep and what to work on, where each error entered, and what would have been."""

from __future__ import annotations

from audit.coaching.what_if import OtherEnd
from audit.debriefing.records import Debrief, LegDebrief
from audit.reports import digits
from audit.words import say, told

_STEPS_TOLD = 2
"""Of one leg on the terminal, those that lead furthest off; page and debrief.json have all."""


def to_keep(debrief: Debrief) -> list[str]:
    """Give what went well, a sentence each with its evidence."""
    return [f"{one.what}. {one.evidence}" for one in debrief.coaching.keep]


def to_work_on(debrief: Debrief) -> list[str]:
    """Give what to practise: evidence, and the exercise that would prove or clear it."""
    said = []
    for one in debrief.coaching.work_on:
        what = f"{one.what[:1].upper()}{one.what[1:]}" if one.certain else "To look at next"
        said.append(f"{what}. {one.evidence} Five minutes: {one.exercise}")
    return said


def coaching_lines(debrief: Debrief) -> list[str]:
    """Give the talk for a terminal, a line each; the guide has the exercises."""
    keep = [f"keep: {one.what}. {one.evidence}" for one in debrief.coaching.keep]
    work_on = [
        f"work on: {one.what if one.certain else 'what remains'}. {one.evidence} "
        f"Exercise: leg-audit guide {one.cause}"
        for one in debrief.coaching.work_on
    ]
    return [*keep, *work_on]


def step_lines(debrief: Debrief) -> list[str]:
    """Give the steps at which errors entered, for a terminal."""
    return [
        f"leg {leg.name}: {words}"
        for leg in debrief.legs
        if leg.steps is not None and any(hop.entered for hop in leg.steps.hops)
        for words in leg.steps.sentences[:_STEPS_TOLD]
    ]


def step_sentences(leg: LegDebrief) -> tuple[str, ...]:
    """Say at which steps the errors of a leg entered; nothing where no card or log tells."""
    return () if leg.steps is None else tuple(told(one) for one in leg.steps.sentences)


def what_if_sentence(leg: LegDebrief) -> str:
    """Say where the leg would have ended with one thing done right; "" for a leg not walked."""
    if leg.what_if is None:
        return ""
    azimuth, distance = leg.what_if.planned_azimuth, leg.what_if.planned_distance
    return say(
        "fact-what-if-said", azimuth=_from_the_point(azimuth), distance=_from_the_point(distance)
    )


def _from_the_point(end: OtherEnd) -> str:
    size = digits.metres(end.miss_m, end.sd_m)
    return say("fact-from-the-point", size=size, error=digits.metres(end.sd_m, end.sd_m))
