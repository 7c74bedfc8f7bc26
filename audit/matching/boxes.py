"""Obstacles boxed: out at a right angle, on along the leg, and back in on the other hand."""

from __future__ import annotations

import numpy as np

from audit.settings import MatchingSettings
from audit.statistics.runs import runs_of_one
from audit.units import FloatArray


def find_boxes(
    turn_deg: FloatArray, step_m: FloatArray, noise_m: float, settings: MatchingSettings
) -> list[tuple[int, int, int]]:
    """Find boxes about one direction of walking.

    Parameters
    ----------
    turn_deg : float array, shape (n,)
        Direction of each step less the direction of the leg, signed.
    step_m : float array, shape (n,)
        Length of each step.

    Returns
    -------
    list of (first, back, end)
        Step at which the way out begins, at which the way back in begins, and the
        one after its end.
    """
    path = np.cumsum(step_m)
    sides = _sides(turn_deg, path, max(settings.box_side_m, 1.5 * noise_m), settings)
    boxes: list[tuple[int, int, int]] = []
    waiting: tuple[int, int, int, float] | None = None
    for first, end, hand, length in sides:
        if waiting is not None and hand == -waiting[2]:
            between = path[first] - path[waiting[1]]
            equal = length < settings.box_unequal * waiting[3] and (
                waiting[3] < settings.box_unequal * length
            )
            if equal and between <= settings.box_ahead_m:
                on = slice(waiting[1] + 1, first + 1)
                made = float(step_m[on] @ np.cos(np.radians(turn_deg[on])))
                if made >= 0.6 * between:
                    boxes.append((waiting[0], first, end))
                    waiting = None
                    continue
        waiting = (first, end, hand, length)
    return boxes


def _sides(
    turn_deg: FloatArray, path_m: FloatArray, least_m: float, settings: MatchingSettings
) -> list[tuple[int, int, int, float]]:
    """Give runs of walking across the leg: first, end, hand (+1 right, -1 left), metres.

    ``path_m`` is the length of all steps up to each, itself included.
    """
    across = np.abs(np.abs(turn_deg) - 90.0) <= settings.box_turn_deg
    hand = np.where(across, np.sign(turn_deg), 0.0)
    total = np.concatenate([[0.0], path_m])
    first, end = runs_of_one(hand).T
    length = total[end] - total[first]
    chosen = (hand[first] != 0.0) & (length >= least_m)
    sides = (first, end, hand[first].astype(np.int64), length)
    return list(zip(*(column[chosen].tolist() for column in sides), strict=True))
