"""Looking for a point after the claim: in which shape, how far."""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import metres_long
from audit.measurement.leg_details import Search, SearchShape
from audit.settings import SearchSettings
from audit.units import FloatArray, direction_degrees, turn_degrees


def describe_search(
    time_s: FloatArray, walk: FloatArray, heading_deg: float, settings: SearchSettings
) -> Search | None:
    """Describe a search by its smoothed walk, shape (n, 2); None where nobody searched.

    ``heading_deg`` is the direction in which the leg was walked.
    """
    if len(walk) < 2:
        return None
    path = metres_long(walk)
    if path < settings.shortest_m:
        return None
    return Search(
        start_s=float(time_s[0]),
        end_s=float(time_s[-1]),
        shape=search_shape(walk, heading_deg, settings),
        path_m=path,
        reach_m=float(np.hypot(*(walk - walk[0]).T).max()),
    )


def walked_up(
    walk: FloatArray, target: FloatArray, radius_m: float, settings: SearchSettings
) -> bool:
    """Say whether a walk from the claim led straight to the point, as who sees it goes."""
    way = float(np.hypot(*(walk[-1] - walk[0])))
    before, after = np.hypot(*(walk[[0, -1]] - target).T)
    straight = metres_long(walk) <= settings.straight_up_paths * way
    return straight and way <= settings.in_sight_m and bool(after <= min(before, radius_m))


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
    path = metres_long(walk)
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
