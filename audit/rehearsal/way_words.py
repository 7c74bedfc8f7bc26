"""How large a way of going wrong is, as a number and in words."""

from __future__ import annotations

import math

from audit.diagnosis.cause import Cause, Expected
from audit.rehearsal.finished_rehearsal import Unit
from audit.words import sentence
from audit.words.figures import Length, Listed, Number, Turn

_RATIOS = frozenset({"single-double-pace", "wrong-ruler", "pace-long", "pace-short", "slope-paced"})


def size_of(cause: Cause, way: Expected, length_m: float) -> tuple[float, Unit]:
    """Give the size of a way on a leg, or a piece of one, so long, and its unit."""
    if way.shift_m is not None:
        return math.hypot(*way.shift_m), "m"
    if cause.kind == "turn":
        return way.turn_deg, "deg"
    if cause.name in _RATIOS:
        return math.exp(way.log_ratio), "ratio"
    return length_m * math.expm1(way.log_ratio), "m"


def way_words(size: float, unit: Unit, shift_m: tuple[float, float] | None = None) -> str:
    """Say how large a way is: "7.5° left", "100 m short", "made for a place 300 m east"."""
    if shift_m is not None:
        axes = (("east", "west"), ("north", "south"))
        parts = [
            sentence(f"rehearse-way-{names[0] if part > 0 else names[1]}", size=_metres(part))
            for part, names in zip(shift_m, axes, strict=True)
            if abs(part) >= 0.5
        ]
        return sentence("rehearse-way-place", where=Listed(things=parts))
    if unit == "deg":
        side = "about" if abs(size) >= 179.95 else "right" if size > 0 else "left"
        return sentence(f"rehearse-way-{side}", size=Turn(degrees=size))
    if unit == "ratio":
        return sentence("rehearse-way-ratio", ratio=Number(value=size, decimals=2))
    return sentence(f"rehearse-way-{'far' if size > 0 else 'short'}", size=_metres(size))


def _metres(size_m: float) -> Length:
    return Length(metres=abs(size_m))
