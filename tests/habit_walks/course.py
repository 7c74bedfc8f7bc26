"""Planned courses of several shapes. All shares and sizes are chosen."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray
from habit_walks.azimuth_and_length import azimuth_and_length

_SHAPES = ("wander", "loop", "there-and-back", "hub", "figure-eight", "close-wood")
_LONGEST_COURSE_M = 7000.0
_SHORTEST_LEG_M, _LONGEST_LEG_M = 80.0, 2000.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Course:
    """Points of the plan, the sheet's grid-magnetic angle and which way the ground falls.

    ``marker`` tells what stands at the points: a "stake" seen from afar, a "small" tag, or "none".
    """

    points_m: FloatArray
    gm_angle_deg: float
    downhill_deg: float
    marker: str

    @property
    def count(self) -> int:
        """Number of planned legs."""
        return len(self.points_m) - 1

    def leg(self, index: int) -> tuple[float, float]:
        """Grid azimuth and distance of a planned leg."""
        return azimuth_and_length(*self.points_m[index], *self.points_m[index + 1])


def _lengths(rng: np.random.Generator, count: int, median: float) -> FloatArray:
    spread = rng.uniform(0.3, 0.65)
    drawn = median * np.exp(rng.normal(0.0, spread, count))
    return np.clip(drawn, _SHORTEST_LEG_M, _LONGEST_LEG_M)


def _wander(rng: np.random.Generator, count: int, median: float, turn_sd: float) -> FloatArray:
    bearing = rng.uniform(0, 360)
    points = [np.zeros(2)]
    for length in _lengths(rng, count, median):
        bearing += rng.normal(0.0, turn_sd)
        way = np.array([np.sin(np.radians(bearing)), np.cos(np.radians(bearing))])
        points.append(points[-1] + length * way)
    return np.array(points)


def _ring(rng: np.random.Generator, count: int, median: float, turns: float) -> FloatArray:
    steps = rng.uniform(0.6, 1.4, count)
    angles = np.concatenate([[0.0], np.cumsum(steps)]) / steps.sum() * 2 * np.pi * turns
    radius = rng.uniform(0.7, 1.3, count + 1)
    radius[-1] = radius[0]
    ring = np.column_stack([np.sin(angles), np.cos(angles)]) * radius[:, None]
    if turns > 1.5:
        # A second round mirrored about the meeting place makes the two rings of an eight.
        second = angles > np.pi * turns
        ring[second] = 2 * ring[0] - ring[second]
        ring[-1] = ring[0]
    sizes = np.hypot(*np.diff(ring, axis=0).T)
    ring = ring * (rng.choice([-1.0, 1.0]), 1.0) * median / np.median(sizes)
    spin = rng.uniform(0, 2 * np.pi)
    turn = np.array([[np.cos(spin), -np.sin(spin)], [np.sin(spin), np.cos(spin)]])
    return np.asarray((ring - ring[0]) @ turn.T)


def _there_and_back(rng: np.random.Generator, count: int, median: float) -> FloatArray:
    out = (count + 1) // 2
    points = _wander(rng, out, median, 45.0)
    back = points[::-1][1 : 1 + count - out]
    return np.vstack([points, back])


def _hub(rng: np.random.Generator, count: int, median: float) -> FloatArray:
    points = [np.zeros(2)]
    for index, length in enumerate(_lengths(rng, count, median)):
        if index % 2 and rng.random() < 0.8:
            points.append(np.zeros(2))
            continue
        bearing = rng.uniform(0, 2 * np.pi)
        points.append(points[-1] + length * np.array([np.sin(bearing), np.cos(bearing)]))
    return np.array(points)


def _draw(rng: np.random.Generator, shape: str, count: int, median: float) -> FloatArray:
    if shape == "loop":
        return _ring(rng, max(count, 4), median, 1.0)
    if shape == "figure-eight":
        return _ring(rng, max(count, 6), median, 2.0)
    if shape == "there-and-back":
        return _there_and_back(rng, count, median)
    if shape == "hub":
        return _hub(rng, count, median)
    if shape == "close-wood":
        return _wander(rng, count, rng.uniform(110, 220), 110.0)
    return _wander(rng, count, median, 75.0)


def _usable(points: FloatArray) -> bool:
    sizes = np.hypot(*np.diff(points, axis=0).T)
    if len(sizes) < 3 or sizes.min() < _SHORTEST_LEG_M or sizes.max() > _LONGEST_LEG_M:
        return False
    return float(sizes.sum()) <= _LONGEST_COURSE_M


def make_course(rng: np.random.Generator) -> Course:
    """A course of 3 to 12 legs of 80 to 2000 m."""
    shape = str(rng.choice(_SHAPES, p=(0.32, 0.22, 0.12, 0.1, 0.1, 0.14)))
    # Setters give references to ten metres, so plan points mostly lie on a ten-metre grid.
    grid = float(rng.choice([10.0, 1.0, 0.1], p=(0.6, 0.3, 0.1)))
    while True:
        count = int(rng.integers(3, 13))
        median = 430.0 * float(np.exp(rng.normal(0.0, 0.4)))
        points = np.round(_draw(rng, shape, count, median) / grid) * grid
        if _usable(points):
            break
    gm_angle = float(np.round(rng.uniform(-12, 12) * 2) / 2)
    marker = str(rng.choice(("stake", "small", "none"), p=(0.6, 0.29, 0.11)))
    return Course(
        points_m=points,
        gm_angle_deg=gm_angle,
        downhill_deg=float(rng.uniform(0, 360)),
        marker=marker,
    )
