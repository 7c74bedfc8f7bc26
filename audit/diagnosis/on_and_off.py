"""A mistake that begins with some leg and is put right after another: all ways summed over."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.settings import DiagnosisSettings
from audit.units import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OnAndOff:
    """What all legs together say of a mistake.

    ``log_evidence`` has the shape of the grid; ``on`` has shape (legs, grid): the
    probability that a leg was walked with the mistake, at each place of the grid.
    """

    log_evidence: FloatArray
    on: FloatArray


def sum_over_changes(on: FloatArray, off: FloatArray, settings: DiagnosisSettings) -> OnAndOff:
    """Sum over all legs on which a mistake may begin and be put right.

    Parameters
    ----------
    on, off : float arrays, shape (legs, grid)
        How likely each leg is with and without the mistake.
    """
    begin = settings.begins_with_it
    right, fall = settings.puts_right, settings.falls_into_it
    legs = len(on)
    ahead = np.empty((legs, 2, *on.shape[1:]))
    scale = np.zeros(on.shape[1:])
    state = np.stack([begin * on[0], (1.0 - begin) * off[0]])
    for leg in range(legs):
        if leg:
            state = np.stack(
                [
                    ((1.0 - right) * state[0] + fall * state[1]) * on[leg],
                    (right * state[0] + (1.0 - fall) * state[1]) * off[leg],
                ]
            )
        total = state.sum(axis=0)
        scale += np.log(total)
        state = state / total
        ahead[leg] = state
    behind = np.ones_like(state)
    shown = np.empty_like(on)
    for leg in range(legs - 1, -1, -1):
        both = ahead[leg] * behind
        shown[leg] = both[0] / both.sum(axis=0)
        if leg:
            with_it, without = on[leg] * behind[0], off[leg] * behind[1]
            behind = np.stack(
                [(1.0 - right) * with_it + right * without, fall * with_it + (1.0 - fall) * without]
            )
            behind /= behind.sum(axis=0)
    return OnAndOff(log_evidence=scale, on=shown)
