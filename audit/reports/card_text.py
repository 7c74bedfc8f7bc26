"""The card to carry as plain text, for a terminal or a notebook."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable

from audit.leg_card.carried_card import CarriedCard
from audit.reports.card_words import CardWords, Cell, LegWords, card_words
from audit.reports.printable import printable
from audit.words import say

_WIDTH = 78
_BLANK = "________"
_TIED = "\N{NO-BREAK SPACE}"
"""Between a figure and its label, which stay on one line."""


def render_card_text(carried: CarriedCard) -> str:
    """Give plain text that ends with a line feed, no line longer than a terminal is wide."""
    words = card_words(carried)
    lines = [line for part in _parts(words) for line in (*part, "")]
    return "\n".join(printable(line).rstrip() for line in lines[:-1]) + "\n"


def _parts(words: CardWords) -> Iterable[list[str]]:
    title = say("card-title", course=words.title)
    yield [*_wrapped(title, ""), *_listed(words.facts, "  ")]
    if words.warnings:
        yield _listed(words.warnings, "! ")
    yield [words.safety.heading, *_listed(words.safety.sentences, "  ")]
    for leg in words.legs:
        yield _leg(leg)
    *parts, cautions = words.parts
    for part in parts:
        yield [part.heading, *_listed(part.sentences, "  ")]
    yield _listed(cautions.sentences, "")


def _leg(leg: LegWords) -> list[str]:
    """Give a leg: a straight one with all its figures in one row, another piece by piece."""
    straight = len(leg.pieces) == 1
    lines = [*_wrapped(say("card-leg", title=leg.title), ""), *_wrapped(leg.references, "  ")]
    for piece in leg.pieces:
        lines += _wrapped(piece.title, "  ")
        lines += _figures(piece.cells + (leg.cells if straight else ()))
        lines += _listed(piece.bezel, "  ")
    return [
        *lines,
        *([] if straight else _figures(leg.cells)),
        *_wrapped(leg.time, "  "),
        *(_wrapped(say("card-note", note=leg.note), "  ") if leg.note else []),
        "  " + "   ".join(f"{name} {_BLANK}" for name in leg.blanks),
    ]


def _figures(cells: Iterable[Cell]) -> list[str]:
    figures = [f"{cell.label} {cell.value or _BLANK}".replace(" ", _TIED) for cell in cells]
    return _wrapped("   ".join(figures), "  ")


def _listed(sentences: Iterable[str], before: str) -> list[str]:
    return [line for sentence in sentences for line in _wrapped(sentence, before)]


def _wrapped(sentence: str, before: str) -> list[str]:
    lines = textwrap.wrap(
        _TIED.join(printable(part) for part in sentence.split(_TIED)),
        _WIDTH,
        initial_indent=before,
        subsequent_indent=" " * (len(before) + 1),
        break_long_words=False,
        break_on_hyphens=False,
        drop_whitespace=True,
    )
    return [line.replace(_TIED, " ") for line in lines]
