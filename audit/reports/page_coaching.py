"""What to keep and what to work on, where each error entered, and what would have been."""

from __future__ import annotations

from audit.coaching.talk import WorkOn
from audit.coaching.what_if import OtherEnd
from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.leg_card.told_numbers import told_legs
from audit.reports import digits
from audit.reports.cause_words import cause_words
from audit.words import in_force, say, told
from audit.words.spoken_words import has_message

_STEPS_TOLD = 2
"""Of one leg on the terminal, those that lead furthest off; page and debrief.json have all."""


def to_keep(debrief: Debrief) -> list[str]:
    """Give what went well, a sentence each with its evidence."""
    keep = debrief.coaching.keep
    told_of = [say("coach-keep", what=one.what, evidence=one.evidence) for one in keep]
    return [*told_of, *_nothing_else(debrief, len(keep))]


def to_work_on(debrief: Debrief) -> list[str]:
    """Give what to practise: evidence, and the exercise that would prove or clear it."""
    work_on = debrief.coaching.work_on
    told_of = [
        say(
            "coach-work-on",
            what=_title(one) if one.certain or one.one_of else say("coach-next"),
            evidence=one.evidence,
            exercise=exercise_words(one),
        )
        for one in work_on
    ]
    return [*told_of, *_nothing_else(debrief, len(work_on)), *_left_aside(debrief)]


def _nothing_else(debrief: Debrief, told_of: int) -> list[str]:
    """Say that there is no more to tell, where fewer things stand out than are looked for."""
    if told_of >= debrief.settings.coaching.things or not _talked_over(debrief):
        return []
    left_out = sum(leg.audit.measures is None for leg in debrief.legs)
    return [say("coach-nothing-else", count=told_of, walked="all" if not left_out else "some")]


def _talked_over(debrief: Debrief) -> bool:
    return any(leg.audit.measures is not None for leg in debrief.legs)


def _left_aside(debrief: Debrief) -> list[str]:
    """Name the legs that nothing is said of, and why."""
    legs = debrief.coaching.left_aside
    if not legs:
        return []
    return [say("coach-left-aside", legs=told_legs(legs, begin=True), count=len(legs))]


def exercise_words(one: WorkOn) -> str:
    """Give the exercise, or both of one of two; as the guide has it where words are missing."""
    if in_force().language == "en":
        return one.exercise
    names = [f"exercise-{cause}" for cause in one.one_of or (one.cause,)]
    if not all(has_message(name) for name in names):
        return one.exercise
    said = [say(name) for name in names]
    return said[0] if len(said) == 1 else say("coach-exercises", one=said[0], other=said[1])


def _title(one: WorkOn) -> str:
    """Name the cause, or both of one of two, at the beginning of a sentence."""
    words = _cause(one)
    return f"{words[:1].upper()}{words[1:]}"


def _cause(one: WorkOn) -> str:
    """Name the cause as the guide's page does, which other languages have no title of."""
    if in_force().language == "en":
        return one.what
    said = [cause_words(cause) for cause in one.one_of or (one.cause,)]
    return said[0] if len(said) == 1 else say("coach-either", one=said[0], other=said[1])


def coaching_lines(debrief: Debrief) -> list[str]:
    """Give the talk for a terminal, a line each; the guide has the exercises."""
    keep, work_on = debrief.coaching.keep, debrief.coaching.work_on
    return [
        *(say("terminal-keep", what=one.what, evidence=one.evidence) for one in keep),
        *(say("terminal-keep-said", said=said) for said in _nothing_else(debrief, len(keep))),
        *(_work_line(one) for one in work_on),
        *(say("terminal-work-on-said", said=said) for said in _nothing_else(debrief, len(work_on))),
        *_left_aside(debrief),
    ]


def _work_line(one: WorkOn) -> str:
    if one.one_of:
        first, second = one.one_of
        return say(
            "terminal-work-on-either",
            what=_cause(one),
            evidence=one.evidence,
            one=first,
            other=second,
        )
    return say(
        "terminal-work-on",
        what=_cause(one) if one.certain else say("terminal-what-remains"),
        evidence=one.evidence,
        cause=one.cause,
    )


def step_lines(debrief: Debrief) -> list[str]:
    """Give the steps at which errors entered, for a terminal."""
    return [
        say("terminal-leg", leg=leg.name, sentence=words)
        for leg in debrief.legs
        if leg.steps is not None and any(hop.entered or hop.noted for hop in leg.steps.hops)
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
