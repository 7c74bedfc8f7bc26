"""What several legs have in common, in one sentence each, for the head of the debrief."""

from __future__ import annotations

from audit.debriefing.finished_debrief import Debrief
from audit.diagnosis.finding import Unit, WalkFinding
from audit.leg_card.told_numbers import listed_legs
from audit.reports import digits, wording
from audit.reports.cause_words import story_words
from audit.words import say
from audit.words.figures import Length, Number, Turn


def joint_story(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences, the most probable first; none where the legs share nothing."""
    most = debrief.settings.reports.told_stories
    return tuple(_sentence(debrief, story) for story in debrief.stories[:most])


def _sentence(debrief: Debrief, story: WalkFinding) -> str:
    """Say "The grid-magnetic angle was left out on legs 1 to 3, then put right (94 % likely)."."""
    walked = [n for n, leg in enumerate(debrief.legs) if leg.audit.measures is not None]
    return say(
        "story-told",
        story=story_words(story.cause),
        size="none" if story.size is None else _size(story.size, story.unit),
        where=_where(debrief, story, walked),
        after="yes" if story.put_right else "no",
        sure=digits.percent(story.probability),
    )


def _size(size: float, unit: Unit | None) -> str:
    if unit == "deg":
        # As the legs' own sentences have it: half a degree is not rounded away.
        decimals = 0 if round(size, 1).is_integer() else 1
        return wording.sided(Turn(degrees=size, degrees_decimals=decimals), size)
    if unit == "ratio":
        return say("story-size-ratio", ratio=Number(value=size, decimals=2))
    return say("figure-length", size=Length(metres=abs(size)))


def _where(debrief: Debrief, story: WalkFinding, walked: list[int]) -> str:
    """Say on which legs; a run of walked legs is told by its ends."""
    shown = list(story.legs)
    if shown == walked:
        return say("story-on-every")
    first, last = walked.index(shown[0]), walked.index(shown[-1])
    names = [debrief.legs[leg].name for leg in shown]
    run = shown == walked[first : last + 1]
    if run and last == len(walked) - 1:
        return say("story-from", first=names[0])
    if run and len(shown) > 2:
        return say("story-on-run", first=names[0], last=names[-1])
    return say("story-on", names=listed_legs(names))
