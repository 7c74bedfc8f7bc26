"""How long a walk was near roads, crossings left out, and how much of that is beyond doubt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from audit.geodesy.along_line import steps_m
from audit.statistics.runs import runs_of_true
from audit.units import FloatArray

if TYPE_CHECKING:
    from shapely import STRtree
    from shapely.geometry.base import BaseGeometry

BoolArray = npt.NDArray[np.bool_]
_PIECE_M = 2.0
"""The walk is held against the roads in pieces of this length; finer than any receiver."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NearRoads:
    """A walk's use of roads.

    Attributes
    ----------
    within_m, sd_m : float
        Nearer than the first is near; the second is the standard error of a distance from a
        road: of receiver and drawn line together.
    seen_m, sure_m : float
        Metres walked near roads: by the recording as it is, and beyond its whole error.
    seen_s, sure_s : float or None
        The same in seconds; None in a recording without times.
    roads : tuple of str
        Whose names are met, those of the longest first.
    """

    within_m: float
    sd_m: float
    seen_m: float
    sure_m: float
    seen_s: float | None
    sure_s: float | None
    roads: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class NearRule:
    """What counts as near: within a distance, and for longer than a crossing takes.

    ``whole_error`` is so many standard errors; ``crossing`` is how many times its own distance
    a way across may keep within that distance of a road: 0 where crossing is no excuse.
    """

    within_m: float
    sd_m: float
    whole_error: float
    crossing: float


def near_roads(
    places_m: Sequence[FloatArray],
    times_s: Sequence[FloatArray] | None,
    roads: Sequence[tuple[str, BaseGeometry]],
    points: BaseGeometry,
    rule: NearRule,
) -> NearRoads:
    """Measure how long a walk was near roads.

    ``places_m`` are its parts, each of shape (n, 2), between which nothing is known; what lies
    inside ``points``, where walkers are sent, does not count.
    """
    import shapely  # noqa: PLC0415 (only where there are roads)

    # Where roads cross, the union cuts them: an index of its parts looks at those nearby alone.
    lines = shapely.STRtree(shapely.get_parts(shapely.union_all([shape for _, shape in roads])))
    met: dict[str, float] = {name: 0.0 for name, _ in roads}
    seen, sure = np.zeros(2), np.zeros(2)
    sure_within_m = rule.within_m - rule.whole_error * rule.sd_m
    for number, part in enumerate(places_m):
        middles, lengths, seconds = _pieces(part, None if times_s is None else times_s[number])
        off_m = _nearest_m(middles, lines)
        counts = ~np.asarray(shapely.contains(points, shapely.points(middles)))
        size = np.column_stack([lengths, seconds])
        near = _kept(counts & (off_m <= rule.within_m), lengths, rule.crossing * rule.within_m)
        least_m = rule.crossing * max(sure_within_m, 0.0)
        certain = _kept(near & (off_m < sure_within_m), lengths, least_m)
        seen += size[near].sum(axis=0)
        sure += size[certain].sum(axis=0)
        for name, shape in roads:
            close = shapely.distance(shapely.points(middles[near]), shape) <= rule.within_m
            met[name] += float(lengths[near][close].sum())
    timed = times_s is not None
    return NearRoads(
        within_m=rule.within_m,
        sd_m=rule.sd_m,
        seen_m=float(seen[0]),
        sure_m=float(sure[0]),
        seen_s=float(seen[1]) if timed else None,
        sure_s=float(sure[1]) if timed else None,
        roads=tuple(name for name in sorted(met, key=lambda one: -met[one]) if met[name] > 0.0),
    )


def _nearest_m(middles: FloatArray, lines: STRtree) -> FloatArray:
    """Give how far each place is from the nearest line; infinitely far where there is none."""
    import shapely  # noqa: PLC0415 (only where there are roads)

    places = shapely.points(middles)
    off_m = np.full(len(middles), np.inf)
    (found, _), away_m = lines.query_nearest(places, all_matches=False, return_distance=True)
    off_m[found] = away_m
    return off_m


def _pieces(
    places_m: FloatArray, time_s: FloatArray | None
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Cut a way into short pieces: their middles, their lengths, and how long each took."""
    steps = np.diff(places_m, axis=0)
    lengths = steps_m(places_m)
    counts = np.maximum(np.ceil(lengths / _PIECE_M).astype(int), 1)
    step = np.repeat(np.arange(len(steps)), counts)
    first = np.repeat(np.cumsum(counts) - counts, counts)
    share = (np.arange(len(step)) - first + 0.5) / counts[step]
    seconds = np.zeros(len(steps)) if time_s is None else np.diff(time_s)
    middles: FloatArray = places_m[step] + share[:, None] * steps[step]
    return middles, lengths[step] / counts[step], seconds[step] / counts[step]


def _kept(near: BoolArray, lengths: FloatArray, least_m: float) -> BoolArray:
    """Keep the runs of near pieces that are longer than so much."""
    kept = np.zeros(len(near), dtype=bool)
    for begin, end in runs_of_true(near):
        kept[begin:end] = lengths[begin:end].sum() > least_m
    return kept
