"""Walking one leg by azimuth and count, with the halts and detours of the walker's habits.

All numbers are chosen.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from habit_walks.habits import Habits
from habit_walks.slips import Decoy, Order
from habit_walks.trace import Tracer

_LOOKING_FROM = 0.55
"""Share of the count from which he looks out for the point."""

_NOTICE = 0.22
"""Chance of each second in sight of the point that it is seen; twice that near the end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MarchEnd:
    """How a march ended: "count", "seen", "decoy" or "gave-up", and when it began and ended."""

    how: str
    start_s: int
    claim_s: int


class March:
    """One attempt at a leg."""

    def __init__(
        self,
        tracer: Tracer,
        habits: Habits,
        order: Order,
        point: tuple[float, float],
        thick: float,
    ) -> None:
        self.tracer, self.habits, self.order, self.point = tracer, habits, order, point
        self.count_m = 0.0
        self.mark: tuple[float, float] | None = None
        self.drift = 0.0
        rng = tracer.rng
        self.writes_at = float(rng.uniform(6, 45)) if habits.notes == "after" else math.inf
        self.bead_at = 100.0
        self.rest_at = self._next_rest()
        self.wait_at = self._next_wait()
        self.obstacles = self._obstacles(thick)
        self.taken_for_point = point

    def _come_to(self, decoy: Decoy) -> None:
        """A stump or somebody else's tag comes up ahead, a little off the line."""
        turn = math.radians(self.order.azimuth_deg)
        east, north = math.sin(turn), math.cos(turn)
        along = float(self.tracer.rng.uniform(8, 22))
        self.taken_for_point = (
            self.tracer.east_m + along * east + decoy.aside_m * north,
            self.tracer.north_m + along * north - decoy.aside_m * east,
        )

    def _next_rest(self) -> float:
        if not self.habits.rest_every_m:
            return math.inf
        return self.count_m + self.habits.rest_every_m * float(self.tracer.rng.uniform(0.7, 1.3))

    def _next_wait(self) -> float:
        if self.habits.company == "waits":
            return self.count_m + float(self.tracer.rng.exponential(260.0)) + 30.0
        if self.habits.company == "leapfrog":
            return self.count_m + self.habits.mark_m * float(self.tracer.rng.uniform(0.6, 1.2))
        return math.inf

    def _obstacles(self, thick: float) -> list[float]:
        rng = self.tracer.rng
        expected = thick * self.order.count_m / 100.0
        number = int(rng.poisson(expected))
        if (self.order.paced_bypass or self.order.unequal_bypass) and not number:
            number = 1
        return sorted((rng.uniform(0.12, 0.8, number) * self.order.count_m).tolist())

    def run(self) -> MarchEnd:
        """Walk until the count is out, something is taken for the point, or the man gives up."""
        start = self.tracer.now
        while True:
            self._second()
            how = self._ended()
            if how in ("seen", "decoy"):
                self.tracer.walk_to(*self.taken_for_point, self.habits.speed_m_s, 4.0)
            if how:
                return MarchEnd(how=how, start_s=start, claim_s=self.tracer.now)
            self._halts()
            if self.obstacles and self.count_m >= self.obstacles[0]:
                self.obstacles.pop(0)
                self._bypass()

    def _azimuth(self) -> float:
        order = self.order
        lean = order.azimuth_deg + order.veer_per_100m_deg * self.count_m / 100.0
        if order.iron is not None:
            gap = self.count_m - order.iron.at * order.count_m
            lean += order.iron.turn_deg * math.exp(-0.5 * (gap / order.iron.width_m) ** 2)
        if order.slope_turn_deg:
            lean += order.slope_turn_deg * (1.0 + 0.5 * math.sin(self.count_m / 60.0))
        return lean

    def _second(self) -> None:
        speed_m_s, sway_deg = self.habits.speed_m_s, self.habits.wobble_deg
        rail = self.order.rail
        if rail is not None and rail.begin <= self.count_m / self.order.count_m <= rail.end:
            self.mark = None
            aim, speed_m_s, sway_deg = self.order.azimuth_deg + rail.turn_deg, speed_m_s * 1.2, 1.5
        elif self.habits.sighting == "marks":
            aim = self._toward_mark()
        else:
            # Held in the hand, the needle is followed with an error that creeps over a minute.
            self.drift = 0.983 * self.drift + 0.184 * self.tracer.normal()
            aim = self._azimuth() + self.drift * 0.9 * self.habits.heading_sd_deg
        metres = self.tracer.gait(speed_m_s)
        self.tracer.step(aim + self.tracer.sway(sway_deg), metres)
        self.count_m += metres / self.order.ratio

    def _toward_mark(self) -> float:
        if self.mark is None or self.tracer.range_to(*self.mark) < 2.5:
            if self.mark is not None and self.habits.mark_halt_s:
                self.tracer.stand(self.habits.mark_halt_s * (0.6 + abs(self.tracer.normal()) * 0.6))
            away = self.habits.mark_m * (0.7 + 0.6 * float(self.tracer.rng.random()))
            left = (self.order.count_m - self.count_m) * self.order.ratio
            away = max(12.0, min(away, left + 10.0))
            aim = math.radians(self._azimuth() + self.habits.heading_sd_deg * self.tracer.normal())
            self.mark = (
                self.tracer.east_m + away * math.sin(aim),
                self.tracer.north_m + away * math.cos(aim),
            )
        return self.tracer.bearing_to(*self.mark)

    def _ended(self) -> str:
        order = self.order
        if order.give_up_at is not None and self.count_m >= order.give_up_at * order.count_m:
            return "gave-up"
        if order.decoy is not None and self.count_m >= order.decoy.at * order.count_m:
            self._come_to(order.decoy)
            return "decoy"
        if self.count_m >= order.count_m:
            return "count"
        if order.blind or self.count_m < _LOOKING_FROM * order.count_m:
            return ""
        if self.tracer.range_to(*self.point) < self.habits.sight_m and self._ahead():
            keen = 2.0 if self.count_m > 0.9 * order.count_m else 1.0
            return "seen" if self.tracer.chance(_NOTICE * keen) else ""
        return ""

    def _ahead(self) -> bool:
        off = self.tracer.bearing_to(*self.point) - self.order.azimuth_deg
        return abs((off + 180.0) % 360.0 - 180.0) < 105.0

    def _halts(self) -> None:
        if self.count_m >= self.writes_at:
            self.writes_at = math.inf
            self.tracer.stand(float(self.tracer.rng.uniform(12, 70)), self.habits.restless_m * 0.5)
        if self.count_m >= self.bead_at:
            self.bead_at += 100.0
            if self.habits.bead_halt_s:
                self.tracer.stand(
                    self.habits.bead_halt_s * float(self.tracer.rng.uniform(0.6, 1.6))
                )
        if self.count_m >= self.rest_at:
            self.tracer.stand(self.habits.rest_s * float(self.tracer.rng.uniform(0.6, 1.5)), 0.5)
            self.rest_at = self._next_rest()
        if self.count_m >= self.wait_at:
            self._wait()
            self.wait_at = self._next_wait()
        if self.tracer.chance(0.0006):
            # Laces, a call of nature, a drink, a look at the map.
            self.tracer.stand(float(self.tracer.rng.exponential(35.0)) + 4.0, 0.5)

    def _wait(self) -> None:
        rng = self.tracer.rng
        if self.habits.company == "waits":
            self.tracer.stand(float(rng.uniform(10, 80)), self.habits.restless_m * 0.5)
            return
        # The front man of a pair is waved sideways onto the line, then stands for the other.
        shift = self.habits.mark_m * math.radians(self.habits.heading_sd_deg) * self.tracer.normal()
        self.tracer.stand(float(rng.uniform(4, 10)))
        if abs(shift) > 1.0:
            side = math.radians(self.order.azimuth_deg + 90.0)
            self.tracer.walk_to(
                self.tracer.east_m + shift * math.sin(side),
                self.tracer.north_m + shift * math.cos(side),
                0.8,
                0.0,
            )
        self.mark = None
        self.tracer.stand(self.habits.mark_m / 1.1 * float(rng.uniform(0.8, 1.2)))

    def _side_step(self, bearing: float, metres: float, *, counts: bool) -> None:
        turn = math.radians(bearing)
        self.tracer.walk_to(
            self.tracer.east_m + metres * math.sin(turn),
            self.tracer.north_m + metres * math.cos(turn),
            self.habits.speed_m_s * 0.85,
            4.0,
        )
        if counts:
            self.count_m += metres / self.order.ratio

    def _bypass(self) -> None:
        rng, order = self.tracer.rng, self.order
        style = "box" if order.paced_bypass or order.unequal_bypass else self.habits.bypass
        ahead = self._azimuth()
        room = 0.3 * (order.count_m - self.count_m) * order.ratio
        deep = min(float(rng.uniform(12, 60)), room)
        wide = min(float(rng.uniform(6, 30)), room + 4.0)
        if order.unequal_bypass:
            wide = max(wide, min(28.0, 0.1 * order.count_m))
        side = 90.0 if self.tracer.chance(0.5) else -90.0
        self.mark = None
        if style == "through":
            self._push_through(deep)
        elif style == "arc":
            self._arc(ahead, side, deep, wide)
        else:
            self._side_step(ahead + side, wide, counts=order.paced_bypass)
            self._side_step(ahead, deep, counts=True)
            if order.unequal_bypass:
                # A second one, on the other side, might undo the first.
                self.obstacles = []
            else:
                back = wide * (1.0 + 0.06 * self.tracer.normal())
                self._side_step(ahead - side, back, counts=order.paced_bypass)

    def _push_through(self, deep: float) -> None:
        gone = 0.0
        while gone < 0.6 * deep:
            metres = self.tracer.gait(0.62)
            self.tracer.step(self._azimuth() + self.tracer.sway(14.0), metres)
            self.count_m += metres / self.order.ratio * 1.05
            gone += metres

    def _arc(self, ahead: float, side: float, deep: float, wide: float) -> None:
        """Round the thing by eye and back onto the line, the count guessed across."""
        line, across = math.radians(ahead), math.radians(ahead + side)
        from_east, from_north = self.tracer.east_m, self.tracer.north_m
        for along, off in ((0.25, 0.6), (0.5, 0.8), (0.75, 0.6), (1.0, 0.1)):
            bulge = 0.6 * wide * off + 1.5 * self.tracer.normal()
            self.tracer.walk_to(
                from_east + along * deep * math.sin(line) + bulge * math.sin(across),
                from_north + along * deep * math.cos(line) + bulge * math.cos(across),
                self.habits.speed_m_s * 0.9,
                5.0,
            )
        self.count_m += deep * (1.0 + 0.1 * self.tracer.normal()) / self.order.ratio
