"""Looking for a point after the count is out. All numbers are chosen."""

from __future__ import annotations

import math

from habit_walks.habits import Habits
from habit_walks.trace import Tracer

_NOTICE = 0.2
"""Chance of each second in sight of the point that it is seen."""

_ROAM_SHARE = 0.8
"""Speed of looking for a share of that of walking."""


class Search:
    """One search round the place where the count ran out."""

    def __init__(
        self, tracer: Tracer, habits: Habits, azimuth_deg: float, point: tuple[float, float]
    ) -> None:
        self.tracer, self.habits, self.azimuth_deg, self.point = tracer, habits, azimuth_deg, point
        self.from_east_m, self.from_north_m = tracer.east_m, tracer.north_m
        self.until_s = tracer.now + habits.patience_s * float(tracer.rng.uniform(0.6, 1.3))
        self.seen = False

    def _watch(self) -> bool:
        if self.tracer.range_to(*self.point) < self.habits.sight_m and self.tracer.chance(_NOTICE):
            self.seen = True
        return self.seen or self.tracer.now > self.until_s

    def run(self) -> bool:
        """Search the walker's own way; True when he found the point and stands at it."""
        reach = self.habits.sight_m * (1.15 if self.habits.search != "none" else 0.7)
        self.tracer.stand(self.habits.look_s * float(self.tracer.rng.uniform(0.5, 1.6)), 0.5)
        if self.tracer.range_to(*self.point) < reach and self.tracer.chance(0.85):
            self.seen = True
        if not self.seen:
            ways = {
                "none": self._nothing,
                "look": self._look,
                "spiral": self._spiral,
                "back": self._back,
                "fan": self._fan,
                "wander": self._wander,
            }
            ways[self.habits.search]()
        if self.seen:
            self.tracer.walk_to(*self.point, self.habits.speed_m_s, 4.0)
        return self.seen

    def _nothing(self) -> None:
        return

    def _to(self, bearing: float, metres: float) -> bool:
        turn = math.radians(bearing)
        return self.tracer.walk_to(
            self.tracer.east_m + metres * math.sin(turn),
            self.tracer.north_m + metres * math.cos(turn),
            self.habits.speed_m_s * _ROAM_SHARE,
            12.0,
            self._watch,
        )

    def _look(self) -> None:
        for _ in range(int(self.tracer.rng.integers(1, 4))):
            if self._to(
                float(self.tracer.rng.uniform(0, 360)), float(self.tracer.rng.uniform(4, 14))
            ):
                return
            self.tracer.stand(float(self.tracer.rng.uniform(8, 40)), 0.6)

    def _spiral(self) -> None:
        lane = max(8.0, 1.3 * self.habits.sight_m)
        bearing, turn = self.azimuth_deg, 90.0 if self.tracer.chance(0.5) else -90.0
        for side in range(2, 26):
            if self._to(bearing, lane * (side // 2)):
                return
            bearing += turn

    def _back(self) -> None:
        back = float(self.tracer.rng.uniform(40, 65))
        if self._to(self.azimuth_deg + 180.0, back):
            return
        self.tracer.stand(float(self.tracer.rng.uniform(5, 25)), 0.5)
        if self._to(self.azimuth_deg, back * float(self.tracer.rng.uniform(1.5, 2.2))):
            return
        self.tracer.stand(float(self.tracer.rng.uniform(5, 25)), 0.5)
        self._to(self.azimuth_deg + 180.0, back * 0.6)

    def _fan(self) -> None:
        spoke = float(self.tracer.rng.uniform(25, 55))
        first = float(self.tracer.rng.uniform(0, 360))
        number = int(self.tracer.rng.integers(3, 7))
        for index in range(number):
            if self._to(first + 360.0 * index / number, spoke):
                return
            if self.tracer.walk_to(
                self.from_east_m, self.from_north_m, self.habits.speed_m_s * 0.9, 10.0, self._watch
            ):
                return

    def _wander(self) -> None:
        bearing = self.azimuth_deg + 60.0 * self.tracer.normal()
        while not self._to(bearing, float(self.tracer.rng.uniform(8, 45))):
            bearing += 75.0 * self.tracer.normal()
            if self.tracer.range_to(self.from_east_m, self.from_north_m) > 90.0:
                bearing = (
                    self.tracer.bearing_to(self.from_east_m, self.from_north_m)
                    + 30.0 * self.tracer.normal()
                )
            if self.tracer.chance(0.35):
                self.tracer.stand(float(self.tracer.rng.exponential(15.0)) + 3.0, 0.5)
