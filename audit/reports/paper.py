"""Sheets of paper, in millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

Paper = Literal["a4", "letter"]
PAPERS: tuple[Paper, ...] = get_args(Paper)
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
