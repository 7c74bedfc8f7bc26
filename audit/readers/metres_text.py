"""Eastings and northings in metres, however their thousands and decimals are marked."""

from __future__ import annotations

import re
from dataclasses import dataclass

from audit.readers.number_text import NumberReading, number_readings
from audit.readers.pair_text import halves, lettered_halves
from audit.settings import ReadingSettings

# Eastings with the zone before them (as in China, 39 500 000) are the largest in use.
_FARTHEST_M = 1e8
_AXIS_WORDS = re.compile(r"\b(EAST|NORTH)(?:ING)?S?\b\.?[:=]? ?")
_HALF = re.compile(r"(?P<before>[EN])? ?[:=]? ?(?P<number>[-+\d., ']+?) ?(?:M ?)?(?P<after>[EN])?")


@dataclass(frozen=True, slots=True, kw_only=True)
class MetrePair:
    """An easting and a northing, and how the writing was read ("" for the plain way)."""

    east_m: float
    north_m: float
    how: str = ""

    def far_from_origin(self, limits: ReadingSettings) -> bool:
        """Tell whether this can be meant: coordinates of a course are large."""
        return max(abs(self.east_m), abs(self.north_m)) >= limits.near_origin_m


def metre_pairs(text: str, limits: ReadingSettings) -> tuple[MetrePair, ...]:
    """Give the readings of "441820 4142790", "441,820 4,142,790", "E 441820 N 4142790" and kin.

    ``text`` is plain and in capitals. Easting comes first unless letters say otherwise.
    """
    text = _AXIS_WORDS.sub(lambda found: found[1][0] + " ", text).strip()
    cuts = lettered_halves(text) if re.search("[EN]", text) else halves(text)
    found = [pair for left, right in cuts for pair in _pairs(left, right)]
    distinct = {(pair.east_m, pair.north_m): pair for pair in reversed(found)}
    pairs = [pair for pair in found if distinct[pair.east_m, pair.north_m] is pair]
    # Nobody's course lies within a kilometre of a grid's false origin: "441,820" is no 441.82 m.
    far = [pair for pair in pairs if pair.far_from_origin(limits)]
    return tuple(far or pairs)


def _pairs(left: str, right: str) -> list[MetrePair]:
    first, second = _HALF.fullmatch(left), _HALF.fullmatch(right)
    if not first or not second:
        return []
    axes = _axis(first), _axis(second)
    if "?" in axes or (axes[0] and axes[0] == axes[1]):
        return []
    swapped = axes[0] == "N" or axes[1] == "E"
    pairs = []
    for one in number_readings(first["number"]):
        for other in number_readings(second["number"]):
            if one.agrees_with(other) and max(abs(one.value), abs(other.value)) < _FARTHEST_M:
                east, north = (other, one) if swapped else (one, other)
                pairs.append(
                    MetrePair(east_m=east.value, north_m=north.value, how=_how(one, other))
                )
    return pairs


def _axis(half: re.Match[str]) -> str:
    """Give the half's axis letter, "" for none and "?" for two that differ."""
    letters = {half["before"], half["after"]} - {None}
    return "?" if len(letters) > 1 else next(iter(letters), "") or ""


def _how(one: NumberReading, other: NumberReading) -> str:
    if one.group_mark or other.group_mark:
        return "marks between the thousands taken out"
    return "decimal commas" if "," in {one.decimal_mark, other.decimal_mark} else ""
