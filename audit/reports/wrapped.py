"""Sentences for a terminal, broken into lines that it is wide enough for."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable

_WIDTH = 88


def wrapped(sentences: Iterable[str]) -> list[str]:
    """Give the lines of some sentences."""
    return [
        line
        for sentence in sentences
        for line in textwrap.wrap(sentence, _WIDTH, break_long_words=False, break_on_hyphens=False)
    ]
