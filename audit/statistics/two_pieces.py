"""Two straight pieces that meet: where a walk turns, or comes to rest, and when."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Meeting:
    """Least-squares fit of two pieces of even motion that meet at ``time_s``.

    ``position`` has shape (d,): where they meet. ``residual`` is the sum of squares
    left over.
    """

    time_s: float
    position: FloatArray
    residual: float


def fit_meeting(time_s: FloatArray, position: FloatArray, meet_s: float) -> Meeting:
    """Fit two pieces that meet at a given time to fixes of shape (n,) and (n, d)."""
    since = time_s - meet_s
    design = np.column_stack([np.ones_like(since), np.minimum(since, 0.0), np.maximum(since, 0.0)])
    # A touch of ridge keeps a side without fixes from blowing up; it pulls by micrometres.
    normal = design.T @ design + 1e-9 * np.eye(3)
    coefficient = np.linalg.solve(normal, design.T @ position)
    left = position - design @ coefficient
    return Meeting(time_s=meet_s, position=coefficient[0], residual=float((left * left).sum()))


def best_meeting(time_s: FloatArray, position: FloatArray, candidates_s: FloatArray) -> Meeting:
    """Give the best of several meeting times."""
    fits = [fit_meeting(time_s, position, float(candidate)) for candidate in candidates_s]
    return min(fits, key=lambda fit: fit.residual)
