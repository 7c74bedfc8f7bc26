"""The walker's body: one second at a time over the ground, or standing about.

All numbers are chosen.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from random import Random

from agent_walks.land import Land
from agent_walks.traits import Traits

_SWINGS = tuple(
    (math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg)))
    for turn_deg in (25, 50, 75, 100, 130)
)
"""Turns off the straight way that are tried in turn, as cosine and sine."""

_LOOK_M = 9.0
_BYPASS_LIMIT_S = 170
_PUSH_S = 30
"""How long he fights his way through before he looks for a way round again."""

Seen = Callable[[], bool]


class Body:
    """Where the walker is and was, second by second.

    ``side`` is 1 or -1 while he goes round something with it on his one hand, else 0;
    ``stride`` is the length of a pace here over that on flat, open ground, and ``paces`` the
    metres of the last second as such paces make them.
    """

    def __init__(self, rng: Random, land: Land, who: Traits, at: tuple[float, float]) -> None:
        self.rng, self.land, self.who = rng, land, who
        self.east, self.north = at
        self.easts_m: list[float] = [at[0]]
        self.norths_m: list[float] = [at[1]]
        self.side = 0
        self.facing_east, self.facing_north = 0.0, 1.0
        self.paces = 0.0
        self.stride = 1.0
        self._bypass_s = 0
        self._push_s = 0
        self._wobble = 0.0
        self._speed_m_s = 0.0
        self._mood = 1.0

    @property
    def now(self) -> int:
        """Seconds of the outing so far."""
        return len(self.easts_m) - 1

    @property
    def place(self) -> tuple[float, float]:
        """Where he is."""
        return self.east, self.north

    def away(self, east: float, north: float) -> float:
        """Distance to a place."""
        return math.hypot(east - self.east, north - self.north)

    def _free(self, toward_east: float, toward_north: float, far: float) -> bool:
        shut, cell = self.land.shut, self.land.cell
        if shut[cell(self.east + far * toward_east, self.north + far * toward_north)]:
            return False
        half = 0.45 * far
        return not shut[cell(self.east + half * toward_east, self.north + half * toward_north)]

    def _way(self, toward_east: float, toward_north: float, far: float) -> tuple[float, float]:
        """The easiest way that still serves: straight on, or round on one side."""
        if self._push_s > 0:
            self._push_s -= 1
            return toward_east, toward_north
        if self.side:
            self._bypass_s += 1
            if toward_east * self.facing_east + toward_north * self.facing_north < -0.3:
                # Led back the way he came: patience for that runs out sooner.
                self._bypass_s += 9
        elif len(self.easts_m) & 1:
            return toward_east, toward_north
        if self._free(toward_east, toward_north, far if not self.side else min(far * 1.5, far + 5)):
            self.side = 0
            return toward_east, toward_north
        if self._bypass_s > _BYPASS_LIMIT_S:
            # No end of it in sight: he fights his way through.
            self.side, self._bypass_s, self._push_s = 0, 0, _PUSH_S
            return toward_east, toward_north
        sides = (self.side,) if self.side else (self.who.habit, -self.who.habit)
        for cosine, sine in _SWINGS:
            for side in sides:
                round_east = cosine * toward_east + side * sine * toward_north
                round_north = cosine * toward_north - side * sine * toward_east
                if self._free(round_east, round_north, far):
                    if not self.side:
                        self.side, self._bypass_s = side, 0
                    return round_east, round_north
        self.side, self._push_s = 0, 8
        return toward_east, toward_north

    def _pace(self, cell: int, toward_east: float, toward_north: float, hurry: float) -> float:
        """Speed wanted on this ground; also the length of his pace on it, for the count."""
        land, rng = self.land, self.rng
        climb = land.slope_east[cell] * toward_east + land.slope_north[cell] * toward_north
        thick = land.thick[cell]
        if not len(self.easts_m) & 3:
            self._mood += 0.11 * (1.0 - self._mood) + rng.gauss(0.0, 0.024)
        speed_m_s = self.who.speed_m_s * hurry * self._mood
        speed_m_s *= math.exp(-2.6 * abs(climb + 0.04) + 0.1)
        speed_m_s *= 1.0 - 0.42 * thick - 0.1 * land.canopy[cell]
        if land.shut[cell]:
            speed_m_s *= 0.55
        if abs(land.stream.off_m[cell]) < 4.0:
            speed_m_s *= 0.6
        short = 0.9 * climb if climb > 0 else -0.45 * climb
        self.stride = 1.0 - min(short, 0.3) - 0.16 * thick
        if speed_m_s < 0.65:
            speed_m_s = 0.5 + 0.23 * speed_m_s
        return min(speed_m_s, 2.15)

    def toward(self, east: float, north: float, hurry: float = 1.0) -> float:
        """One second of walking toward a place; returns the metres walked."""
        gap_east, gap_north = east - self.east, north - self.north
        far = math.hypot(gap_east, gap_north)
        if far < 1e-6:
            self._put(self.east, self.north)
            return 0.0
        toward_east, toward_north = self._way(gap_east / far, gap_north / far, min(far, _LOOK_M))
        rng, land = self.rng, self.land
        cell = land.cell(self.east, self.north)
        calm = far / 12.0 if far < 12.0 else 1.0
        if len(self.easts_m) & 1:
            loose = self.who.wobble_deg * (0.5 + 0.6 * land.canopy[cell] + 1.2 * land.thick[cell])
            self._wobble = 0.64 * self._wobble + rng.gauss(0.0, 0.0134 * loose)
        sway = self._wobble * calm
        toward_east, toward_north = (
            toward_east + sway * toward_north,
            toward_north - sway * toward_east,
        )
        self._speed_m_s += 0.6 * (
            self._pace(cell, toward_east, toward_north, hurry) - self._speed_m_s
        )
        step = min(self._speed_m_s, far)
        slip = self.who.slide * step * calm
        moved_east = step * toward_east - slip * land.slope_east[cell]
        moved_north = step * toward_north - slip * land.slope_north[cell]
        moved = math.sqrt(moved_east * moved_east + moved_north * moved_north)
        self.paces = moved / self.stride
        self.facing_east, self.facing_north = toward_east, toward_north
        self._put(self.east + moved_east, self.north + moved_north)
        return moved

    def _put(self, east: float, north: float) -> None:
        self.east, self.north = east, north
        self.easts_m.append(east)
        self.norths_m.append(north)

    def go(
        self,
        east: float,
        north: float,
        hurry: float = 1.0,
        reach: float = 2.0,
        seen: Seen | None = None,
    ) -> bool:
        """Walk to a place; breaks off with True as soon as ``seen`` says so."""
        far = self.away(east, north)
        left = int(4 * far / self.who.speed_m_s) + 60
        while left > 0 and self.away(east, north) > reach:
            self.toward(east, north, hurry)
            left -= 1
            if seen is not None and seen():
                self.side = 0
                return True
        self.side = 0
        return False

    def stand(self, seconds: float, restless: float = 0.04) -> None:
        """Stand or sit; now and then a foot is moved."""
        self._speed_m_s = 0.0
        home_east, home_north = self.east, self.north
        for _ in range(max(0, int(seconds))):
            if self.rng.random() < restless:
                self._put(home_east + self.rng.gauss(0, 0.3), home_north + self.rng.gauss(0, 0.3))
            else:
                self._put(self.east, self.north)

    def mill(self, seconds: float, radius_m: float) -> None:
        """Potter about one place: to the pack, to the others, back to the post."""
        home_east, home_north = self.east, self.north
        end = self.now + int(seconds)
        while self.now < end:
            self.stand(min(self.rng.expovariate(1 / 25.0) + 3, end - self.now))
            if self.now + 6 < end:
                turn = self.rng.uniform(0, 6.283)
                far = radius_m * math.sqrt(self.rng.random())
                self.go(
                    home_east + far * math.sin(turn), home_north + far * math.cos(turn), 0.55, 0.8
                )

    def stroll(self, east: float, north: float, hurry: float = 1.05, bend: float = 0.2) -> None:
        """Walk to a place the easy way, in bends, without azimuth or count."""
        far = self.away(east, north)
        parts = max(1, int(far / self.rng.uniform(60, 120)))
        from_east, from_north = self.east, self.north
        gap_east, gap_north = east - from_east, north - from_north
        belly = self.rng.gauss(0, bend)
        for number in range(1, parts):
            share = number / parts
            aside = belly * math.sin(math.pi * share) + self.rng.gauss(0, 0.03)
            self.go(
                from_east + share * gap_east + aside * gap_north,
                from_north + share * gap_north - aside * gap_east,
                hurry,
                5.0,
            )
        self.go(east, north, hurry, 2.0)
