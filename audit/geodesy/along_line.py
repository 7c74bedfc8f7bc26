"""Lines on the grid: how far along one its places lie, and where so many metres along lead."""

from __future__ import annotations

import numpy as np

from audit.units import FloatArray


def steps_m(line: FloatArray) -> FloatArray:
    """Give how long each step of a line, shape (n, 2), is, from place to place; shape (n - 1,)."""
    step = np.diff(line, axis=0)
    return np.hypot(step[:, 0], step[:, 1])


def metres_along(line: FloatArray) -> FloatArray:
    """Give how far along a line, shape (n, 2), each of its places lies; 0 for the first."""
    return np.concatenate([[0.0], np.cumsum(steps_m(line))])


def metres_about(line: FloatArray) -> FloatArray:
    """Give how much of a line, shape (n, 2), each place stands for: half of each step at it."""
    half = steps_m(line) / 2.0
    about: FloatArray = np.concatenate([[0.0], half]) + np.concatenate([half, [0.0]])
    return about


def metres_long(line: FloatArray) -> float:
    """Give the length of a line, shape (n, 2)."""
    return float(steps_m(line).sum())


def places_along(line: FloatArray, along_m: FloatArray, at_m: FloatArray) -> FloatArray:
    """Give the places ``at_m`` along a line whose own places lie ``along_m``, shape (m, 2)."""
    return np.column_stack([np.interp(at_m, along_m, column) for column in line.T])


def even_places(line: FloatArray, every_m: float) -> FloatArray:
    """Give a place of a line every so many metres, from its first to its last, shape (m, 2)."""
    along_m = metres_along(line)
    return places_along(line, along_m, np.arange(0.0, along_m[-1] + every_m, every_m))


def off_line_m(place: FloatArray, line: FloatArray) -> float:
    """Give how far a place, shape (2,), lies off a line, shape (n, 2), where that is nearest."""
    _, away_m = nearest_on_steps(line[:-1] - place, np.diff(line, axis=0))
    return float(away_m.min())


def nearest_on_steps(place: FloatArray, step: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give the share of each step at which it comes nearest to the origin, and how near.

    ``place``, shape (n, 2), is where each step begins, counted from the origin; ``step``, of
    the same shape, leads on from there.
    """
    square = np.maximum((step**2).sum(axis=1), 1e-12)
    share = np.clip(-(place * step).sum(axis=1) / square, 0.0, 1.0)
    return share, np.hypot(*(place + share[:, None] * step).T)
