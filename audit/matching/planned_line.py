"""The direction that a bent planned line takes nearest to each place of a walk."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from audit.units import FloatArray, direction_degrees


def direction_of_nearest_piece(line: FloatArray, walk: FloatArray) -> FloatArray:
    """Give, for a walk of shape (n, 2), the grid direction of the nearest piece of a line."""
    nearest = np.full(len(walk), np.inf)
    direction = np.zeros(len(walk))
    for start, end in pairwise(line):
        vector = end - start
        square = float(vector @ vector)
        if square == 0.0:
            continue
        share = np.clip((walk - start) @ vector / square, 0.0, 1.0)
        distance = np.hypot(*(walk - start - share[:, None] * vector).T)
        nearer = distance < nearest
        nearest[nearer] = distance[nearer]
        direction[nearer] = direction_degrees(float(vector[0]), float(vector[1]))
    return direction
