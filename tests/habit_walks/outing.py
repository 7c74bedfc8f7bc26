"""The story of one outing, leg by leg. All numbers are chosen."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace

import numpy as np

from habit_walks.azimuth_and_length import azimuth_and_length
from habit_walks.course import make_course
from habit_walks.habits import draw_habits, fitted_to
from habit_walks.march import March, MarchEnd
from habit_walks.search import Search
from habit_walks.slips import Order, leg_slip, plain_order, slipped_order, steady_size, walk_slip
from habit_walks.trace import Tracer

_SKIPS = {"trained": 0.012, "ordinary": 0.025, "novice": 0.045}
_GIVES_UP = {"trained": 0.004, "ordinary": 0.015, "novice": 0.04}
_FALSE_START = {"trained": 0.01, "ordinary": 0.02, "novice": 0.03}
_LONG_REST = 0.02
"""Chances, of a leg."""

_OBSTACLES_PER_100M = {"trained": 0.05, "ordinary": 0.12, "novice": 0.25}
_WRONG_START_M = 40.0
_UNDONE_BY_SIGHT = (
    "hundred-miscounted",
    "early-stop",
    "pace-long",
    "pace-short",
    "single-double-pace",
    "bypass-paced",
)


@dataclass(slots=True, kw_only=True)
class LegStory:
    """What happened to one leg, before the recorder cuts it; ``at_s`` is when it was left out."""

    status: str = "not-started"
    attempts: list[tuple[int, int]] = field(default_factory=list)
    causes: list[str] = field(default_factory=list)
    at_s: int = 0


class Outing:
    """Walks a course from the milling about before it to the walk home after it.

    ``steady`` is the mistake of the whole walk and its size; ``fresh`` says that he measures
    the next leg anew from where he is.
    """

    def __init__(self, rng: np.random.Generator, level: str) -> None:
        self.rng, self.level = rng, level
        self.course = make_course(rng)
        self.habits = fitted_to(draw_habits(rng, level), self.course.marker)
        name = walk_slip(rng, self.course, level)
        self.steady = (name, steady_size(rng, name))
        self.stories = [LegStory() for _ in range(self.course.count)]
        self.quit = False
        self.fresh = False
        self.misses = self.redone = 0
        start_east, start_north = self.course.points_m[0]
        walked_in = rng.random() < 0.3
        away = rng.uniform(120, 500) if walked_in else rng.uniform(0, 12)
        turn = rng.uniform(0, 2 * math.pi)
        self.tracer = Tracer(
            rng, start_east + away * math.sin(turn), start_north + away * math.cos(turn)
        )
        self.first_s = self.last_s = 0

    def run(self) -> None:
        """Walk it all."""
        self._before()
        self.first_s = self.tracer.now
        for index in range(self.course.count):
            if self.quit:
                break
            if self._skips(index):
                continue
            self._leg(index)
        self.last_s = self.tracer.now
        self._after()

    def point(self, index: int) -> tuple[float, float]:
        """The true place of a plan point."""
        east_m, north_m = self.course.points_m[index]
        return float(east_m), float(north_m)

    def _before(self) -> None:
        rng = self.rng
        self.tracer.stand(float(rng.uniform(20, 240)), 3.0)
        east, north = self.point(0)
        self.tracer.ramble_to(east + self.tracer.normal(), north + self.tracer.normal(), 1.3)
        long_wait = rng.random() < 0.25
        self.tracer.stand(float(rng.uniform(200, 800) if long_wait else rng.uniform(10, 120)), 3.0)
        self.tracer.walk_to(east + self.tracer.normal(), north + self.tracer.normal(), 0.9)

    def _after(self) -> None:
        rng = self.rng
        self.tracer.stand(float(rng.uniform(20, 200)), self.habits.restless_m)
        if rng.random() < 0.45 or self.quit:
            self.tracer.ramble_to(*self.point(0), self.habits.speed_m_s * 1.1)
            self.tracer.stand(float(rng.uniform(20, 300)), 3.0)
        self.tracer.stand(8)

    def _skips(self, index: int) -> bool:
        if index == 0 or self.rng.random() >= _SKIPS[self.level]:
            return False
        self.stories[index].status = "skipped"
        self.stories[index].causes.append("point-skipped")
        self.stories[index].at_s = self.tracer.now
        # Either he means to leave the point out and takes a new azimuth from where he is, or he
        # slips a line on the card and walks the next leg's numbers from the wrong place.
        self.fresh = self.rng.random() < 0.6
        return True

    def _at_point(self) -> None:
        """All that is done between arriving and setting off."""
        habits, tracer = self.habits, self.tracer
        pause = habits.stand_s * math.exp(habits.stand_spread * tracer.normal())
        if habits.notes == "after":
            pause *= 0.4
        elif habits.notes == "walking":
            pause *= 0.25
        if self.misses:
            pause += float(self.rng.uniform(5, 60))
        if tracer.chance(_LONG_REST):
            # A meal, a chat with another walker, a shower sat out.
            pause += float(self.rng.uniform(240, 1500))
        tracer.stand(pause, habits.restless_m)
        if habits.aside_m:
            back = (tracer.east_m, tracer.north_m)
            turn = float(self.rng.uniform(0, 2 * math.pi))
            away = habits.aside_m * float(self.rng.uniform(0.6, 1.3))
            tracer.walk_to(
                tracer.east_m + away * math.sin(turn),
                tracer.north_m + away * math.cos(turn),
                1.0,
                3.0,
            )
            tracer.stand(float(self.rng.uniform(6, 25)))
            if habits.aside_back:
                tracer.walk_to(*back, 1.0, 3.0)
                tracer.stand(float(self.rng.uniform(2, 6)))

    def _order(self, index: int, *, first: bool) -> Order:
        """What he sets out to do; the second time on a leg he takes more care."""
        planned = self.course.leg(index)
        if self.fresh:
            planned = azimuth_and_length(
                self.tracer.east_m, self.tracer.north_m, *self.point(index + 1)
            )
        order = plain_order(
            self.tracer, self.habits, planned, self.steady, self.course.gm_angle_deg
        )
        if not first or self.fresh:
            return order
        name = leg_slip(self.rng, self.level)
        if name is not None:
            order = slipped_order(self.rng, self.course, index, order, name)
        if self.rng.random() < _GIVES_UP[self.level]:
            order = replace(order, give_up_at=float(self.rng.uniform(0.3, 0.85)))
        return order

    def _false_start(self, order: Order) -> None:
        """Sets off on a wrong number, sees it soon, comes back to the point and stands again."""
        if self.rng.random() >= _FALSE_START[self.level]:
            return
        home = (self.tracer.east_m, self.tracer.north_m)
        turn = math.radians(order.azimuth_deg + float(self.rng.choice([-90, 90, 180, 40, -40])))
        away = float(self.rng.uniform(25, min(140.0, 0.5 * order.count_m)))
        self.tracer.walk_to(
            home[0] + away * math.sin(turn),
            home[1] + away * math.cos(turn),
            self.habits.speed_m_s,
            8.0,
        )
        self.tracer.stand(float(self.rng.uniform(8, 50)))
        self.tracer.walk_to(home[0], home[1], self.habits.speed_m_s * 1.1, 8.0)
        self.tracer.stand(float(self.rng.uniform(5, 40)), 0.5)

    def _leg(self, index: int) -> None:
        story = self.stories[index]
        origin = self.point(index)
        for attempt in range(2):
            self._at_point()
            home = (self.tracer.east_m, self.tracer.north_m)
            order = self._order(index, first=attempt == 0)
            if self.tracer.range_to(*origin) > _WRONG_START_M:
                order = replace(order, causes=(*order.causes, "wrong-start"))
            self._false_start(order)
            if not self._attempt(index, order, story, home, attempt):
                break
        self.fresh = False

    def _attempt(
        self, index: int, order: Order, story: LegStory, home: tuple[float, float], attempt: int
    ) -> bool:
        """One attempt and what follows it; True when he went back to walk the leg again."""
        point = self.point(index + 1)
        end = March(self.tracer, self.habits, order, point, _OBSTACLES_PER_100M[self.level]).run()
        story.attempts.append((end.start_s, end.claim_s))
        causes = self._real_causes(order, end, point)
        story.causes.extend(cause for cause in causes if cause not in story.causes)
        story.status = "walked"
        if end.how == "gave-up":
            story.status = "unfinished"
            self._gave_up(point)
            return False
        if end.how in ("seen", "decoy"):
            self.misses = 0
            return False
        claim = (self.tracer.east_m, self.tracer.north_m)
        if Search(self.tracer, self.habits, order.azimuth_deg, point).run():
            self.misses = 0
            return False
        self.misses += 1
        return self._lost(index, claim, home, attempt)

    def _real_causes(
        self, order: Order, end: MarchEnd, point: tuple[float, float]
    ) -> tuple[str, ...]:
        """The mistakes that came to bear: seeing the point in time undoes a wrong count."""
        causes = order.causes
        if end.how == "seen":
            causes = tuple(cause for cause in causes if cause not in _UNDONE_BY_SIGHT)
        if "passed-unseen" in causes:
            easts_m = np.array(self.tracer.easts_m[end.start_s : end.claim_s])
            norths_m = np.array(self.tracer.norths_m[end.start_s : end.claim_s])
            gaps_m = np.hypot(easts_m - point[0], norths_m - point[1])
            if gaps_m.min() > max(self.habits.sight_m, 12.0):
                causes = tuple(
                    "overshoot" if cause == "passed-unseen" else cause for cause in causes
                )
        return causes

    def _gave_up(self, point: tuple[float, float]) -> None:
        self.tracer.stand(float(self.rng.uniform(15, 150)), 1.0)
        fate = self.rng.random()
        if fate < 0.3:
            self.quit = True
        elif fate < 0.8:
            self.tracer.ramble_to(*point, self.habits.speed_m_s * 1.1, 0.25)

    def _lost(
        self, index: int, claim: tuple[float, float], home: tuple[float, float], attempt: int
    ) -> bool:
        """The point was not found. True when the leg is to be walked again."""
        point = self.point(index + 1)
        gap = self.tracer.range_to(*point)
        way = self.habits.lost_way
        if self.rng.random() < 0.2:
            way = "on"
        if way in ("on", "back-to-claim") and gap > 55 and self.rng.random() < 0.72:
            # So far off, the ground itself tells him.
            way = "relocate"
        if gap > 450 and self.rng.random() < 0.25:
            self.quit = True
            return False
        if way == "redo" and self.redone >= 1 and self.rng.random() < 0.8:
            # Hardly anybody walks the whole way back a second time in one outing.
            way = "relocate"
        if way == "redo" and attempt == 0:
            self.redone += 1
            self.tracer.stand(float(self.rng.uniform(10, 90)), 0.5)
            self.tracer.ramble_to(*home, self.habits.speed_m_s * 1.05, 0.03)
            return True
        if way == "back-to-claim":
            self.tracer.walk_to(
                claim[0] + 3 * self.tracer.normal(), claim[1] + 3 * self.tracer.normal(), 1.0
            )
        elif way in ("relocate", "redo") and index + 1 < self.course.count:
            self.tracer.stand(float(self.rng.uniform(20, 180)), 1.0)
            self.tracer.ramble_to(*point, self.habits.speed_m_s, 0.12)
            self.misses = 0
        return False
