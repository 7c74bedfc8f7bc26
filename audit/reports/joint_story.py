"""What several legs have in common, in one sentence each, for the head of the debrief."""

from __future__ import annotations

from audit.debriefing.records import Debrief
from audit.diagnosis.finding import WalkFinding
from audit.reports import digits
from audit.reports.cause_words import STORY_WORDS, cause_words
from audit.settings import Settings


def joint_story(debrief: Debrief) -> tuple[str, ...]:
    """Give the sentences, the most probable first; none where the legs share nothing."""
    most = Settings().reports.told_stories
    return tuple(_sentence(debrief, story) for story in debrief.stories[:most])


def _sentence(debrief: Debrief, story: WalkFinding) -> str:
    """Say "The grid-magnetic angle was left out on legs 1 to 3, then put right (94 % likely)."."""
    words = STORY_WORDS.get(story.cause, f"Legs share {cause_words(story.cause)},")
    walked = [n for n, leg in enumerate(debrief.legs) if leg.audit.measures is not None]
    after = ", then put right" if story.put_right else ""
    size = f" ({_size(story)})" if story.size is not None else ""
    where = _where(debrief, story, walked)
    return f"{words}{size} {where}{after} ({digits.percent(story.probability)} likely)."


def _size(story: WalkFinding) -> str:
    size = story.size or 0.0
    if story.unit == "deg":
        return f"{abs(size):.0f}\u00b0 {'right' if size > 0.0 else 'left'}"
    if story.unit == "ratio":
        return f"{size:.2f} of the distance"
    return f"{abs(size):.0f} m"


def _where(debrief: Debrief, story: WalkFinding, walked: list[int]) -> str:
    """Say on which legs; a run of walked legs is told by its ends."""
    shown = list(story.legs)
    if shown == walked:
        return "on every leg"
    first, last = walked.index(shown[0]), walked.index(shown[-1])
    names = [debrief.legs[leg].name for leg in shown]
    run = shown == walked[first : last + 1]
    if run and last == len(walked) - 1:
        return f"from leg {names[0]} on"
    if run and len(shown) > 2:
        return f"on legs {names[0]} to {names[-1]}"
    return f"on legs {', '.join(names[:-1])} and {names[-1]}"
