"""A recording of several days: each outing apart, and the one that is the walk."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.match_walk import match_laid_out
from audit.matching.pins import Pin
from audit.matching.walk_layout import WalkLaidOut, lay_out, near_course
from audit.settings import MatchingSettings


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MatchedOuting:
    """The outing that fits the course best, of how many, with its match."""

    laid_out: WalkLaidOut
    match: Match
    outings: int


def match_outings(
    clean: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> MatchedOuting:
    """Match each outing of a recording by itself and give the one that fits best.

    A silence of the recorder longer than a night's rest parts outings: no course is
    walked on both sides of it. Pins choose the outing that holds them.
    """
    near = near_course(clean, card, settings, pins)
    parts = [part for part in split_outings(near, settings, pins) if len(part) >= 2] or [near]
    if pins:
        first_s = min(pin.time_s for pin in pins)
        parts = [part for part in parts if part.time_s[0] <= first_s <= part.time_s[-1]][:1]
    matched = []
    for part in parts:
        laid_out = lay_out(part, card, settings, pins)
        matched.append((laid_out, match_laid_out(laid_out, card, settings)))
    best = min(range(len(matched)), key=lambda number: matched[number][1].cost)
    return MatchedOuting(laid_out=matched[best][0], match=matched[best][1], outings=len(matched))


def split_outings(
    clean: CleanTrack, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> list[CleanTrack]:
    """Cut a track at its long silences, never between pins; one piece where there is none."""
    breaks = np.flatnonzero(np.diff(clean.time_s) > settings.outing_silence_s) + 1
    if pins:
        first, last = (pick(clean.index_at(pin.time_s) for pin in pins) for pick in (min, max))
        breaks = breaks[(breaks <= first) | (breaks > last)]
    if len(breaks) == 0:
        return [clean]
    edges = [0, *breaks.tolist(), len(clean)]
    return [clean.part(slice(first, last)) for first, last in pairwise(edges)]
