"""How much room words take, in the widths of the plain type that most readers have."""

from __future__ import annotations

from functools import lru_cache

_USUAL = 556
_BOLD = 1.06
_WIDTHS = {
    278: " !/,.:;It[]\\f",
    191: "'",
    222: "ijl",
    333: "()-r`{}",
    355: '"',
    389: "*",
    400: "°",
    500: "ckvsxyzJ",
    584: "+<=>~\N{MINUS SIGN}",
    611: "FTZ",
    667: "&ABEKPSVXYÄ",
    722: "CDHNRUwÜ",
    778: "GOQÖ",
    833: "Mm",
    889: "%",
    944: "W",
    1000: "…",
    260: "|",
    1015: "@",
}
"""Thousandths of the type size: the widths of Helvetica's published metrics, from memory."""
_OF_LETTER = {letter: width for width, letters in _WIDTHS.items() for letter in letters}
_RISE = 0.8
"""Of the type size, over the line that letters stand on."""
_DOWN = {"alphabetic": 0.0, "top": 0.79, "middle": 0.3, "bottom": -0.21}

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""


@lru_cache(maxsize=2048)
def width_px(text: str, size_px: float, *, bold: bool = False) -> float:
    """Give how wide words are."""
    widths = sum(_OF_LETTER.get(letter, _USUAL) for letter in text)
    return widths * size_px / 1000.0 * (_BOLD if bold else 1.0)


def down_px(baseline: str, size_px: float) -> int:
    """Give how far below its place the line lies that letters stand on."""
    return round(_DOWN[baseline] * size_px)


def box_px(width: float, anchor: str, line: tuple[float, float], size_px: float) -> Box:
    """Give the box of words whose line begins, has its middle, or ends at a place."""
    left = line[0] - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
    top = line[1] - round(_RISE * size_px)
    return left, top, left + width, top + size_px
