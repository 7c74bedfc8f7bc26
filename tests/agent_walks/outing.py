"""The whole outing: assembly, halts at points, legs in turn, giving up, going home.

All shares and sizes are chosen.
"""

from __future__ import annotations

import math
from random import Random

from walks.made_walk import LegTruth

from agent_walks.body import Body
from agent_walks.course import Point, ahead, bearing_and_length
from agent_walks.eyes import Marker
from agent_walks.faults import NEVER, Fault
from agent_walks.halts import step_aside
from agent_walks.land import Land
from agent_walks.leg import Navigator, Order
from agent_walks.search import Search
from agent_walks.traits import Traits
from agent_walks.weighted import pick

_AFTER_LOST = {
    "trained": (("here", 16), ("claim", 18), ("helped", 32), ("again", 34)),
    "ordinary": (("here", 22), ("claim", 16), ("helped", 42), ("again", 20)),
    "novice": (("here", 30), ("claim", 14), ("helped", 42), ("again", 14)),
}
_STOPS = {"trained": 0.002, "ordinary": 0.006, "novice": 0.012}
_FOREIGN = {"trained": 0.05, "ordinary": 0.1, "novice": 0.12}
_NEVER_SEARCHES = {"trained": 0.01, "ordinary": 0.04, "novice": 0.08}
_WRONG_START_M = 30.0
_AT_POINT = (("quick", 22), ("plain", 42), ("talk", 20), ("long", 10), ("nature", 6))
_LASTING = ("pace-long", "pace-short", "steady-bias")
"""Mistakes that a second attempt does not mend."""


def _set_posts(rng: Random, level: str, points: list[Point]) -> list[Marker]:
    """Posts at the points, a little off as surveyed, and posts of other lanes."""
    posts: list[Marker] = []
    post_at: dict[Point, Marker] = {}
    for number, place in enumerate(points):
        if place not in post_at:
            surveyed = (place[0] + rng.gauss(0, 1.6), place[1] + rng.gauss(0, 1.6))
            post_at[place] = Marker(at=surveyed, points=set())
            posts.append(post_at[place])
        post_at[place].points.add(number)
        if rng.random() < _FOREIGN[level]:
            foreign = ahead(place, rng.uniform(0, 360), rng.uniform(25, 90))
            posts.append(Marker(at=foreign, points=set()))
    return posts


def _truth(status: str, done: list[tuple[int, int]], fault: Fault) -> LegTruth:
    start, claim = done[-1]
    return LegTruth(
        status=status,
        start_s=start,
        claim_s=claim,
        attempts=tuple(done),
        causes=tuple(fault.causes),
    )


def _order_on_card(azimuth_deg: float, length_m: float, point: int) -> Order:
    """The card's figures: whole degrees, metres to the nearest ten or so."""
    grain_m = 5.0 if length_m < 300 else 10.0
    return Order(
        azimuth_deg=round(azimuth_deg) % 360,
        length_m=round(length_m / grain_m) * grain_m,
        point=point,
    )


