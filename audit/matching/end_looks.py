"""What a walk looks like about the moments at which a leg may have begun or ended.

All in the frame of the leg that would so come about, and without regard to left and right:
turned or mirrored, a walk looks the same.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.matching.cuts import Cuts
from audit.matching.halts import Movement
from audit.matching.portions import IndexArray
from audit.matching.walk_samples import WalkSamples
from audit.units import FloatArray, direction_degrees, turn_degrees

AROUND_S = (20.0, 45.0, 90.0, 180.0, 360.0)
"""So long before and after each moment; chosen: from a halt to a whole search."""

NEAREST_WITHIN_S = (60.0, 180.0, 600.0)
"""Within these the nearest approach to the point is looked for, before and after; chosen."""

_LONG_S = 3600.0
"""As long as this or longer: also from a leg before or to a next one that there is not."""

_OF_WAY = ("along_m", "aside_m", "path_m", "straightness", "spread_m")
_OF_APPROACH = ("nearest_m", "nearest_s", "nearest_path_m")

AROUND_LOOKS = (
    "log_distance_ratio",
    "turned_deg",
    "path_over_chord",
    "bend_deg",
    "rest_s",
    "begins_halt",
    "ends_halt",
    "from_leg_before_s",
    "to_next_leg_s",
    "off_point_m",
    *(f"{of}_{side}_{around:g}s" for side in ("after", "before") for around in AROUND_S
      for of in _OF_WAY),
    *(f"{of}_{side}_{within:g}s" for side in ("after", "before") for within in NEAREST_WITHIN_S
      for of in _OF_APPROACH),
)  # fmt: skip
"""The names of the readings, in the order of their columns."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ends:
    """Moments at which legs may have begun or ended, each as an end of one leg; shape (n,).

    Attributes
    ----------
    cut, start, claim : int arrays
        The cut looked at, and both cuts of the likeliest portion that has it for its end.
    point : float array, shape (n, 2)
        Where that end of the leg lies by the plan.
    log_planned, planned_deg : float arrays
        Logarithm of the planned metres and the planned grid azimuth, as this walker walks
        them: by the other legs.
    leg_before_s, next_leg_s : float arrays
        When the leg before ended and the next one began; infinitely long ago or ahead where
        there is none.
    """

    cut: IndexArray
    start: IndexArray
    claim: IndexArray
    point: FloatArray
    log_planned: FloatArray
    planned_deg: FloatArray
    leg_before_s: FloatArray
    next_leg_s: FloatArray


def looks_around(
    ends: Ends, samples: WalkSamples, movement: Movement, cuts: Cuts, spread: Spread
) -> FloatArray:
    """Give the readings of some ends, shape (n, len(AROUND_LOOKS))."""
    way = cuts.position[ends.claim] - cuts.position[ends.start]
    chord_m = np.maximum(np.hypot(*way.T), 1.0)
    chord_deg = direction_degrees(way[:, 0], way[:, 1])
    here = cuts.sample[ends.cut]
    path_m = cuts.path_m[ends.claim] - cuts.path_m[ends.start]
    to_point_m = np.hypot(*(samples.smooth[here] - ends.point).T)
    time_s = cuts.time_s[ends.cut]
    columns = [
        np.log(chord_m) - ends.log_planned,
        np.abs(turn_degrees(ends.planned_deg, chord_deg)),
        path_m / chord_m,
        cuts.turn_deg[ends.cut],
        cuts.rest_s[ends.cut],
        cuts.begins_halt[ends.cut],
        cuts.ends_halt[ends.cut],
        np.clip(time_s - ends.leg_before_s, -_LONG_S, _LONG_S),
        np.clip(ends.next_leg_s - time_s, -_LONG_S, _LONG_S),
        to_point_m,
    ]
    for sign in (1.0, -1.0):
        for around_s in AROUND_S:
            columns += _way(here, sign * around_s, chord_deg, samples, movement, spread)
    for sign in (1.0, -1.0):
        for within_s in NEAREST_WITHIN_S:
            columns += _approach(here, sign * within_s, ends.point, samples, movement)
    return np.column_stack([np.asarray(one, dtype=np.float64) for one in columns])


def _way(
    here: IndexArray,
    around_s: float,
    chord_deg: FloatArray,
    samples: WalkSamples,
    movement: Movement,
    spread: Spread,
) -> list[FloatArray]:
    """Read off the way within some seconds ahead, or behind where they are negative."""
    there = sample_after(here, around_s, samples)
    way = (samples.smooth[there] - samples.smooth[here]) * np.sign(around_s)
    path_m = np.abs(movement.path_m[there] - movement.path_m[here])
    return [
        *along_and_aside(way, chord_deg),
        path_m,
        np.hypot(*way.T) / np.maximum(path_m, 1.0),
        spread.between(np.minimum(here, there), np.maximum(here, there)),
    ]


def _approach(
    here: IndexArray,
    within_s: float,
    point: FloatArray,
    samples: WalkSamples,
    movement: Movement,
) -> list[FloatArray]:
    """Read off the nearest approach to the point, and how far off in time and way it is."""
    there = sample_after(here, within_s, samples)
    nearest = np.empty_like(here)
    for number, (first, last) in enumerate(
        zip(np.minimum(here, there).tolist(), np.maximum(here, there).tolist(), strict=True)
    ):
        off = samples.smooth[first : last + 1] - point[number]
        nearest[number] = first + int(np.argmin((off**2).sum(axis=1)))
    return [
        np.hypot(*(samples.smooth[nearest] - point).T),
        np.abs(samples.time_s[nearest] - samples.time_s[here]),
        np.abs(movement.path_m[nearest] - movement.path_m[here]),
    ]


def along_and_aside(way: FloatArray, direction_deg: FloatArray | float) -> list[FloatArray]:
    """Give how far ways, shape (n, 2), lead along a direction, and how far to either side."""
    along, across = np.sin(np.radians(direction_deg)), np.cos(np.radians(direction_deg))
    return [
        way[:, 0] * along + way[:, 1] * across,
        np.abs(way[:, 0] * across - way[:, 1] * along),
    ]


def sample_after(here: IndexArray, seconds: float, samples: WalkSamples) -> IndexArray:
    """Give the sample so many seconds after each, or before where they are negative."""
    there = np.searchsorted(samples.time_s, samples.time_s[here] + seconds)
    return np.clip(there, 0, len(samples.time_s) - 1)


class Spread:
    """How far places lie about their middle, looked up for any run of samples."""

    def __init__(self, place: FloatArray) -> None:
        self._off = place - place.mean(axis=0)
        sums = np.column_stack([self._off, (self._off**2).sum(axis=1)])
        self._sums = np.vstack([np.zeros(3), np.cumsum(sums, axis=0)])

    def between(self, first: IndexArray, last: IndexArray) -> FloatArray:
        """Give the root mean square distance from the middle, of first to last, in metres."""
        count = (last - first + 1)[:, None]
        mean = (self._sums[last + 1] - self._sums[first]) / count
        return np.asarray(np.sqrt(np.maximum(mean[:, 2] - (mean[:, :2] ** 2).sum(axis=1), 0.0)))
