"""Sheets of paper, in millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

Paper = Literal["a4", "letter"]
PAPERS: tuple[Paper, ...] = get_args(Paper)
CardPaper = Literal["a6", "a5", "a4", "letter"]
CARD_PAPERS: tuple[CardPaper, ...] = get_args(CardPaper)
MARGIN_MM = 12.0
"""What printers leave white at each edge, and a little more."""

# ISO 216 A4 and A3; ANSI/ASME Y14.1 A (Letter) and B (Tabloid).
_SIZES_MM: dict[Paper, tuple[tuple[float, float], ...]] = {
    "a4": ((210.0, 297.0), (297.0, 420.0)),
    "letter": ((215.9, 279.4), (279.4, 431.8)),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A sheet as it lies before the reader."""

    width_mm: float
    height_mm: float


# ISO 216 A6 and A5: pages of a notebook.
_CARD_MM: dict[CardPaper, tuple[float, float]] = {
    "a6": (105.0, 148.0),
    "a5": (148.0, 210.0),
    "a4": _SIZES_MM["a4"][0],
    "letter": _SIZES_MM["letter"][0],
}


def card_sheet(paper: CardPaper) -> Sheet:
    """Give the sheet of a card, upright."""
    width_mm, height_mm = _CARD_MM[paper]
    return Sheet(width_mm=width_mm, height_mm=height_mm)


def sheets(paper: Paper) -> list[Sheet]:
    """Give the sheets that a kind of paper comes in, the smaller first, upright and across."""
    return [
        sheet
        for width_mm, height_mm in _SIZES_MM[paper]
        for sheet in (
            Sheet(width_mm=width_mm, height_mm=height_mm),
            Sheet(width_mm=height_mm, height_mm=width_mm),
        )
    ]
