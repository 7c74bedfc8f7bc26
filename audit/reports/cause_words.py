"""Each cause in plain words, and what to practise against it.

The words stand in audit/words, in cause.ftl, advice.ftl and story.ftl.
"""

from __future__ import annotations

from audit.words import say
from audit.words.spoken_words import has_message


def has_words(cause: str) -> bool:
    """Tell whether a cause, or a slip of a plan, has words of its own."""
    return has_message(f"cause-{cause}")


def cause_words(cause: str) -> str:
    """Give the words of a cause; a name without an entry is read out as it stands."""
    return say(f"cause-{cause}") if has_words(cause) else cause.replace("-", " ")


def advice_words(cause: str) -> str:
    """Give one thing to do about a cause; "" where there is none."""
    return say(f"advice-{cause}") if has_message(f"advice-{cause}") else ""


def story_words(cause: str) -> str:
    """Begin the sentence about a mistake that several legs share."""
    if has_message(f"story-{cause}"):
        return say(f"story-{cause}")
    return say("story-other", cause=cause_words(cause))
