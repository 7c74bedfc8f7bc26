"""The points of a course as a file tells them: named, told apart, and met again."""

from __future__ import annotations

import math
from collections.abc import Iterable

from audit.plan import Point
from audit.positions import Position
from audit.readers.position_reading import PositionReading
from audit.readers.problem_list import ProblemList
from audit.settings import ReadingSettings
from audit.units import turn_degrees
from audit.words import sentence

_METRES_A_DEGREE = 111_195.0
"""On a sphere of the Earth's mean radius, 6371 km: enough to say "the same place"."""


def same_place(one: Position, other: Position, limits: ReadingSettings) -> bool:
    """Tell whether two positions name one place, as far as their references can tell."""
    east = turn_degrees(one.longitude_deg, other.longitude_deg)
    north_m = (other.latitude_deg - one.latitude_deg) * _METRES_A_DEGREE
    east_m = east * _METRES_A_DEGREE * math.cos(math.radians(one.latitude_deg))
    near_m = max(limits.same_place_m, one.half_square_m, other.half_square_m)
    return max(abs(east_m), abs(north_m)) <= near_m


class PointBook:
    """Points in the order in which a file brings them up, each name once.

    Attributes
    ----------
    readings : dict of str to PositionReading
        By name, in order.
    lent : dict of str to Position
        Known from elsewhere, for names that the file gives no position.
    unread : set of str
        Names whose positions could not be read: known, so that one slip is told once.
    namesakes : list of (str, str)
        A name that came again at another place, and what that place is called: a number
        added, or the same name in other capitals.
    """

    def __init__(self, problems: ProblemList, lent: Iterable[Point] | None = None) -> None:
        self.lent = {point.name: point.position for point in lent or ()}
        self.readings: dict[str, PositionReading] = {}
        self.unread: set[str] = set()
        self.namesakes: list[tuple[str, str]] = []
        # Of a name in whatever capitals: each spelling, and what its place is called here.
        self._spelt: dict[str, list[tuple[str, str]]] = {}
        self._problems = problems

    def put(self, name: str | None, reading: PositionReading) -> str:
        """Give the name under which a place stands in the book, entering it where it is new.

        A name that comes again at another place gets a number, and one that comes again
        there in other capitals keeps them; at the same place it is the same point however
        it is spelt. A place without a name takes the name of the point that lies there,
        or "Point" and its number.
        """
        known = self._known(name, reading)
        if known is not None:
            return known
        if name is None:
            name = f"Point {len(self.readings) + 1}"
            self._problems.note(sentence("plan-nameless"))
        spelt = self._spelt.setdefault(name.casefold(), [])
        wanted, number = name, 1
        while name in self.readings:
            if same_place(self.readings[name].position, reading.position, self._problems.limits):
                return name
            number += 1
            name = f"{wanted} ({number})"
        if number > 1:
            self._problems.note(sentence("plan-several", wanted=wanted, name=name))
            self.namesakes.append((wanted, name))
        elif spelt:
            self._problems.note(sentence("plan-capitals", name=name, other=spelt[0][1]))
            self.namesakes.append((spelt[0][1], name))
        spelt.append((wanted, name))
        self.readings[name] = reading
        return name

    def _known(self, name: str | None, reading: PositionReading) -> str | None:
        """Give what a place is called already: under any name, or under this one however spelt."""
        if name is None:
            spelt = [("", known) for known in self.readings]
        else:
            # The spelling itself first: of coarse references two may reach one place.
            spelt = sorted(self._spelt.get(name.casefold(), []), key=lambda one: one[0] != name)
        for spelling, known in spelt:
            if same_place(self.readings[known].position, reading.position, self._problems.limits):
                if name is not None and spelling != name:
                    self._problems.note(sentence("plan-one-point", name=name, other=spelling))
                return known
        return None

    def names(self) -> list[str]:
        """Give the names of all points, those that could not be read last."""
        own = [*self.readings, *sorted(self.unread - self.readings.keys())]
        return [*own, *(name for name in self.lent if name not in own)]

    def borrow(self, names: Iterable[str]) -> None:
        """Enter the points of some names that are known from elsewhere only."""
        for name in names:
            if name in self.lent and name not in self.readings:
                self.readings[name] = PositionReading(position=self.lent[name])

    def points(self) -> tuple[Point, ...]:
        """Give the points of the plan."""
        return tuple(
            Point(name=name, position=reading.position) for name, reading in self.readings.items()
        )
