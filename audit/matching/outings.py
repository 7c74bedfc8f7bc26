"""A recording of several walks: each apart, and the one that is the walk of the course."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match
from audit.matching.match_walk import looked_at_again, match_laid_out
from audit.matching.passing import passing_cost
from audit.matching.pins import Pin
from audit.matching.rounds import begun_anew, rounds_to_weigh
from audit.matching.route import course_points
from audit.matching.walk_layout import SampledWalk, lay_out, near_course
from audit.matching.walk_of_day import OfDay, of_day
from audit.settings import MatchingSettings


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MatchedOuting:
    """The walk that fits the course best, with its match.

    Attributes
    ----------
    outings : int
        How many stretches near the course the recording holds, parted by long silences.
    others : tuple of Match
        Other walks of the same course, in order of time.
    rounds : tuple of float
        When further rounds by the points passed the first of them, in a recording so long
        that only the best were weighed.
    by_day : bool
        Whether the day of the plan left others out.
    without_log : Match or None
        The match of the recording alone, where the moments of the walker's log changed it.
    """

    sampled: SampledWalk
    match: Match
    outings: int
    others: tuple[Match, ...] = ()
    rounds: tuple[float, ...] = ()
    by_day: bool = False
    without_log: Match | None = None

    @property
    def begun_s(self) -> float:
        """When the walk was begun, by the first leg that was walked."""
        return _begun_s(self.sampled, self.match)

    @property
    def of_several(self) -> bool:
        """Tell whether the recording holds more than this walk."""
        return self.outings > 1 or bool(self.others or self.rounds)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Walk:
    sampled: SampledWalk
    match: Match

    @property
    def legs(self) -> set[int]:
        """The legs that were walked."""
        return {leg.leg for leg in self.match.legs if leg.start_s is not None}

    @property
    def is_whole(self) -> bool:
        """Tell whether every leg was walked."""
        return len(self.legs) == len(self.match.legs)

    @property
    def is_of_course(self) -> bool:
        """Tell whether this is a walk of the course at all: half its legs were walked."""
        return self.match.cost < 0.0 and 2 * len(self.legs) >= len(self.match.legs)


def match_outings(
    clean: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> MatchedOuting:
    """Match each walk of a recording by itself and give the one that fits best.

    A silence of the recorder longer than a night's rest parts outings: no course is
    walked on both sides of it. A shorter one, a long halt, or coming back to begin anew
    parts walks if the course was walked on either side. Of a recording many times as long
    as the course only the rounds that pass its points best are weighed. Pins choose the
    walk that holds them. Without any the walk of the day that the plan gives is taken, unless
    it is plainly none of the course.
    """
    near = near_course(clean, card, settings, pins)
    rounds, beside = rounds_to_weigh(near, card, settings, pins)
    parts = [part for part in split_outings(near, settings, pins) if len(part) >= 2] or [near]
    if pins:
        parts = [part for part in parts if _holds(part, pins)][:1]
    outings = len(parts)
    if rounds:
        outings, parts = 1, rounds
    walks: list[_Walk] = []
    for part in parts:
        walks += _walks_of(part, card, settings, pins)
        if rounds and walks[-1].is_whole:
            break  # the next best round cannot show more
    days = [OfDay.BEGUN_THEN if pins else _day_of(walk, card, settings) for walk in walks]
    of_the_day = [walk for walk, day in zip(walks, days, strict=True) if day == min(days)]
    best = of_the_day[0]
    if len(of_the_day) > 1:
        best = min(
            of_the_day,
            key=lambda walk: walk.match.cost + passing_cost(walk.sampled, card, settings),
        )
    return MatchedOuting(
        sampled=best.sampled,
        match=looked_at_again(best.match, best.sampled, card, settings, pins),
        outings=outings,
        others=tuple(walk.match for walk in walks if walk is not best and walk.is_of_course),
        rounds=beside,
        by_day=not pins and min(days) < max([*days, *(of_day(one, card) for one in beside)]),
    )


def _day_of(walk: _Walk, card: LegCard, settings: MatchingSettings) -> OfDay:
    """Tell how a walk lies to the day of the plan; what is plainly none of it is of another.

    That is one without a leg, or that comes near no point that a leg leads to.
    """
    if not walk.legs or not any(_points_near(walk.sampled.clean, card, settings)[1:]):
        return OfDay.OF_ANOTHER
    return of_day(_begun_s(walk.sampled, walk.match), card)


def _begun_s(sampled: SampledWalk, match: Match) -> float:
    begun = [leg.start_s for leg in match.legs if leg.start_s is not None]
    return min(begun, default=float(sampled.clean.time_s[0]))


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


def _holds(part: CleanTrack, pins: Sequence[Pin]) -> bool:
    return all(part.holds(pin.time_s) for pin in pins)


def _walks_of(
    part: CleanTrack,
    card: LegCard,
    settings: MatchingSettings,
    pins: Sequence[Pin],
    whole: _Walk | None = None,
) -> list[_Walk]:
    """Give the walks of the course that a stretch holds, each matched; at least one.

    ``whole`` is the stretch as one walk, where it was matched already.
    """
    whole = whole or _matched(part, card, settings, pins)
    for at in _partings(part, whole, card, settings):
        here = part.index_at(at)
        sides = [part.part(slice(None, here)), part.part(slice(here, None))]
        if not all(_comes_by(side, card, settings) for side in sides):
            continue
        if pins:
            sides = [side for side in sides if _holds(side, pins)]
        walks = [_matched(side, card, settings, pins) for side in sides]
        if walks and _apart(walks, whole, settings):
            return [
                one
                for side, walk in zip(sides, walks, strict=True)
                for one in _walks_of(side, card, settings, pins, walk)
            ]
    return [whole]


def _apart(walks: list[_Walk], whole: _Walk, settings: MatchingSettings) -> bool:
    """Tell whether what lies on either side of a moment is better taken for walks apart.

    It is if most legs were walked on either side, and one side alone fits nearly as well
    as both together, where each leg takes the better of two; a rest on the way leaves
    other legs on either side. The more legs both sides have, the less need one alone fit.
    Or if one side alone fits better.
    """
    best = min(walk.match.cost for walk in walks)
    if best < whole.match.cost - settings.walk_better_nats:
        return True
    both = set.intersection(*(walk.legs for walk in walks))
    share = len(both) / len(whole.match.legs)
    less = settings.walk_alone_share - settings.walk_alone_least_share
    alone = settings.walk_alone_share - less * (2.0 * share - 1.0) ** 2
    return share >= 0.5 and best < 0.0 and best <= alone * whole.match.cost


def _matched(
    part: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin]
) -> _Walk:
    laid_out = lay_out(part, card, settings, pins)
    return _Walk(sampled=laid_out.sampled(), match=match_laid_out(laid_out, card, settings))


def _partings(
    part: CleanTrack, whole: _Walk, card: LegCard, settings: MatchingSettings
) -> list[float]:
    """Give the moments that may part two walks of the course: long pauses, and a new beginning.

    Where the legs as matched take up nearly all that was walked there is no room for another
    walk, and matching both sides of a moment would take twice as long again for nothing.
    """
    again = None
    course_m = sum(leg.distance_m for leg in card.legs)
    if _beside_legs_m(whole) >= settings.again_least * course_m:
        again = begun_anew(part, card, settings)
    return [*_pauses(whole, settings), *([] if again is None else [again])]


def _beside_legs_m(walk: _Walk) -> float:
    """Give how much of the path belongs to no leg."""
    time_s, path_m = walk.sampled.samples.time_s, walk.sampled.movement.path_m
    beside_m = float(path_m[-1])
    for leg in walk.match.legs:
        if leg.start_s is not None and leg.claim_s is not None:
            begun_m, ended_m = np.interp([leg.start_s, leg.claim_s], time_s, path_m)
            beside_m -= float(ended_m - begun_m)
    return beside_m


def _pauses(walk: _Walk, settings: MatchingSettings) -> list[float]:
    """Give the moments amid the longest silences and halts, the longest first."""
    time_s = walk.sampled.clean.time_s
    silences = np.column_stack([time_s[:-1], time_s[1:]])
    stops = np.concatenate([silences, walk.match.halts])
    length_s = stops[:, 1] - stops[:, 0]
    longest = np.argsort(-length_s, kind="stable")[: settings.pauses_most]
    return [
        # In a silence, just before its end: the nearest fix is then the first after it.
        float(stops[stop, 1]) if stop < len(silences) else float(stops[stop].mean())
        for stop in longest
        if length_s[stop] >= settings.pause_s
    ]


def _comes_by(part: CleanTrack, card: LegCard, settings: MatchingSettings) -> bool:
    """Tell whether a stretch comes near most of the points: what does not need no matching."""
    if len(part) < 2:
        return False
    near = _points_near(part, card, settings)
    return sum(near) >= settings.walk_comes_by_share * len(near)


def _points_near(part: CleanTrack, card: LegCard, settings: MatchingSettings) -> list[bool]:
    place = part.places()
    return [
        float(np.hypot(*(place - point).T).min()) <= settings.walk_comes_by_m
        for point in course_points(card)
    ]
