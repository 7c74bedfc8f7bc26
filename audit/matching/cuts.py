"""Where a leg may begin or end: candidate cuts, so that not every fix has to be tried."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from audit.matching.halts import Movement
from audit.matching.silences import UnseenCuts, find_unseen_cuts
from audit.matching.walk_samples import WalkSamples
from audit.settings import MatchingSettings
from audit.statistics.runs import runs_of_one
from audit.units import FloatArray, direction_degrees, turn_degrees

_PINNED, _HALT, _BEND, _NEAREST, _FILLER = 4, 3, 2, 1, 0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cuts:
    """Candidate cuts in time order; arrays of shape (k,), position (k, 2).

    Attributes
    ----------
    sample : int array
        Index of the sample that each cut stands at.
    begins_halt, ends_halt : bool array
        The walker came to rest here, or set off here.
    turn_deg : float array
        Turn from the direction before to the direction after, 0 to 180; 180 at the ends
        of the walk.
    arriving_deg, leaving_deg : float arrays
        Direction of the stretch of walking before and after.
    rest_s : float array
        How long the halt lasted at whose edge the cut stands; 0 at none.
    seen_path_m : float array
        The path up to the sample; ``path_m`` is that up to the cut.
    ends_unseen, begins_unseen : bool arrays
        In a silence a leg may only have ended here, or only begun.
    """

    sample: NDArray[np.int64]
    position: FloatArray
    time_s: FloatArray
    path_m: FloatArray
    seen_path_m: FloatArray
    ends_unseen: NDArray[np.bool_]
    begins_unseen: NDArray[np.bool_]
    halted_s: FloatArray
    begins_halt: NDArray[np.bool_]
    ends_halt: NDArray[np.bool_]
    turn_deg: FloatArray
    arriving_deg: FloatArray
    leaving_deg: FloatArray
    rest_s: FloatArray

    def __len__(self) -> int:
        return len(self.sample)

    @property
    def unseen(self) -> NDArray[np.bool_]:
        """Those reckoned into silences."""
        return self.ends_unseen | self.begins_unseen


def find_cuts(
    samples: WalkSamples,
    movement: Movement,
    points: FloatArray,
    settings: MatchingSettings,
    pinned: NDArray[np.int64] | None = None,
) -> Cuts:
    """Gather the cuts: edges of halts, bends, nearest approaches to points, and fillers.

    ``points`` has shape (m, 2): the points of the course on its grid. ``pinned`` holds
    samples that must be cuts.
    """
    rank = np.full(len(samples), -1, dtype=np.int8)
    spacing = settings.filler_m
    filler = np.arange(spacing, movement.path_m[-1], spacing)
    _mark(rank, np.searchsorted(movement.path_m, filler), _FILLER)
    for point in points:
        _mark(rank, nearest_approaches(samples.smooth, point, settings), _NEAREST)
    tolerance = max(settings.bend_tolerance_m, settings.bend_tolerance_noise * movement.noise_m)
    _mark(rank, _bends(samples, tolerance), _BEND)
    _mark(rank, movement.halts.ravel(), _HALT)
    stretch_ends = np.flatnonzero(np.diff(samples.stretch))
    _mark(rank, np.array([0, len(samples) - 1]), _HALT)
    _mark(rank, np.concatenate([stretch_ends, stretch_ends + 1]), _BEND)
    if pinned is not None:
        _mark(rank, pinned, _PINNED)
    seen = _describe(_thin(rank, movement.path_m, settings), samples, movement, settings)
    return _with_unseen(seen, find_unseen_cuts(samples, movement, settings), movement)


def _with_unseen(seen: Cuts, unseen: UnseenCuts, movement: Movement) -> Cuts:
    """Put the cuts reckoned into silences between those that are seen."""
    if len(unseen) == 0:
        return seen
    sample = np.concatenate([seen.sample, unseen.sample])
    gone_m = np.concatenate([np.zeros(len(seen)), unseen.gone_m])
    reckoned = np.arange(len(sample)) >= len(seen)
    order = np.lexsort((gone_m, reckoned, sample))
    nothing = np.zeros(len(unseen), dtype=bool)
    more = {
        "sample": unseen.sample,
        "position": unseen.position,
        "time_s": unseen.time_s,
        "path_m": movement.path_m[unseen.sample] + unseen.gone_m,
        "seen_path_m": movement.path_m[unseen.sample],
        "ends_unseen": unseen.ends,
        "begins_unseen": ~unseen.ends,
        "halted_s": movement.halted_s[unseen.sample],
        "begins_halt": nothing,
        "ends_halt": nothing,
        "turn_deg": unseen.turn_deg,
        "arriving_deg": unseen.direction_deg,
        "leaving_deg": unseen.direction_deg,
        "rest_s": np.zeros(len(unseen)),
    }
    return Cuts(
        **{name: np.concatenate([getattr(seen, name), of])[order] for name, of in more.items()}
    )


def _mark(rank: NDArray[np.int8], index: NDArray[np.int64], value: int) -> None:
    index = np.minimum(index, len(rank) - 1)
    rank[index] = np.maximum(rank[index], value)


def nearest_approaches(
    place: FloatArray, point: FloatArray, settings: MatchingSettings
) -> NDArray[np.int64]:
    """Give which places of a walk, shape (n, 2), come nearest to a point; a dozen at most."""
    distance = np.hypot(*(place - point).T)
    inner = distance[1:-1]
    nearest = (inner <= distance[:-2]) & (inner < distance[2:]) & (inner < settings.approach_m)
    index = np.flatnonzero(nearest) + 1
    order = np.argsort(distance[index], kind="stable")
    return index[order[: settings.approaches_most]]


def _bends(samples: WalkSamples, tolerance_m: float) -> NDArray[np.int64]:
    """Give the vertices that are left when the walk is simplified (Douglas and Peucker)."""
    import shapely  # noqa: PLC0415

    kept = [np.empty(0, dtype=np.int64)]
    for first, end in runs_of_one(samples.stretch).tolist():
        if end - first < 2:
            continue
        part = np.arange(first, end)
        # The index rides along as the height of each vertex.
        line = shapely.linestrings(np.column_stack([samples.smooth[part], part]))
        simple = shapely.simplify(line, tolerance_m, preserve_topology=False)
        kept.append(shapely.get_coordinates(simple, include_z=True)[:, 2].astype(np.int64))
    return np.concatenate(kept)


def _thin(
    rank: NDArray[np.int8], path_m: FloatArray, settings: MatchingSettings
) -> NDArray[np.int64]:
    """Drop each cut that a stronger one, or an equal one before it, stands close to."""
    index = np.flatnonzero(rank >= 0)
    strength, path = rank[index], path_m[index]
    keep = np.ones(len(index), dtype=bool)
    for this in np.flatnonzero(strength < _HALT):
        reach = settings.merge_m if strength[this] > _FILLER else settings.filler_m * 0.35
        before = this - 1
        while before >= 0 and not keep[before]:
            before -= 1
        if (
            before >= 0
            and path[this] - path[before] < reach
            and (strength[before] >= strength[this])
        ):
            keep[this] = False
            continue
        after = this + 1
        if (
            after < len(index)
            and path[after] - path[this] < reach
            and (strength[after] > strength[this])
        ):
            keep[this] = False
    return index[keep]


def _describe(
    index: NDArray[np.int64],
    samples: WalkSamples,
    movement: Movement,
    settings: MatchingSettings,
) -> Cuts:
    position = samples.smooth[index]
    last = len(samples) - 1
    turn = np.abs(turn_degrees(*_ways(index, samples, movement, settings.bend_arm_m)))
    arriving, leaving = _ways(index, samples, movement, settings.end_arm_m)
    ends_of_walk = (index == 0) | (index == last)
    reach = settings.halt_edge_s / samples.step_s
    return Cuts(
        sample=index,
        position=position,
        time_s=samples.time_s[index],
        path_m=movement.path_m[index],
        seen_path_m=movement.path_m[index],
        ends_unseen=np.zeros(len(index), dtype=bool),
        begins_unseen=np.zeros(len(index), dtype=bool),
        halted_s=movement.halted_s[index],
        begins_halt=_near(index, movement.halts[:, 0], reach),
        ends_halt=_near(index, movement.halts[:, 1], reach),
        turn_deg=np.where(ends_of_walk, 180.0, turn),
        arriving_deg=arriving,
        leaving_deg=leaving,
        rest_s=_rest(index, samples, movement, reach),
    )


def _ways(
    index: NDArray[np.int64], samples: WalkSamples, movement: Movement, arm_m: float
) -> tuple[FloatArray, FloatArray]:
    """Give the directions of an arm of walking before and after each of some samples."""
    path, place, last = movement.path_m, samples.smooth, len(samples) - 1
    before = np.clip(np.searchsorted(path, path[index] - arm_m), 0, last)
    after = np.clip(np.searchsorted(path, path[index] + arm_m), 0, last)
    arriving, leaving = place[index] - place[before], place[after] - place[index]
    return (
        direction_degrees(arriving[:, 0], arriving[:, 1]),
        direction_degrees(leaving[:, 0], leaving[:, 1]),
    )


def _rest(
    index: NDArray[np.int64], samples: WalkSamples, movement: Movement, reach: float
) -> FloatArray:
    """Give how long the halt lasted at whose edge each of the sorted indices stands."""
    rest = np.zeros(len(index))
    if len(movement.halts) == 0:
        return rest
    lasted = samples.time_s[movement.halts[:, 1]] - samples.time_s[movement.halts[:, 0]]
    for edge in movement.halts.T:
        after = np.clip(np.searchsorted(edge, index), 0, len(edge) - 1)
        for halt in (after, np.maximum(after - 1, 0)):
            here = np.where(np.abs(edge[halt] - index) <= reach, lasted[halt], 0.0)
            rest = np.maximum(rest, here)
    return rest


def _near(index: NDArray[np.int64], marks: NDArray[np.int64], reach: float) -> NDArray[np.bool_]:
    """Tell which of the sorted indices lie within reach of one of the sorted marks."""
    if len(marks) == 0:
        return np.zeros(len(index), dtype=bool)
    after = np.clip(np.searchsorted(marks, index), 0, len(marks) - 1)
    before = np.clip(after - 1, 0, len(marks) - 1)
    nearest = np.minimum(np.abs(marks[after] - index), np.abs(marks[before] - index))
    return np.asarray(nearest <= reach)
