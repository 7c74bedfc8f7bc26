"""Where a text that holds two coordinates can be cut in two."""

from __future__ import annotations

import re

# From the strongest separator to the weakest: only the strongest one present cuts, so that
# a comma inside "36,512 -84,231" stays part of its number.
_CUTS = tuple(re.compile(pattern) for pattern in (r" ?[;/|] ?", r" ?, | ,", r" ", r","))
_LETTER_CUTS = re.compile(r" ?[;/|,] ?| |(?<=[NSEW])(?=[\d.+-])|(?<=[\d.'\"°])(?=[NSEWφλ])")


def halves(text: str) -> list[tuple[str, str]]:
    """Give every way to cut a plain text at its strongest separator."""
    for cut in _CUTS:
        pairs = _pairs(text, cut)
        if pairs:
            return pairs
    return []


def lettered_halves(text: str) -> list[tuple[str, str]]:
    """Give every way to cut a text whose halves carry letters: at any separator or letter."""
    return _pairs(text, _LETTER_CUTS)


def _pairs(text: str, cut: re.Pattern[str]) -> list[tuple[str, str]]:
    places = [(found.start(), found.end()) for found in cut.finditer(text)]
    return [(text[:start], text[end:]) for start, end in places if start > 0 and end < len(text)]
