"""What to keep and what to work on, where each error entered, and what would have been."""

from __future__ import annotations

from audit.coaching.talk import WorkOn
from audit.coaching.what_if import OtherEnd
from audit.debriefing.records import Debrief, LegDebrief
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.words import in_force, say, told
from audit.words.spoken_words import has_message

_STEPS_TOLD = 2
"""Of one leg on the terminal, those that lead furthest off; page and debrief.json have all."""


def to_keep(debrief: Debrief) -> list[str]:
    """Give what went well, a sentence each with its evidence."""
    return [
        say("coach-keep", what=one.what, evidence=one.evidence) for one in debrief.coaching.keep
    ]


def to_work_on(debrief: Debrief) -> list[str]:
    """Give what to practise: evidence, and the exercise that would prove or clear it."""
    return [
        say(
            "coach-work-on",
            what=_title(one) if one.certain else say("coach-next"),
            evidence=one.evidence,
            exercise=exercise_words(one),
        )
        for one in debrief.coaching.work_on
    ]


def exercise_words(one: WorkOn) -> str:
    """Give the exercise; without words in the language as the guide has it."""
    name = f"exercise-{one.cause}"
    return one.exercise if in_force().language == "en" or not has_message(name) else say(name)


def _title(one: WorkOn) -> str:
    """Name the cause at the beginning of a sentence."""
    words = _cause(one)
    return f"{words[:1].upper()}{words[1:]}"


def _cause(one: WorkOn) -> str:
    """Name the cause as the guide's page does, which other languages have no title of."""
    return one.what if in_force().language == "en" else cause_words(one.cause)


def coaching_lines(debrief: Debrief) -> list[str]:
    """Give the talk for a terminal, a line each; the guide has the exercises."""
    keep = [
        say("terminal-keep", what=one.what, evidence=one.evidence) for one in debrief.coaching.keep
    ]
    work_on = [
        say(
            "terminal-work-on",
            what=_cause(one) if one.certain else say("terminal-what-remains"),
            evidence=one.evidence,
            cause=one.cause,
        )
        for one in debrief.coaching.work_on
    ]
    return [*keep, *work_on]


def step_lines(debrief: Debrief) -> list[str]:
    """Give the steps at which errors entered, for a terminal."""
    return [
        say("terminal-leg", leg=leg.name, sentence=words)
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
