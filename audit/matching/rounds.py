"""The rounds by the points of the course, in a recording that holds more than one.

A logger that ran for weeks, or all day at a course that was walked again and again, is not
weighed as one walk: each stretch that passes the points in their order is a round, and the
one that passes them best is the walk that is weighed. In an ordinary recording the course may
have been walked again at once, without a pause that would part the two.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.geodesy.along_line import metres_along
from audit.leg_card import LegCard
from audit.matching.cuts import nearest_approaches
from audit.matching.leg_match import CleanTrack
from audit.matching.passing import best_passing
from audit.matching.pins import Pin
from audit.matching.route import course_points
from audit.matching.walk_of_day import of_day
from audit.settings import MatchingSettings
from audit.statistics.runs import runs_of_one
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """A stretch of a recording that passes the points of the course.

    Attributes
    ----------
    first, last : int
        Fixes of its first and its last passing.
    cost : float
        Nats against it by how it passes them.
    """

    first: int
    last: int
    cost: float


def find_rounds(clean: CleanTrack, card: LegCard, settings: MatchingSettings) -> list[Round]:
    """Give the rounds of a long recording, the best first; none where it is not long.

    Rounds do not overlap. The recording is looked at in pieces, each of which overlaps its
    neighbours by more than a round is long.
    """
    course_m = sum(leg.distance_m for leg in card.legs)
    path_m = metres_along(clean.places())
    if path_m[-1] < settings.rounds_from * course_m + settings.rounds_from_m:
        return []
    thin, place, path_m = _thin(clean, path_m, settings)
    piece_m = 2.0 * settings.round_longest * course_m + settings.round_margin_m
    found = []
    for begin_m in np.arange(0.0, path_m[-1], piece_m / 2.0):
        begin, end = np.searchsorted(path_m, [begin_m, begin_m + piece_m])
        if begin == end:
            continue  # a gap as wide as the piece, over which nobody knows the way
        part = slice(int(begin), int(end))
        passing = best_passing(place[part], path_m[part], card, settings)
        if passing.cost <= settings.round_cost_share * settings.passing_most * (len(card.legs) + 1):
            found.append(
                Round(
                    first=int(thin[part.start + passing.first]),
                    last=int(thin[part.start + passing.last]),
                    cost=passing.cost,
                )
            )
    apart: list[Round] = []
    for one in sorted(found, key=lambda one: (one.cost, one.first)):
        if all(one.last < other.first or one.first > other.last for other in apart):
            apart.append(one)
    return apart


def begun_anew(clean: CleanTrack, card: LegCard, settings: MatchingSettings) -> float | None:
    """Give the moment at which the course may have been begun anew; None where there is none.

    That is when the walker came by its first point again, or by its last where he did not
    come by the first, and passed the points in their order both before and after.
    """
    thin, place, path_m = _thin(clean, metres_along(clean.places()), settings)
    course_m = sum(leg.distance_m for leg in card.legs)
    if len(thin) < 4 or path_m[-1] < 2.0 * settings.again_least * course_m:
        return None
    points = course_points(card)
    for point in (points[0], points[-1]):
        passed = np.sort(nearest_approaches(place, point, settings))
        room_m = np.minimum(path_m[passed], path_m[-1] - path_m[passed])
        passed = passed[room_m >= settings.again_least * course_m]
        either = [_either_side(place, path_m, int(at), card, settings) for at in passed]
        if either and min(either) < np.inf:
            return float(clean.time_s[thin[passed[int(np.argmin(either))]]])
    return None


def _either_side(
    place: FloatArray, path_m: FloatArray, at: int, card: LegCard, settings: MatchingSettings
) -> float:
    """Give the cost of passing the points before a place and again after it, in nats."""
    cost = 0.0
    for side in (slice(None, at + 1), slice(at, None)):
        passing = best_passing(place[side], path_m[side], card, settings).cost
        if passing > settings.again_cost_share * settings.passing_most * (len(card.legs) + 1):
            return float(np.inf)
        cost += passing
    return cost


def _thin(
    clean: CleanTrack, path_m: FloatArray, settings: MatchingSettings
) -> tuple[NDArray[np.int64], FloatArray, FloatArray]:
    """Give every few metres a fix, its place, and the path walked up to it.

    Where the walker stood there are many fixes and nothing to pass.
    """
    thin = runs_of_one(np.floor(path_m / settings.rounds_every_m))[:, 0]
    return thin, clean.places(thin), path_m[thin]


def rounds_to_weigh(
    clean: CleanTrack, card: LegCard, settings: MatchingSettings, pins: Sequence[Pin] = ()
) -> tuple[list[CleanTrack], tuple[float, ...]]:
    """Give the fixes of the best rounds, and when each of the others passed its first point.

    The first are empty where the recording is to be weighed whole. Pins choose the round
    that holds them; without any those of the day that the plan gives are weighed, if there
    are some.
    """
    rounds = find_rounds(clean, card, settings)
    path_m = metres_along(clean.places())
    parts = [(one, _with_way_there(clean, path_m, one, rounds, card, settings)) for one in rounds]
    if pins:
        parts = [(one, part) for one, part in parts if all(part.holds(pin.time_s) for pin in pins)]
    elif parts:
        days = [of_day(float(clean.time_s[one.first]), card) for one in rounds]
        parts = [part for part, day in zip(parts, days, strict=True) if day == min(days)]
    least = min((one.cost for one, _ in parts), default=0.0)
    weighed = [
        (one, part)
        for one, part in parts[: settings.rounds_most]
        if one.cost <= least + settings.round_better_nats
    ]
    chosen = [one for one, _ in weighed]
    beside = sorted(float(clean.time_s[one.first]) for one in rounds if one not in chosen)
    return [part for _, part in weighed], tuple(beside) if weighed else ()


def _with_way_there(
    clean: CleanTrack,
    path_m: FloatArray,
    one: Round,
    rounds: Sequence[Round],
    card: LegCard,
    settings: MatchingSettings,
) -> CleanTrack:
    """Give the fixes of a round, with half a course's way before and behind it.

    It ends at the latest where another round passes its points.
    """
    course_m = sum(leg.distance_m for leg in card.legs)
    reach_m = 0.5 * course_m + settings.round_margin_m / 2.0
    before, behind = path_m[one.first] - reach_m, path_m[one.last] + reach_m
    begin, end = (int(at) for at in np.searchsorted(path_m, [before, behind]))
    begin = max([begin, *(other.last + 1 for other in rounds if other.last < one.first)])
    end = min([end, *(other.first for other in rounds if other.first > one.last)])
    return clean.part(slice(begin, end))
