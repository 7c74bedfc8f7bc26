"""Courses: the points of the plan in order. All shares and sizes are chosen."""

from __future__ import annotations

import math
from itertools import pairwise
from random import Random

from agent_walks.weighted import pick

_SHORTEST_M = 80.0
_LONGEST_M = 2000.0
_MOST_TOTAL_M = 6200.0

Point = tuple[float, float]

_KINDS = (("loop", 30), ("wander", 34), ("cross", 16), ("back", 12), ("hub", 8))


def bearing_and_length(start: Point, end: Point) -> tuple[float, float]:
    """Grid bearing in degrees (0 to 360) and length in metres from one place to another."""
    east, north = end[0] - start[0], end[1] - start[1]
    return math.degrees(math.atan2(east, north)) % 360.0, math.hypot(east, north)


def ahead(start: Point, bearing_deg: float, length_m: float) -> Point:
    """The place reached from another on a grid bearing."""
    angle = math.radians(bearing_deg)
    return start[0] + length_m * math.sin(angle), start[1] + length_m * math.cos(angle)


def _lengths(rng: Random, count: int) -> list[float]:
    """Leg lengths with a median about 400 m; some setters lay short or long courses."""
    middle = 400.0 * math.exp(rng.gauss(0.0, 0.22))
    out = [
        min(_LONGEST_M, max(_SHORTEST_M + 10, rng.lognormvariate(math.log(middle), 0.5)))
        for _ in range(count)
    ]
    total = sum(out)
    if total > _MOST_TOTAL_M:
        out = [max(_SHORTEST_M + 10, length * _MOST_TOTAL_M / total) for length in out]
    return out


def _chain(rng: Random, lengths: list[float], kind: str) -> list[Point]:
    """Lay the legs one after another; the kind decides how the course turns."""
    here: Point = (0.0, 0.0)
    points = [here]
    bearing = rng.uniform(0.0, 360.0)
    hand = rng.choice((-1, 1))
    for length in lengths:
        here = ahead(here, bearing, length)
        points.append(here)
        if kind == "loop":
            bearing += hand * 360.0 / len(lengths) + rng.gauss(0.0, 22.0)
        elif kind == "cross":
            bearing += hand * rng.uniform(100.0, 155.0)
            hand = hand if rng.random() < 0.6 else -hand
        else:
            home = math.degrees(math.atan2(-here[0], -here[1]))
            pull = (home - bearing + 180.0) % 360.0 - 180.0
            far = math.hypot(*here) / 1500.0
            bearing += rng.gauss(0.0, 65.0) + pull * min(0.8, 0.6 * far)
    return points


def _out_and_back(rng: Random, count: int) -> list[Point]:
    """Out over some points and home over the same ones; an odd leg ends elsewhere."""
    half = _chain(rng, _lengths(rng, max(1, count // 2)), "wander")
    points = half + half[-2::-1]
    while len(points) < count + 1:
        points.append(ahead(points[-1], rng.uniform(0, 360), _lengths(rng, 1)[0]))
    return points


def _hub(rng: Random, count: int) -> list[Point]:
    """Rays from one base point, out and home each time."""
    base: Point = (0.0, 0.0)
    points = [base]
    for number, length in enumerate(_lengths(rng, count)):
        points.append(base if number % 2 else ahead(base, rng.uniform(0, 360), length))
    return points


def _fits(points: list[Point]) -> bool:
    return all(
        _SHORTEST_M <= bearing_and_length(start, end)[1] <= _LONGEST_M
        for start, end in pairwise(points)
    )


def _bring_near(rng: Random, points: list[Point]) -> list[Point]:
    """Move one point close to another, as on ground laid out for several lanes."""
    count = len(points)
    for _ in range(6):
        staying, moving = rng.randrange(count), rng.randrange(1, count)
        if abs(staying - moving) < 2:
            continue
        moved = list(points)
        moved[moving] = ahead(points[staying], rng.uniform(0, 360), rng.uniform(25.0, 90.0))
        if _fits(moved):
            return moved
    return points


def make_course(rng: Random) -> list[Point]:
    """Start and points of a course of 3 to 12 legs of 80 to 2000 m each."""
    count = min(12, max(3, round(rng.gauss(6.5, 2.3))))
    kind = pick(rng, _KINDS)
    if kind == "back":
        points = _out_and_back(rng, count)
    elif kind == "hub":
        points = _hub(rng, count)
    else:
        points = _chain(rng, _lengths(rng, count), kind)
    if kind == "loop" and rng.random() < 0.6:
        closed = [*points[:-1], points[0]]
        points = closed if _fits(closed) else points
    if kind not in ("back", "hub") and rng.random() < 0.3:
        points = _bring_near(rng, points)
    grain = rng.choice((0.1, 1.0, 1.0, 10.0))
    rounded = [
        (round(east / grain) * grain, round(north / grain) * grain) for east, north in points
    ]
    return rounded if _fits(rounded) else points
