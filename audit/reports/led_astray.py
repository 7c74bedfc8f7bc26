"""What may have led a leg astray that nothing on itself explains, for the head of the debrief."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief, LegDebrief
from audit.guide.cause_names import CANNOT_TELL, CAUSE_KINDS
from audit.reports import digits, wording
from audit.units import turn_degrees
from audit.words import say

_MISPLACED = frozenset(CAUSE_KINDS["The point"]) - {
    "datum", "point-misplaced", "wrong-start", "wrong-point",
}  # fmt: skip
"""Mistakes by which a point stands elsewhere on the walker's card or map."""


def led_by(debrief: Debrief, leg: LegDebrief) -> str:
    """Say of a leg that nothing explains what may have led it astray; "" where nothing may."""
    before = leading(debrief, leg)
    if before is None:
        return ""
    return say(
        "verdict-led-by",
        leg=leg.name,
        before=before.name,
        point=before.audit.card.end.name,
        cause=wording.cause(before),
    )


def beside_shared(debrief: Debrief, leg: LegDebrief) -> str:
    """Say by how much a leg that nothing explains was turned beside what other legs share.

    "" where nothing is shared, or that leaves no less of the turn than there is.
    """
    measures = leg.audit.measures
    stories = (story for story in debrief.stories if story.unit == "deg" and story.size)
    story = next(stories, None)
    if story is None or measures is None or debrief.legs.index(leg) in story.legs:
        return ""
    left_deg = turn_degrees(story.size or 0.0, measures.azimuth_error_deg)
    if abs(left_deg) >= abs(measures.azimuth_error_deg):
        return ""
    size = digits.angle(left_deg, wording.half_interval_deg(measures))
    legs = [debrief.legs[number].name for number in story.legs]
    left = wording.sided(size, left_deg)
    return say("verdict-beside-shared", left=left, legs=wording.leg_names(legs))


def leading(debrief: Debrief, leg: LegDebrief) -> LegDebrief | None:
    """Give the leg before one that nothing explains, where a wrong plot is named of it.

    Who has a point in the wrong place goes astray on the way to it and, measuring from there, on
    the way on from it.
    """
    number = debrief.legs.index(leg)
    if number == 0 or (leg.causes and leg.causes[0].cause != CANNOT_TELL):
        return None
    before = debrief.legs[number - 1]
    named = wording.named_mistake(before)
    return before if named is not None and named.cause in _MISPLACED else None
