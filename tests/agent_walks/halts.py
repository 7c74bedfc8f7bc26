"""Halts on the way that are not the end of anything. All numbers are chosen."""

from __future__ import annotations

import math

from agent_walks.body import Body
from agent_walks.course import ahead
from agent_walks.weighted import pick

_KINDS = (
    ("map", 34),
    ("drink", 16),
    ("wait", 16),
    ("lace", 6),
    ("nature", 5),
    ("chat", 6),
    ("rest", 4),
    ("lost-item", 2),
    ("look", 14),
    ("follow", 3),
)
_STANDING_S = {
    "map": (12, 110),
    "drink": (20, 120),
    "wait": (8, 100),
    "lace": (15, 50),
    "rest": (150, 520),
    "look": (4, 15),
}


def plan_halts(body: Body, goal_m: float) -> list[tuple[float, str]]:
    """Draw at which metre of the count the walker halts, and why."""
    expected = body.who.halts_per_km * goal_m / 1000.0
    halts: list[tuple[float, str]] = []
    at = body.rng.expovariate(1.0)
    while at < expected:
        halts.append((max(9.0, at / expected * goal_m), pick(body.rng, _KINDS)))
        at += body.rng.expovariate(1.0)
    return halts


def halt_on_way(body: Body, kind: str, *, heading_deg: float, leg_began_s: int) -> None:
    """Halt for one of the reasons."""
    rng, slow = body.rng, body.who.dawdle
    here = body.place
    if kind == "nature":
        step_aside(body, rng.uniform(12, 35), rng.uniform(45, 160))
    elif kind == "lost-item":
        # Back along his own way for a thing dropped, and up again to where he was.
        back = max(leg_began_s, body.now - int(rng.uniform(40, 150)))
        body.stand(rng.uniform(5, 20))
        body.stroll(body.easts_m[back], body.norths_m[back], 1.0, 0.05)
        body.mill(rng.uniform(5, 60), 5.0)
        body.stroll(*here, 1.1, 0.05)
    elif kind == "chat":
        body.go(*ahead(here, rng.uniform(0, 360), rng.uniform(2, 12)), 0.8)
        body.mill(rng.uniform(30, 180) * slow, 3.0)
    elif kind == "follow":
        # Walks a stretch beside somebody, then thinks better of it.
        bearing_deg = heading_deg + rng.choice((-1, 1)) * rng.uniform(25, 60)
        body.go(*ahead(here, bearing_deg, rng.uniform(20, 50)), 0.9)
        body.stand(rng.uniform(5, 40))
        if body.who.style in ("marks", "leapfrog"):
            body.go(*here, 1.0, 5.0)
    else:
        low, high = _STANDING_S[kind]
        body.stand(math.exp(rng.uniform(math.log(low), math.log(high))) * slow)


def step_aside(body: Body, far_m: float, seconds: float) -> None:
    """Off behind a bush and back again."""
    here = body.place
    body.go(*ahead(here, body.rng.uniform(0, 360), far_m), 0.9, 3.0)
    body.stand(seconds, 0.01)
    body.go(*here, 0.9, 1.5)
