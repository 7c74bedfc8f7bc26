"""Looking for the point after the count is out. All weights and sizes are chosen."""

from __future__ import annotations

import math

from agent_walks.course import Point, ahead, bearing_and_length
from agent_walks.eyes import Marker
from agent_walks.leg import Navigator
from agent_walks.weighted import pick

_WAYS = {
    "trained": (("on-and-back", 26), ("box", 24), ("loops", 14), ("hunch", 34), ("line", 12)),
    "ordinary": (("on-and-back", 28), ("box", 10), ("loops", 24), ("hunch", 36), ("line", 14)),
    "novice": (("on-and-back", 24), ("box", 5), ("loops", 28), ("hunch", 38), ("line", 15)),
}


class Search:
    """One search: from the claim till the post is found or patience is out.

    ``post`` is the one that he saw last; ``true_place`` is where his hunches draw him.
    """

    def __init__(self, navigator: Navigator, level: str, point: int, true_place: Point) -> None:
        self.eyes, self.land, self.body = navigator.eyes, navigator.land, navigator.body
        self.rng, self.level, self.point, self.true_place = navigator.rng, level, point, true_place
        self.claim = self.body.place
        self.azimuth_deg = navigator.heading_deg()
        self.sight_m = 10.0 + 12.0 * (1.0 - self.land.canopy[self.land.cell(*self.claim)])
        self.post: Marker | None = None

    def _sees(self) -> bool:
        post = self.eyes.look(self.point, 1.1)
        self.post = post or self.post
        return post is not None

    def _go(self, to: Point, hurry: float = 0.78) -> bool:
        """Walk somewhere with open eyes; stop now and then on long ways."""
        body = self.body
        if body.away(*to) > 35 and self.rng.random() < 0.5:
            half = ((body.east + to[0]) / 2, (body.north + to[1]) / 2)
            if body.go(*half, hurry, 3.0, self._sees) or self._stare(self.rng.uniform(2, 12)):
                return True
        return body.go(*to, hurry, 3.0, self._sees)

    def _stare(self, seconds: float) -> bool:
        """Stand and look, turning round."""
        body = self.body
        for _ in range(max(1, int(seconds / 5))):
            body.stand(5, 0.1)
            turn = self.rng.uniform(0, 6.283)
            body.facing_east, body.facing_north = math.sin(turn), math.cos(turn)
            if self._sees():
                return True
        return False

    def run(self) -> str:
        """Search; returns found, other (a wrong post believed) or lost."""
        rng, body = self.rng, self.body
        patience = body.who.patience_s * math.exp(rng.gauss(0, 0.4))
        end = body.now + min(1200.0, patience)
        ways = {
            "on-and-back": self._on_and_back,
            "box": self._box,
            "loops": self._loops,
            "hunch": self._hunch,
            "line": self._line,
        }
        hit = self._stare(rng.choice((5, 10, 15, 30, 60)) * rng.uniform(0.6, 1.3))
        while True:
            if hit and self.post is not None:
                verdict = self._walk_up(self.post)
                if verdict:
                    return verdict
            if body.now > end:
                return "lost"
            hit = ways[pick(rng, _WAYS[self.level])]()

    def _walk_up(self, post: Marker) -> str:
        """Go to the post seen, read its code."""
        body = self.body
        body.go(*post.at, hurry=0.95, reach=1.5)
        self.eyes.found = post
        if self.point in post.points:
            return "found"
        body.stand(self.rng.uniform(5, 40))
        return "" if self.rng.random() < body.who.checks_code else "other"

    def _on_and_back(self) -> bool:
        """On by the azimuth for a bit, look, and back to where the count was out."""
        rng = self.rng
        on = rng.uniform(15, 75)
        if self._go(ahead(self.body.place, self.azimuth_deg + rng.gauss(0, 8), on), 0.85):
            return True
        if self._stare(rng.uniform(3, 25)):
            return True
        if rng.random() < 0.65:
            return self._go(self.claim, 0.85)
        return False

    def _loops(self) -> bool:
        """Small loops out from the claim and home to it."""
        rng = self.rng
        for _ in range(rng.randint(1, 4)):
            bearing, far = rng.uniform(0, 360), rng.uniform(10, 38)
            turn = rng.choice((-1, 1)) * rng.uniform(40, 100)
            if self._go(ahead(self.claim, bearing, far)):
                return True
            if self._go(ahead(self.claim, bearing + turn, far)):
                return True
            if rng.random() < 0.6 and self._go(self.claim):
                return True
            if rng.random() < 0.4 and self._stare(rng.uniform(3, 15)):
                return True
        return False

    def _box(self) -> bool:
        """A square spiral whose sides grow with how far he sees."""
        rng, body = self.rng, self.body
        side, bearing, turn = self.sight_m, self.azimuth_deg, rng.choice((-90, 90))
        for number in range(rng.randint(4, 9)):
            side += 1.6 * self.sight_m * (number % 2)
            if self._go(ahead(body.place, bearing + rng.gauss(0, 6), side), 0.8):
                return True
            if self._stare(rng.uniform(1, 6)):
                return True
            bearing += turn
        return False

    def _line(self) -> bool:
        """To the next track or stream and along it."""
        body, rng, land = self.body, self.rng, self.land
        line = land.track if rng.random() < 0.6 else land.stream
        off, along_east, along_north = land.line_near(line, body.east, body.north)
        if abs(off) > 50:
            return self._hunch()
        if self._go((body.east + along_north * -off, body.north + along_east * off), 0.8):
            return True
        sense = rng.choice((-1, 1))
        for _ in range(rng.randint(3, 11)):
            off, along_east, along_north = land.line_near(line, body.east, body.north)
            if abs(off) > 30 or (abs(off) > 3 and line is land.stream and rng.random() < 0.2):
                break
            to = (
                body.east + sense * 15 * along_east - 0.8 * off * along_north,
                body.north + sense * 15 * along_north + 0.8 * off * along_east,
            )
            if body.go(*to, 0.85, 3.0, self._sees):
                return True
        return False

    def _hunch(self) -> bool:
        """The map says it should be over there; often enough it is."""
        rng, body = self.rng, self.body
        body.stand(rng.uniform(5, 60))
        bearing, far = bearing_and_length(body.place, self.true_place)
        spread = 30 if far < 80 else 45 if far < 200 else 70
        to = ahead(
            body.place, bearing + rng.gauss(0, spread), min(110.0, rng.uniform(0.5, 1.2) * far)
        )
        if self._go(to, 0.85):
            return True
        return self._stare(rng.uniform(3, 20))
