"""In which order the two points of a leg that was not walked as planned were passed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from audit.diagnosis.passages import Passage, passages
from audit.leg_card import CardPoint, LegCard
from audit.matching.leg_match import CleanTrack
from audit.measurement.leg_measures import LegAudit

Turn = Literal["in-turn", "out-of-turn", "elsewhere", "never"]
"""Passed one after the other as planned; in another order; one of the points only on the way
of another leg, or before or after the course; one of them never."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PassedPoint:
    """A point, and when the walker passed it."""

    point: str
    passage: Passage


@dataclass(frozen=True, slots=True, kw_only=True)
class Passed:
    """What the passages of a leg's points say; ``points`` are in the order of passing."""

    turn: Turn
    points: tuple[PassedPoint, ...] = ()


class PassedInOrder:
    """The passages of all points of a course, and the portions of the legs that were walked.

    Parameters
    ----------
    within_m : float
        A point is passed by who comes as near as this.
    """

    def __init__(
        self, legs: Sequence[LegAudit], card: LegCard, clean: CleanTrack, within_m: float
    ) -> None:
        self._points = [card.legs[0].start, *(leg.end for leg in card.legs)]
        self._times = Counter(point.name for point in self._points)
        self._within_m = within_m
        self._of = {point.name: passages(clean, point, within_m) for point in self._points}
        self._walked = {
            number: (
                float(clean.time_s[leg.measures.start.fix]),
                float(clean.time_s[leg.measures.claim.fix]),
            )
            for number, leg in enumerate(legs)
            if leg.measures is not None
        }
        self._gone_to = self._passed_for_their_own_sake(last=len(legs) - 1)

    def of_leg(self, number: int) -> Passed:
        """Say how the points of a leg were passed."""
        start, end = self._points[number], self._points[number + 1]
        if not self._of[start.name] or not self._of[end.name]:
            return Passed(turn="never")
        left, came = self._gone_to_for(number, start), self._gone_to_for(number, end)
        pairs = [
            (PassedPoint(point=start.name, passage=a), PassedPoint(point=end.name, passage=b))
            for a in left
            for b in came
            if a is not b
        ]
        if not pairs:
            point = end if left else start
            only = PassedPoint(point=point.name, passage=self._of[point.name][0])
            return Passed(turn="elsewhere", points=(only,))
        pairs.sort(key=lambda pair: abs(pair[1].passage.nearest_s - pair[0].passage.nearest_s))
        between = [self._between(number, *pair) for pair in pairs]
        for pair, others in zip(pairs, between, strict=True):
            if others is not None and not others:
                return Passed(turn="in-turn", points=pair)
        told = [*pairs[0], *(between[0] or ())]
        return Passed(turn="out-of-turn", points=tuple(sorted(told, key=_moment)))

    @property
    def of_start(self) -> tuple[Passage, ...]:
        """All passages of the point at which the course begins."""
        return self._of[self._points[0].name]

    def come_by(self, number: int, point: CardPoint) -> tuple[Passage, ...]:
        """Give the passages of an end of a leg that were on no other leg's way.

        Between the leg walked last before and the one walked next, as the leg itself was.
        """
        since_s, until_s = self._between_walked(number)
        return tuple(
            passage
            for passage in self._gone_to[point.name]
            if passage.last_s >= since_s and passage.first_s <= until_s
        )

    def since_last_leg(
        self, number: int, point: CardPoint, *, whole: bool = False
    ) -> tuple[Passage, ...]:
        """Give all passages of an end of a leg from the leg walked last before it on.

        ``whole``: of all the recording, since it has no turn.
        """
        since_s = -np.inf if whole else self._between_walked(number)[0]
        return tuple(passage for passage in self._of[point.name] if passage.last_s >= since_s)

    def around(self, name: str) -> tuple[float, float] | None:
        """Give when the walker left the point before one, and when he came to the one after.

        None where he was not seen at both, one after the other.
        """
        places = [place for place, point in enumerate(self._points) if point.name == name]
        if len(places) != 1 or not 0 < places[0] < len(self._points) - 1:
            return None
        place = places[0]
        left_s = [passage.last_s for passage in self._of[self._points[place - 1].name]]
        came_s = [passage.first_s for passage in self._of[self._points[place + 1].name]]
        if place - 2 in self._walked:
            left_s = [self._walked[place - 2][1]]
        if place + 1 in self._walked:
            came_s = [self._walked[place + 1][0]]
        pairs = [(a, b) for a in left_s for b in came_s if a < b]
        return min(pairs, key=lambda pair: pair[1] - pair[0], default=None)

    def _between(
        self, number: int, start: PassedPoint, end: PassedPoint
    ) -> tuple[PassedPoint, ...] | None:
        """Give the points passed out of turn between two; None where these are out of turn."""
        begin_s, end_s = start.passage.nearest_s, end.passage.nearest_s
        since_s, until_s = self._between_walked(number)
        if begin_s >= end_s or start.passage.last_s < since_s or end.passage.first_s > until_s:
            return None
        found = []
        for place, point in enumerate(self._points):
            ends = (self._points[number], self._points[number + 1])
            if self._times[point.name] > 1 or any(self._one_place(point, at) for at in ends):
                continue
            inside = [p for p in self._gone_to[point.name] if begin_s < p.nearest_s < end_s]
            in_turn = any(
                p.nearest_s < begin_s if place < number else p.nearest_s > end_s
                for p in self._of[point.name]
            )
            if inside and not in_turn:
                found.append(PassedPoint(point=point.name, passage=inside[0]))
        return tuple(found)

    def _between_walked(self, number: int) -> tuple[float, float]:
        """Give when the last leg walked before one was claimed, and when the next one began."""
        claims = [claim_s for leg, (_, claim_s) in self._walked.items() if leg < number]
        starts = [start_s for leg, (start_s, _) in self._walked.items() if leg > number]
        return max(claims, default=-np.inf), min(starts, default=np.inf)

    def _gone_to_for(self, number: int, point: CardPoint) -> tuple[Passage, ...]:
        """Give the passages of an end of a leg; those of a point that comes again are its own."""
        found = self._gone_to[point.name]
        if self._times[point.name] == 1:
            return found
        return self.come_by(number, point)

    def _one_place(self, one: CardPoint, other: CardPoint) -> bool:
        """Tell whether who passes one point passes the other too."""
        apart_m = float(np.hypot(one.east_m - other.east_m, one.north_m - other.north_m))
        return apart_m <= 2.0 * self._within_m

    def _passed_for_their_own_sake(self, last: int) -> Mapping[str, tuple[Passage, ...]]:
        """Leave out passages on the way of another leg, and those before and after the course."""
        begun = [first for first, _ in self._walked.values()]
        begun += [passage.first_s for passage in self._of[self._points[0].name]]
        begin_s = min(begun, default=-np.inf)
        end_s = self._walked[last][1] if last in self._walked else np.inf
        on_the_way = [
            (start_s, claim_s, {self._points[leg].name, self._points[leg + 1].name})
            for leg, (start_s, claim_s) in self._walked.items()
        ]
        return {
            name: tuple(
                passage
                for passage in found
                if passage.last_s >= begin_s
                and passage.first_s <= end_s
                and not any(
                    start_s < passage.nearest_s < claim_s and name not in ends
                    for start_s, claim_s, ends in on_the_way
                )
            )
            for name, found in self._of.items()
        }


class OrdersOfPassing:
    """The passages of a walk by how near counts as passed: looked for once, when asked for."""

    def __init__(self, legs: Sequence[LegAudit], card: LegCard, clean: CleanTrack) -> None:
        self._walk = legs, card, clean
        self._within: dict[float, PassedInOrder] = {}

    def within(self, within_m: float) -> PassedInOrder:
        """Give the passages as near as this."""
        if within_m not in self._within:
            self._within[within_m] = PassedInOrder(*self._walk, within_m)
        return self._within[within_m]


def _moment(passed: PassedPoint) -> float:
    return passed.passage.nearest_s
