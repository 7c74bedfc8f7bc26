"""Looking for a point after the claim: until when, in which shape, how far."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.leg_details import Search, SearchShape
from audit.settings import SearchSettings, Settings
from audit.units import FloatArray, direction_degrees, turn_degrees


def describe_search(
    time_s: FloatArray, walk: FloatArray, heading_deg: float, settings: SearchSettings
) -> Search | None:
    """Describe a search by its smoothed walk, shape (n, 2); None where nobody searched.

    ``heading_deg`` is the direction in which the leg was walked.
    """
    if len(walk) < 2:
        return None
    path = float(np.hypot(*np.diff(walk, axis=0).T).sum())
    if path < settings.shortest_m:
        return None
    return Search(
        start_s=float(time_s[0]),
        end_s=float(time_s[-1]),
        shape=search_shape(walk, heading_deg, settings),
        path_m=path,
        reach_m=float(np.hypot(*(walk - walk[0]).T).max()),
    )


def search_shape(walk: FloatArray, heading_deg: float, settings: SearchSettings) -> SearchShape:
    """Name the shape of a search: the disciplined ones by what they are made of.

    Straight on: out along the leg's direction, at most back again. Fan: out and back to
    where it began, more than once. Square: turns to the same hand, once round or more.
    Anything else is wandering.
    """
    away = np.hypot(*(walk - walk[0]).T)
    reach = float(away.max())
    corners = _corners(walk, max(settings.corner_m, settings.corner_share * reach))
    ways = np.diff(corners, axis=0)
    bearings = direction_degrees(ways[:, 0], ways[:, 1])
    turns = turn_degrees(bearings[:-1], bearings[1:])
    furthest = walk[int(away.argmax())] - walk[0]
    ahead = abs(
        turn_degrees(heading_deg, direction_degrees(float(furthest[0]), float(furthest[1])))
    )
    path = float(np.hypot(*np.diff(walk, axis=0).T).sum())
    if ahead <= settings.ahead_deg and path <= settings.straight_paths * reach and len(turns) <= 2:
        return "straight on"
    if _returns(away, reach, settings) >= 2:
        return "fan"
    same_hand = max((turns > 0.0).sum(), (turns < 0.0).sum()) >= settings.same_hand * len(turns)
    if len(turns) >= 3 and same_hand and abs(turns.sum()) >= settings.round_deg:
        return "square"
    return "wandering"


def _corners(walk: FloatArray, tolerance_m: float) -> FloatArray:
    """Give the corners that are left when a walk is simplified (Douglas and Peucker)."""
    import shapely  # noqa: PLC0415

    line = shapely.simplify(shapely.linestrings(walk), tolerance_m, preserve_topology=False)
    return np.asarray(shapely.get_coordinates(line))


def _returns(away: FloatArray, reach: float, settings: SearchSettings) -> int:
    """Count how often the walk came back to where it began, after having been far from it."""
    near, far = settings.near_share * reach, settings.far_share * reach
    count, out = 0, False
    for distance in away.tolist():
        if distance >= far:
            out = True
        elif out and distance <= near:
            count, out = count + 1, False
    return count


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
    place = np.column_stack([clean.east_m[after], clean.north_m[after]])
    time_s = clean.time_s[after]
    path = _walked(time_s, place, halts)
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


def _walked(time_s: FloatArray, place: FloatArray, halts: FloatArray) -> FloatArray:
    """Give the metres walked up to each place; what a receiver wanders in halts is no way."""
    step = np.hypot(*np.diff(place, axis=0).T)
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


def with_search_ends(clean: CleanTrack, match: Match, card: LegCard, settings: Settings) -> Match:
    """Give the match with the moment at which each search for a point ended."""
    walked = sorted(
        (leg for leg in match.legs if leg.start_s is not None and leg.claim_s is not None),
        key=lambda leg: leg.start_s or 0.0,
    )
    ends = {}
    for number, leg in enumerate(walked):
        following = walked[number + 1] if number + 1 < len(walked) else None
        ended_s = _search_end(clean, match.halts, leg, following, card, settings)
        stayed = _stayed_at_point(clean, match.halts, leg, ended_s, card, settings.search)
        ends[leg.leg] = leg.claim_s if stayed else ended_s
    legs = tuple(
        replace(leg, search_end_s=ends[leg.leg]) if leg.leg in ends else leg for leg in match.legs
    )
    return replace(match, legs=legs)


def _search_end(
    clean: CleanTrack,
    halts: FloatArray,
    leg: LegMatch,
    following: LegMatch | None,
    card: LegCard,
    settings: Settings,
) -> float:
    claim_s = leg.claim_s or 0.0
    known_s = max(leg.search_end_s or claim_s, claim_s)
    if following is not None:
        if following.leg != leg.leg + 1 or following.start_s is None:
            return known_s
        at_point_m = settings.measuring.at_point_m
        return max(known_s, settled_since(clean, claim_s, following.start_s, at_point_m))
    if leg.status != "walked":
        return known_s
    end = card.legs[leg.leg].end
    target = np.array([end.east_m, end.north_m])
    ended_s = last_search_end(clean, halts, claim_s, target, card.arrival_radius_m, settings.search)
    return max(known_s, ended_s)


def _stayed_at_point(
    clean: CleanTrack,
    halts: FloatArray,
    leg: LegMatch,
    ended_s: float,
    card: LegCard,
    settings: SearchSettings,
) -> bool:
    """Say whether a walker who claimed within the radius of his point searched for nothing.

    A few steps to where he then stands, and never out of the radius, are no search.
    """
    end = card.legs[leg.leg].end
    target = np.array([end.east_m, end.north_m])
    claim_s = leg.claim_s or 0.0
    inside = (clean.time_s > claim_s) & (clean.time_s < ended_s)
    moments = np.concatenate([[claim_s], clean.time_s[inside], [ended_s]])
    place = np.column_stack(
        [np.interp(moments, clean.time_s, axis) for axis in (clean.east_m, clean.north_m)]
    )
    if np.hypot(*(place - target).T).max() > card.arrival_radius_m:
        return False
    return float(_walked(moments, place, halts)[-1]) < settings.shortest_m


def settled_since(clean: CleanTrack, from_s: float, leaves_s: float, at_point_m: float) -> float:
    """Give the moment after which the walker stayed where he then left from."""
    first = clean.index_at(from_s)
    # The last fix before he leaves: with few fixes, the one after may be far on the way.
    last = max(int(np.searchsorted(clean.time_s, leaves_s, side="right")) - 1, first)
    away = np.hypot(
        clean.east_m[first : last + 1] - clean.east_m[last],
        clean.north_m[first : last + 1] - clean.north_m[last],
    )
    outside = np.flatnonzero(away > at_point_m)
    if len(outside) == 0:
        return from_s
    return min(float(clean.time_s[min(first + outside[-1] + 1, last)]), leaves_s)
