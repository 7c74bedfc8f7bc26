"""Signs as columns: the share of each knot in a curve's value, mixed by the walk's habits."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from learning.knots import Knots


def width(knots: Mapping[str, Knots]) -> int:
    """Give the number of columns of a kind of signs."""
    return sum(len(of.at) * (1 if of.by is None else 2) for of in knots.values())


def columns(
    signs: Mapping[str, np.ndarray], habits: Mapping[str, float], knots: Mapping[str, Knots]
) -> np.ndarray:
    """Give the columns of some portions, stays or ends, shape (n, width).

    A sign that is not there, or does not apply, has zeros.
    """
    count = len(next(iter(signs.values())))
    parts = []
    for name, of in knots.items():
        hat = np.zeros((count, len(of.at)))
        if name in signs:
            hat = _hat(np.asarray(signs[name], dtype=float), np.array(of.at))
        parts += [hat] if of.by is None else _mixed(hat, habits[of.by])
    return np.concatenate(parts, axis=1).astype(np.float32)


def _mixed(hat: np.ndarray, habit: float) -> list[np.ndarray]:
    return [(1.0 - habit) * hat, habit * hat]


def _hat(values: np.ndarray, knots: np.ndarray) -> np.ndarray:
    """Give the shares of the knots in straight interpolation between them."""
    applies = ~np.isnan(values)
    inside = np.clip(np.where(applies, values, knots[0]), knots[0], knots[-1])
    left = np.clip(np.searchsorted(knots, inside, side="right") - 1, 0, len(knots) - 2)
    share = (inside - knots[left]) / (knots[left + 1] - knots[left])
    hat = np.zeros((len(values), len(knots)))
    row = np.arange(len(values))
    hat[row, left] = 1.0 - share
    hat[row, left + 1] = share
    return hat * applies[:, None]
