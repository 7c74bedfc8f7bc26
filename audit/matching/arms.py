"""The arms of walking before and after each cut: their direction, straightness and pace."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.halts import Movement
from audit.matching.walk_samples import WalkSamples
from audit.units import FloatArray, direction_degrees

ARMS_M = (35.0, 60.0, 100.0, 150.0)
"""Metres of path: a bend shows on the short ones, a search or a leg on the long ones."""

_COUNTS_FROM = 1.0 / 3.0
"""An arm cut shorter than this share of itself, at an end of the walk, says nothing."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Arm:
    """One arm at each cut; arrays of shape (k,).

    Attributes
    ----------
    direction_deg : float array
        Grid azimuth of the way of walking along the arm.
    straightness : float array
        Its chord over its path, 0 to 1; 1 where the arm is too short to tell.
    pace : float array
        Its speed without halts over the walker's usual speed; 1 where too short to tell.
    """

    direction_deg: FloatArray
    straightness: FloatArray
    pace: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Arms:
    """The arms before and after each cut, by their length in metres."""

    before: dict[float, Arm]
    after: dict[float, Arm]


def find_arms(samples: WalkSamples, movement: Movement, cuts: Cuts) -> Arms:
    """Measure the arms at all cuts."""
    return Arms(
        before={length: _arm(samples, movement, cuts, -length) for length in ARMS_M},
        after={length: _arm(samples, movement, cuts, length) for length in ARMS_M},
    )


def _arm(samples: WalkSamples, movement: Movement, cuts: Cuts, reach_m: float) -> Arm:
    """Measure the arm that reaches so far ahead of each cut, or behind it where negative."""
    path, place, here = movement.path_m, samples.smooth, cuts.sample
    side: Literal["left", "right"] = "left" if reach_m > 0.0 else "right"
    there = np.searchsorted(path, path[here] + reach_m, side=side)
    there = np.clip(there, 0, len(path) - 1)
    way = (place[there] - place[here]) * np.sign(reach_m)
    length = np.abs(path[there] - path[here])
    passed_s = np.abs(samples.time_s[there] - samples.time_s[here])
    walked_s = passed_s - np.abs(movement.halted_s[there] - movement.halted_s[here])
    tells = length > _COUNTS_FROM * abs(reach_m)
    speed = length / np.maximum(walked_s, 1.0)
    return Arm(
        direction_deg=direction_degrees(way[:, 0], way[:, 1]),
        straightness=np.where(tells, np.hypot(*way.T) / np.maximum(length, 1.0), 1.0),
        pace=np.where(tells, speed / movement.walking_m_s, 1.0),
    )
