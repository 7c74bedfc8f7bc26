"""How the leg card's findings and notes write their numbers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from audit.units import MILS_PER_CIRCLE, mils_from_degrees
from audit.words import Sentence, Words, sentence
from audit.words.figures import Azimuth, Figure, Length, Listed, Number, Turn

_ROUNDED_FROM_M = 10.0

_MOST_ONE_BY_ONE = 6
"""Legs that are listed one by one; chosen: no more are taken in at a glance."""
_SHORTEST_RUN = 3


def told_legs(names: Sequence[str], *, begin: bool = False) -> Sentence:
    """List legs as part of a sentence, or at its beginning."""
    if len(names) == 1:
        return sentence("figure-leg-begin" if begin else "figure-leg", name=names[0])
    return sentence("figure-legs-begin" if begin else "figure-legs", names=listed_legs(names))


def listed_legs(names: Sequence[str]) -> Listed:
    """List names of legs: "2, 3 and 5"; of many, those that follow each other as "4 to 22"."""
    if len(names) <= _MOST_ONE_BY_ONE:
        return Listed(things=names)
    runs: list[list[str]] = []
    for name in names:
        if runs and _next(runs[-1][-1]) == name:
            runs[-1].append(name)
        else:
            runs.append([name])
    return Listed(things=[one for run in runs for one in _told_run(run)])


def _next(name: str) -> str | None:
    """Give the name of the leg after one that is called by a number; None of any other."""
    return str(int(name) + 1) if name.isdecimal() else None


def _told_run(run: Sequence[str]) -> Sequence[str]:
    if len(run) < _SHORTEST_RUN:
        return run
    return [sentence("figure-range", low=run[0], high=run[-1])]


def told_angle(angle_deg: float, decimals: int = 1) -> Sentence:
    """Give a signed angle as "7.0° west"."""
    size = Turn(degrees=angle_deg, degrees_decimals=decimals)
    if round(abs(angle_deg), decimals) == 0.0:
        return sentence("figure-length", size=size)
    return sentence("angle-east" if angle_deg > 0.0 else "angle-west", size=size)


def told_distance(metres: float) -> Length | Sentence:
    """Give a distance as the plan states it: of less than ten metres no decimal is dropped."""
    if metres >= _ROUNDED_FROM_M:
        return Length(metres=metres)
    decimals = len(f"{metres:.3f}".rstrip("0").partition(".")[2])
    return sentence("figure-metres", size=Number(value=metres, decimals=decimals))


def told_azimuth(azimuth_deg: float, *, in_mils: bool = False) -> Figure:
    """Give an azimuth as it is written on a card; ``in_mils`` says that the plan has mils."""
    azimuth = Azimuth(degrees=azimuth_deg, of_card=True)
    return _InMils(azimuth=azimuth) if in_mils else azimuth


@dataclass(frozen=True, slots=True, kw_only=True)
class _InMils(Figure):
    """An azimuth in the mils of its plan, and in the reader's unit where that is another."""

    azimuth: Azimuth

    def shown(self, words: Words) -> str:
        """Write "2060 mil (115.9)"."""
        own = self.azimuth.shown(words)
        if words.units.angle == "mil6400":
            return own
        mils = round(mils_from_degrees(self.azimuth.degrees)) % round(MILS_PER_CIRCLE)
        return f"{mils} mil ({own})"
