"""Second-by-second motion of a body on foot. All numbers are chosen."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np

_SLOWEST_M_S, _FASTEST_M_S = 0.5, 2.15
_TERRAIN_S = 70.0
"""How long the ground stays about the same under foot."""

_WOBBLE_KEPT = 0.85
"""Share of a sway that is left a second later; what is added keeps the spread at one."""


class Tracer:
    """Keeps the true place of every second: ``easts_m`` and ``norths_m``, the last one here."""

    def __init__(self, rng: np.random.Generator, east_m: float, north_m: float) -> None:
        self.rng = rng
        self.east_m, self.north_m = float(east_m), float(north_m)
        self.easts_m, self.norths_m = [self.east_m], [self.north_m]
        self._drawn: list[float] = []
        self._terrain = 0.0
        self._wobble = 0.0

    @property
    def now(self) -> int:
        """The current second."""
        return len(self.easts_m) - 1

    def normal(self) -> float:
        """One standard normal number, drawn in blocks because single draws are slow."""
        if not self._drawn:
            self._drawn = self.rng.standard_normal(4096).tolist()
        return self._drawn.pop()

    def chance(self, share: float) -> bool:
        """True with the given probability."""
        return bool(self.rng.random() < share)

    def range_to(self, east_m: float, north_m: float) -> float:
        """Distance from here."""
        return math.hypot(east_m - self.east_m, north_m - self.north_m)

    def bearing_to(self, east_m: float, north_m: float) -> float:
        """Grid bearing from here in degrees."""
        return math.degrees(math.atan2(east_m - self.east_m, north_m - self.north_m)) % 360.0

    def _place(self, east_m: float, north_m: float) -> None:
        self.east_m, self.north_m = east_m, north_m
        self.easts_m.append(east_m)
        self.norths_m.append(north_m)

    def gait(self, base_m_s: float) -> float:
        """Metres walked this second: ground changes slowly, the stride a little each second."""
        self._terrain += -self._terrain / _TERRAIN_S + 0.02 * self.normal()
        speed_m_s = base_m_s * (1.0 + self._terrain + 0.04 * self.normal())
        return min(max(speed_m_s, _SLOWEST_M_S), _FASTEST_M_S)

    def sway(self, scale_deg: float) -> float:
        """How far the body points off the way it wants, in degrees."""
        self._wobble = _WOBBLE_KEPT * self._wobble + 0.527 * self.normal()
        return self._wobble * scale_deg

    def step(self, heading_deg: float, metres: float) -> None:
        """One second of walking."""
        turn = math.radians(heading_deg)
        self._place(self.east_m + metres * math.sin(turn), self.north_m + metres * math.cos(turn))

    def stand(self, seconds: float, restless_m: float = 0.4) -> None:
        """Stay about here: feet shift now and then, some people stroll round the spot."""
        home_east, home_north = self.east_m, self.north_m
        left = round(float(seconds))
        while left > 0:
            still = min(left, 3 + int(abs(self.normal()) * 12))
            for _ in range(still):
                self._place(self.east_m, self.north_m)
            left -= still
            goal_east = home_east + restless_m * self.normal()
            goal_north = home_north + restless_m * self.normal()
            while left > 0 and self.range_to(goal_east, goal_north) > 0.05:
                part = min(1.0, 0.7 / self.range_to(goal_east, goal_north))
                self._place(
                    self.east_m + part * (goal_east - self.east_m),
                    self.north_m + part * (goal_north - self.north_m),
                )
                left -= 1

    def walk_to(
        self,
        east_m: float,
        north_m: float,
        base_m_s: float,
        sway_deg: float = 6.0,
        watch: Callable[[], bool] | None = None,
    ) -> bool:
        """Walk up to a place; True when ``watch`` ended it on the way."""
        while True:
            gap = self.range_to(east_m, north_m)
            metres = self.gait(base_m_s)
            if gap <= metres:
                if gap > 0.3:
                    self._place(east_m, north_m)
                return False
            near = min(1.0, gap / 20.0)
            self.step(self.bearing_to(east_m, north_m) + near * self.sway(sway_deg), metres)
            if watch is not None and watch():
                return True

    def ramble_to(self, east_m: float, north_m: float, base_m_s: float, bend: float = 0.15) -> None:
        """Walk to a place the way paths and easy ground lead, not straight."""
        start_east, start_north = self.east_m, self.north_m
        span = self.range_to(east_m, north_m)
        count = max(1, int(span / 70.0))
        side = bend * span * self.normal()
        for index in range(1, count + 1):
            part = index / (count + 1)
            off = side * math.sin(math.pi * part) + 8.0 * self.normal()
            east, north = (
                (east_m - start_east) / max(span, 1.0),
                (north_m - start_north) / max(span, 1.0),
            )
            self.walk_to(
                start_east + part * (east_m - start_east) + off * north,
                start_north + part * (north_m - start_north) - off * east,
                base_m_s,
            )
        self.walk_to(east_m, north_m, base_m_s)
