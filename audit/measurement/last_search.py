"""When the search for the last point ended, which no departure for another point shows."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from audit.geodesy.along_line import steps_m
from audit.matching.leg_match import CleanTrack
from audit.settings import SearchSettings
from audit.units import FloatArray


def last_search_end(
    clean: CleanTrack,
    halts: FloatArray,
    claim_s: float,
    target: FloatArray,
    radius_m: float,
    settings: SearchSettings,
) -> float:
    """Give when the search for the last point ended: found, or given up; the claim for none.

    After the last leg no departure for another shows where the search ended. Who finds
    his point stands at it, and who gives up stands before he sets off: the search ends
    where the longest halt begins that is elsewhere, or that came after he had been
    elsewhere; at the point if there is one there.
    Where nobody stood anywhere, the way alone has to show it.
    """
    after = np.flatnonzero(clean.time_s >= claim_s)
    if len(after) < 2:
        return claim_s
    place = clean.places(after)
    time_s = clean.time_s[after]
    path = metres_walked(time_s, place, halts)
    stands = _stands(time_s, place, halts, settings)
    ended = [one for one in stands if np.hypot(*(one.place - target)) <= radius_m]
    if not ended:
        ended = [one for one in stands if _gave_up(one, time_s, place, path, settings)]
    if ended:
        return max(ended, key=lambda one: one.length_s).start_s
    settled_s = claim_s + settings.stand_s
    stood = bool(((halts[:, 0] <= settled_s) & (halts[:, 1] >= settled_s)).any())
    ended_s = _end_by_way(time_s, place, path, target, radius_m, settings, stood=stood)
    return claim_s if ended_s is None else ended_s


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Stand:
    """A halt after the claim, elsewhere or after having been elsewhere."""

    start_s: float
    length_s: float
    place: FloatArray


def _stands(
    time_s: FloatArray, place: FloatArray, halts: FloatArray, settings: SearchSettings
) -> list[_Stand]:
    """Give the halts after the claim that are long enough to tell of an end.

    At the claim itself only where he had been elsewhere in between.
    """
    stands = []
    away_m = np.hypot(*(place - place[0]).T)
    for start_s, end_s in halts:
        inside = (time_s >= start_s) & (time_s <= end_s)
        length_s = float(end_s - max(start_s, time_s[0]))
        if inside.any() and length_s >= settings.stand_s:
            where = np.median(place[inside], axis=0)
            furthest_m = max(
                away_m[time_s < start_s].max(initial=0.0), float(np.hypot(*(where - place[0])))
            )
            if furthest_m >= settings.shortest_m:
                stands.append(_Stand(start_s=float(start_s), length_s=length_s, place=where))
    return stands


def _gave_up(
    stand: _Stand,
    time_s: FloatArray,
    place: FloatArray,
    path: FloatArray,
    settings: SearchSettings,
) -> bool:
    """Say whether the way from the claim to a halt covered ground instead of leaving it.

    A halt that the recording ends in may be one at the car.
    """
    if stand.start_s + stand.length_s >= time_s[-1]:
        return False
    path_m = float(np.interp(stand.start_s, time_s, path))
    away_m = float(np.hypot(*(stand.place - place[0])))
    about = settings.shortest_m <= away_m <= settings.about_m
    return about and path_m >= settings.covers_paths * away_m


def metres_walked(time_s: FloatArray, place: FloatArray, halts: FloatArray) -> FloatArray:
    """Give the metres walked up to each place; what a receiver wanders in halts is no way."""
    step = steps_m(place)
    middle = (time_s[1:] + time_s[:-1]) / 2.0
    for start_s, end_s in halts:
        step[(middle > start_s) & (middle < end_s)] = 0.0
    return np.concatenate([[0.0], np.cumsum(step)])


def _end_by_way(
    time_s: FloatArray,
    place: FloatArray,
    path: FloatArray,
    target: FloatArray,
    radius_m: float,
    settings: SearchSettings,
    *,
    stood: bool,
) -> float | None:
    """Give the end of a search that no halt shows; None where there was none.

    It ends at the point, where the walk comes within the arrival radius before it has
    gone further than a search goes. Failing that, a walker who covers the ground about
    his claim searches until he sets off straight for elsewhere. One who stood at his
    claim, and then came by the point on a straight way, was walking off.
    """
    off = np.hypot(*(place - target).T)
    if off[0] <= radius_m:
        return None
    away = np.hypot(*(place - place[0]).T)
    near = np.flatnonzero((off <= radius_m) & (path <= settings.longest_m))
    least_m = np.maximum(settings.covers_paths * away, away + settings.shortest_m)
    if len(near) and (not stood or path[near[0]] >= least_m[near[0]]):
        return float(time_s[_nearest_of_visit(off, int(near[0]), radius_m)])
    gone = np.flatnonzero(away > settings.about_m)
    last = int(gone[0]) if len(gone) else len(away) - 1
    if path[last] < settings.covers * settings.about_m:
        return None
    return float(time_s[_sets_off(place, path, last, settings)])


def _nearest_of_visit(off: FloatArray, first: int, radius_m: float) -> int:
    """Give the fix nearest to the point while the walk stays within the radius."""
    outside = np.flatnonzero(off[first:] > radius_m)
    last = first + int(outside[0]) if len(outside) else len(off)
    return first + int(np.argmin(off[first:last]))


def _sets_off(place: FloatArray, path: FloatArray, last: int, settings: SearchSettings) -> int:
    """Give the first fix from which the walk to ``last`` is nearly straight."""
    chord = np.hypot(*(place[: last + 1] - place[last]).T)
    way = path[last] - path[: last + 1]
    straight = chord >= settings.straight_share * way
    bent = np.flatnonzero(~straight)
    return int(bent[-1]) + 1 if len(bent) else 0
