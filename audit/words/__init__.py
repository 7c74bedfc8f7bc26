"""Every sentence for people, in each language, with the terms and units of a tradition."""

from __future__ import annotations

from audit.words.in_force import in_force, say, speak, spoken, told
from audit.words.sentence import Sentence, says, sentence
from audit.words.spoken_words import PLAIN_ENGLISH, Words

__all__ = [
    "PLAIN_ENGLISH",
    "Sentence",
    "Words",
    "in_force",
    "say",
    "says",
    "sentence",
    "speak",
    "spoken",
    "told",
]
