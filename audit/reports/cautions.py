"""The cautions that every debrief, card and guide shows."""

from __future__ import annotations

from audit.words import PLAIN_ENGLISH, say

_NAMES = ("aid", "count", "angle", "rules", "error", "data")
CAUTIONS: tuple[str, ...] = tuple(PLAIN_ENGLISH.say(f"caution-{name}") for name in _NAMES)
"""In plain English."""


def cautions() -> tuple[str, ...]:
    """Give them in the words in force."""
    return tuple(say(f"caution-{name}") for name in _NAMES)
