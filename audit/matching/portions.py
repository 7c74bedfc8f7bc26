"""Pairs of cuts, each a portion of the walk that one leg might have been."""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from audit.matching.cuts import Cuts
from audit.matching.halts import Movement
from audit.matching.walk_samples import WalkSamples
from audit.units import FloatArray, direction_degrees

IndexArray = NDArray[np.int64]
SmallIndex = NDArray[np.int32]
SmallFloat = NDArray[np.float32]
"""Seven digits, for the many figures that are kept for every portion."""

_PIECE = 16_384
"""Portions that are worked out at a time: what is made of them fits a processor's own memory."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Portions:
    """Portions between two cuts, sorted by their later cut; arrays of shape (p,).

    Attributes
    ----------
    first, second : int arrays
        The two cuts.
    chord_m, chord_deg : float arrays
        Straight distance and grid azimuth from one to the other.
    path_m, halted_s, halts : float arrays
        Walked, stood still, and number of halts strictly between them.
    deviation_m : float array
        Root mean square distance of the samples from the chord.
    ridden_m : float array
        Of the path, the metres that went by too fast to be walked.
    silence_s : float array
        Time between the cuts that lies between stretches of the recording.
    """

    first: SmallIndex
    second: SmallIndex
    chord_m: FloatArray
    chord_deg: FloatArray
    path_m: FloatArray
    halted_s: SmallFloat
    halts: SmallFloat
    deviation_m: SmallFloat
    ridden_m: SmallFloat
    silence_s: SmallFloat

    def __len__(self) -> int:
        return len(self.first)

    def between(self, begins: NDArray[np.bool_], ends: NDArray[np.bool_]) -> IndexArray:
        """Give the places of those that begin at some of the cuts and end at some of them."""
        where = np.flatnonzero(ends)
        if len(where) == 0:
            return np.empty(0, dtype=np.int64)
        cuts = np.array([where[0], where[-1] + 1], dtype=self.second.dtype)
        low, high = (int(place) for place in np.searchsorted(self.second, cuts))
        fits = begins[self.first[low:high]] & ends[self.second[low:high]]
        return np.flatnonzero(fits) + low

    def part(self, index: IndexArray) -> Portions:
        """Give some of the portions; ``index`` ascends."""
        return Portions(**{of.name: getattr(self, of.name)[index] for of in fields(self)})


def slices(size: int) -> list[slice]:
    """Give slices over so many portions, of each of which what is worked out stays small."""
    return [slice(at, at + _PIECE) for at in range(0, max(size, 1), _PIECE)]


def near_pairs(path_m: FloatArray, reach_m: float) -> tuple[SmallIndex, SmallIndex]:
    """Give all pairs i < j of cuts with at most this much path between, sorted by j and i."""
    cut = np.arange(len(path_m), dtype=np.int32)
    beyond = np.searchsorted(path_m, path_m + reach_m, side="right")
    count = cut - np.searchsorted(beyond, cut, side="right")  # cuts before each that reach it
    second = np.repeat(cut, count)
    apart = np.repeat(np.cumsum(count, dtype=np.int32), count)
    apart -= np.arange(len(second), dtype=np.int32)
    return second - apart, second


def find_portions(
    samples: WalkSamples,
    movement: Movement,
    cuts: Cuts,
    longest_m: float,
    pairs: IndexArray | None = None,
) -> Portions:
    """Describe every pair of cuts with at most ``longest_m`` of path between them.

    ``pairs``, shape (k, 2), are described whatever lies between them.
    """
    first, second = near_pairs(cuts.seen_path_m, longest_m)
    if pairs is not None and len(pairs):
        far = cuts.seen_path_m[pairs[:, 1]] > cuts.seen_path_m[pairs[:, 0]] + longest_m
        first = np.concatenate([first, pairs[far, 0].astype(np.int32)])
        second = np.concatenate([second, pairs[far, 1].astype(np.int32)])
        order = np.argsort(second, kind="stable")
        first, second = first[order], second[order]
    if cuts.unseen.any():
        fits = _may_be_walked(first, second, cuts)
        first, second = first[fits], second[fits]
    silence = np.where(np.diff(samples.stretch) > 0, np.diff(samples.time_s), 0.0)
    silent_s = np.concatenate([[0.0], np.cumsum(silence)])
    ridden_m = movement.ridden_m[cuts.sample]
    begun = np.searchsorted(movement.halts[:, 0], cuts.sample, side="left")
    ended = np.searchsorted(movement.halts[:, 1], cuts.sample, side="right")
    chord_m, chord_deg, path_m = np.empty((3, len(first)))
    halted_s, halts, deviation_m, of_ridden_m, silence_s = np.empty((5, len(first)), np.float32)
    deviation = _Deviation(samples.smooth, cuts)
    for part in slices(len(first)):
        one, other = first[part], second[part]
        chord = cuts.position[other] - cuts.position[one]
        chord_m[part] = np.hypot(*chord.T)
        chord_deg[part] = direction_degrees(chord[:, 0], chord[:, 1])
        path_m[part] = cuts.path_m[other] - cuts.path_m[one]
        halted_s[part] = cuts.halted_s[other] - cuts.halted_s[one]
        halts[part] = np.maximum(ended[other] - begun[one], 0)
        deviation_m[part] = deviation.of(one, other)
        of_ridden_m[part] = ridden_m[other] - ridden_m[one]
        silence_s[part] = silent_s[cuts.sample[other]] - silent_s[cuts.sample[one]]
    return Portions(
        first=first,
        second=second,
        chord_m=chord_m,
        chord_deg=chord_deg,
        path_m=path_m,
        halted_s=halted_s,
        halts=halts,
        deviation_m=deviation_m,
        ridden_m=of_ridden_m,
        silence_s=silence_s,
    )


def _may_be_walked(first: SmallIndex, second: SmallIndex, cuts: Cuts) -> NDArray[np.bool_]:
    """Tell which portions begin where a leg may begin, and end further on where one may end."""
    fits = ~cuts.ends_unseen[first] & ~cuts.begins_unseen[second]
    # Reckoned on and back into one silence, the ways may pass each other.
    both_seen = ~cuts.unseen[first] & ~cuts.unseen[second]
    return np.asarray(fits & (both_seen | (cuts.path_m[second] > cuts.path_m[first])))


class _Deviation:
    """Root mean square distances from chords, from running sums in O(1) a pair."""

    def __init__(self, smooth: FloatArray, cuts: Cuts) -> None:
        self._cuts = cuts
        self._middle = smooth.mean(axis=0)
        east, north = (smooth - self._middle).T
        self._sums = [
            np.concatenate([[0.0], np.cumsum(term)])
            for term in (east, north, east * east, north * north, east * north)
        ]

    def of(self, first: SmallIndex, second: SmallIndex) -> FloatArray:
        """Give the distances of the samples between cuts."""
        cuts = self._cuts
        begin, end = cuts.sample[first], cuts.sample[second] + 1
        se, sn, see, snn, sen = (total[end] - total[begin] for total in self._sums)
        chord = cuts.position[second] - cuts.position[first]
        length = np.maximum(np.hypot(*chord.T), 1e-6)
        right_e, right_n = chord[:, 1] / length, -chord[:, 0] / length
        start = cuts.position[first] - self._middle
        offset = start[:, 0] * right_e + start[:, 1] * right_n
        square = right_e**2 * see + right_n**2 * snn + 2.0 * right_e * right_n * sen
        count = end - begin
        total = square - 2.0 * offset * (right_e * se + right_n * sn) + count * offset**2
        return np.asarray(np.sqrt(np.maximum(total / count, 0.0)))
