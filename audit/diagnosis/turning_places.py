"""Where a walker turned off or halted: places that he had gone to, not only come by."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.geodesy.along_line import metres_along, places_along
from audit.matching.leg_match import CleanTrack
from audit.settings import DiagnosisSettings
from audit.statistics.runs import runs_of_true
from audit.units import FloatArray, direction_degrees, turn_degrees

_STEP_M = 5.0
_FIRST_BLOCK = 64


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TurningPlaces:
    """Places, shape (n, 2), when they were passed, and whether the walker halted there."""

    position: FloatArray
    time_s: FloatArray
    halted: FloatArray

    def away_from(self, places: FloatArray, least_m: float) -> TurningPlaces:
        """Leave out those that are near one of some places, shape (k, 2)."""
        apart = self.position[:, None] - places
        kept = (np.hypot(apart[..., 0], apart[..., 1]) > least_m).all(axis=1)
        return TurningPlaces(
            position=self.position[kept], time_s=self.time_s[kept], halted=self.halted[kept]
        )


def turning_places(clean: CleanTrack, settings: DiagnosisSettings) -> TurningPlaces:
    """Find the clear bends and the halts of a stretch of a walk."""
    place = clean.places()
    bends, bend_s = _bends(place, clean.time_s, settings)
    halts, halt_s = _halts(place, clean.time_s, settings)
    return TurningPlaces(
        position=np.concatenate([bends, halts]).reshape(-1, 2),
        time_s=np.concatenate([bend_s, halt_s]),
        halted=np.concatenate([np.zeros(len(bends)), np.ones(len(halts))]),
    )


def _bends(
    place: FloatArray, time_s: FloatArray, settings: DiagnosisSettings
) -> tuple[FloatArray, FloatArray]:
    """Give the sharpest place of every stretch on which the path bends by enough."""
    path_m = metres_along(place)
    at_m = np.arange(0.0, path_m[-1], _STEP_M)
    arm = round(settings.turning_arm_m / _STEP_M)
    if len(at_m) <= 2 * arm:
        return np.empty((0, 2)), np.empty(0)
    even = places_along(place, path_m, at_m)
    middle = even[arm:-arm]
    ahead, behind = even[2 * arm :] - middle, middle - even[: -2 * arm]
    turn_deg = np.abs(turn_degrees(direction_degrees(*behind.T), direction_degrees(*ahead.T)))
    runs = runs_of_true(turn_deg >= settings.turning_deg)
    sharpest = np.array(
        [first + int(np.argmax(turn_deg[first:end])) for first, end in runs], dtype=np.int64
    )
    return middle[sharpest], np.interp(at_m[arm:-arm][sharpest], path_m, time_s)


def _halts(
    place: FloatArray, time_s: FloatArray, settings: DiagnosisSettings
) -> tuple[FloatArray, FloatArray]:
    """Give the middles of the stretches on which the walker stayed in one place for long."""
    found, moments = [], []
    first = 0
    while first < len(place):
        end = _left(place, first, settings.turning_halt_m)
        if time_s[end - 1] - time_s[first] >= settings.turning_halt_s:
            found.append(place[first:end].mean(axis=0))
            moments.append(float(time_s[first]))
            first = end
        else:
            first += 1
    return np.array(found).reshape(-1, 2), np.array(moments, dtype=np.float64)


def _left(place: FloatArray, first: int, within_m: float) -> int:
    """Give the first fix after one that lies further from it; the number of fixes where none does.

    Looked for outward, in ever larger blocks: most are left after a few fixes.
    """
    begin, block = first, _FIRST_BLOCK
    while begin < len(place):
        away_m = np.hypot(*(place[begin : begin + block] - place[first]).T)
        left = np.flatnonzero(away_m > within_m)
        if len(left):
            return begin + int(left[0])
        begin, block = begin + block, 2 * block
    return len(place)