class Outing:
    """Runs one walker over one course and keeps the truth.

    ``truth`` has an entry a leg, ``ends`` says how each attempt at it ended; ``lost`` says that
    he does not know where he is.
    """

    def __init__(
        self,
        rng: Random,
        level: str,
        points: list[Point],
        land: Land,
        who: Traits,
        faults: list[Fault],
    ) -> None:
        self.rng, self.level, self.points, self.faults, self.who = rng, level, points, faults, who
        self.legs = len(points) - 1
        posts = _set_posts(rng, level, points)
        self.post_of = {point: post for post in posts for point in post.points}
        self.place_of = {point: post.at for point, post in self.post_of.items()}
        camp = ahead(points[0], rng.uniform(0, 360), rng.choice((4.0, rng.uniform(10, 150))))
        self.body = Body(rng, land, who, camp)
        self.navigator = Navigator(rng, land, self.body, posts)
        self.truth: list[LegTruth] = []
        self.ends: list[list[str]] = [[] for _ in range(self.legs)]
        self.lost = False

    def run(self) -> None:
        """The outing from assembly to the way home."""
        self._assemble()
        self.first_s = self.body.now
        leg, late = 0, self.first_s + self.rng.uniform(7500, 11500)
        while leg < self.legs and self.body.now < late:
            self.truth.append(self._leg(leg))
            leg += 1
            if self.truth[-1].status == "unfinished" and self.rng.random() < 0.2:
                break
            if self.rng.random() < _STOPS[self.level]:
                break
        while len(self.truth) < self.legs:
            self.truth.append(LegTruth(status="not-started"))
        self.last_s = self.body.now
        self._go_home()

    def _assemble(self) -> None:
        body, rng = self.body, self.rng
        body.mill(rng.uniform(20, 400), 8.0)
        if rng.random() < 0.18:
            # The pace strip: a hundred metres there and back, perhaps twice.
            bearing, start = rng.uniform(0, 360), body.place
            for _ in range(rng.randint(1, 2)):
                body.go(*ahead(start, bearing, 100.0))
                body.stand(rng.uniform(4, 25))
                body.go(*start)
                body.stand(rng.uniform(4, 40))
        body.stroll(*self.place_of[0])
        self.navigator.eyes.found = self.post_of[0]

    def _go_home(self) -> None:
        body, rng = self.body, self.rng
        body.mill(rng.uniform(10, 240), 4.0)
        if rng.random() < 0.6:
            home = ahead(self.points[0], rng.uniform(0, 360), rng.uniform(5, 60))
            far = body.away(*home)
            if far > 10:
                part = min(1.0, rng.uniform(0.2, 1.2), 900.0 / far)
                to = (
                    body.east + part * (home[0] - body.east),
                    body.north + part * (home[1] - body.north),
                )
                body.stroll(*to, rng.uniform(1.0, 1.15))
        body.mill(rng.uniform(8, 200), 6.0)

    def _halt(self) -> None:
        """What is done at a point before the next leg."""
        body, rng, slow = self.body, self.rng, self.who.dawdle
        if self.lost:
            body.stand(rng.uniform(10, 120) * slow)
        else:
            body.stand(rng.uniform(3, 25))
            kind = pick(rng, _AT_POINT)
            if kind == "plain":
                body.mill(rng.uniform(15, 120) * slow, 3.0)
            elif kind == "talk":
                body.mill(rng.uniform(60, 240) * slow, 8.0)
            elif kind == "long":
                body.go(*ahead(body.place, rng.uniform(0, 360), rng.uniform(3, 14)), 0.7)
                body.stand(rng.uniform(200, 700) * slow, 0.015)
            elif kind == "nature":
                step_aside(body, rng.uniform(12, 40), rng.uniform(45, 150))
            if (
                self.navigator.eyes.found is not None
                and body.away(*self.navigator.eyes.found.at) > 6
            ):
                body.go(*self.navigator.eyes.found.at, 0.8, 3.0)
        if rng.random() < 0.03:
            # Off already, but the compass is not set: a few steps and back.
            here = body.place
            body.go(*ahead(here, rng.uniform(0, 360), rng.uniform(8, 22)), 0.9)
            body.stand(rng.uniform(3, 15))
            body.go(*here, 0.8)
        body.stand(rng.uniform(2, 14), 0.0)

    def _leg(self, leg: int) -> LegTruth:
        fault, body = self.faults[leg], self.body
        if fault.skip:
            return self._skip(leg, fault)
        # He who cuts across measures his own way from the point before the one left out.
        cuts = leg > 0 and self.faults[leg - 1].skip == "cut-across"
        begin = self.points[leg - 1 if cuts else leg]
        order = _order_on_card(*bearing_and_length(begin, self.points[leg + 1]), leg + 1)
        self._halt()
        if fault.shift_m and not self.lost:
            body.stroll(*ahead(body.place, self.rng.uniform(0, 360), fault.shift_m), 0.9)
            body.stand(self.rng.uniform(4, 40))
        return self._attempts(leg, order, fault)

    def _attempts(self, leg: int, order: Order, fault: Fault) -> LegTruth:
        """Walk the leg till it is done with, once or oftener."""
        done: list[tuple[int, int]] = []
        base = list(fault.causes)
        while True:
            here, last = self.body.place, len(done) >= 2
            self._check_start(leg, here, fault)
            end = self._attempt(leg, order, fault, done)
            if end == "back":
                self._back_to(here, fault, base)
                continue
            if end == "gave-up":
                return self._given_up(leg, here, fault, base, done, order)
            if not self._tries_again(leg, end, here, last=last):
                return _truth("walked", done, fault)
            self._back_to(here, fault, base)

    def _attempt(self, leg: int, order: Order, fault: Fault, done: list[tuple[int, int]]) -> str:
        """Walk the leg once; how it ended."""
        start = self.body.now
        end = self.navigator.walk(order, fault)
        done.append((start, self.navigator.ended_s))
        self.ends[leg].append(end)
        self.claim = self.body.place
        return end

    def _check_start(self, leg: int, here: Point, fault: Fault) -> None:
        if math.dist(here, self.place_of[leg]) > _WRONG_START_M:
            fault.name("wrong-start")

    def _back_to(self, here: Point, fault: Fault, base: list[str]) -> None:
        """Back to where the leg began, to try again with the mistake mended."""
        body, rng = self.body, self.rng
        body.stand(rng.uniform(3, 60))
        body.stroll(*here, 1.0, 0.06)
        body.stand(rng.uniform(10, 120))
        stay = [cause for cause in base if cause in _LASTING]
        fault.causes[:] = stay
        if not stay:
            fault.turn_deg, fault.length_factor = 0.0, 1.0
        fault.notice_m, fault.length_add_m, fault.veer_deg, fault.early = NEVER, 0.0, 0.0, None
        fault.slide_factor, fault.iron, fault.give_up = 1.0, None, None

    def _given_up(
        self,
        leg: int,
        here: Point,
        fault: Fault,
        base: list[str],
        done: list[tuple[int, int]],
        order: Order,
    ) -> LegTruth:
        """Broke off on the way: try again from the start, or be brought to the point."""
        body, rng = self.body, self.rng
        body.stand(rng.uniform(5, 150))
        if len(done) < 2 and rng.random() < 0.35:
            self._back_to(here, fault, base)
            self._check_start(leg, here, fault)
            end = self._attempt(leg, order, fault, done)
            if end not in ("gave-up", "back"):
                self._tries_again(leg, end, here, last=True)
                return _truth("walked", done, fault)
        truth = _truth("unfinished", done, fault)
        self._arrive(leg + 1)
        return truth

    def _tries_again(self, leg: int, end: str, here: Point, *, last: bool) -> bool:
        """After the claim: believe, search, give up; True if he tries the leg again."""
        rng, body = self.rng, self.body
        self.lost = False
        if end == "found":
            return False
        if end == "other":
            body.stand(rng.uniform(8, 45))
            if rng.random() > self.who.checks_code:
                return False
        if end == "count" and rng.random() < _NEVER_SEARCHES[self.level]:
            self.lost = True
            return False
        result = Search(self.navigator, self.level, leg + 1, self.place_of[leg + 1]).run()
        if result != "lost":
            return False
        what = pick(rng, _AFTER_LOST[self.level])
        if what in ("here", "claim") and "wrong-start" in self.faults[leg].causes:
            # Lost twice running: now he takes the trouble to find himself on the map.
            what = "helped" if rng.random() < 0.75 else what
        if what == "again" and not last and math.dist(here, body.place) < 900:
            return True
        self.lost = True
        if what == "claim":
            body.go(*self.claim, 0.9, 4.0)
        elif what == "helped":
            self._arrive(leg + 1)
        return False

    def _arrive(self, point: int) -> None:
        """Comes to a point by the easy way: led, or having found himself on the map."""
        body, rng = self.body, self.rng
        to = self.place_of[point]
        if body.away(*to) > 250 and rng.random() < 0.5:
            mid = ahead(
                ((body.east + to[0]) / 2, (body.north + to[1]) / 2), rng.uniform(0, 360), 60.0
            )
            body.stroll(*mid, 1.0)
            body.stand(rng.uniform(15, 150))
        body.stroll(*to, 1.0)
        self.lost = False
        self.navigator.eyes.found = self.post_of[point]

    def _skip(self, leg: int, fault: Fault) -> LegTruth:
        """The leg is left out: next line of the card, a cut across, or led on."""
        if fault.skip == "led":
            self._halt()
            self._arrive(leg + 1)
        return LegTruth(status="skipped", causes=tuple(fault.causes))
