"""Legs that went from point to point, and others that the matching puts far from theirs.

Of a walk that it cannot follow the matching tells that legs were left out, or walked far from
their points. Where somebody passed the points of these very legs in turn, going straight from
each to the next, he hardly did so by chance, and the walk is looked at again by that.
"""

from __future__ import annotations

import numpy as np

from audit.geodesy.along_line import metres_long
from audit.leg_card import LegCard
from audit.matching.leg_match import LegMatch, Match
from audit.matching.route import course_points
from audit.matching.walk_layout import SampledWalk
from audit.settings import MatchingSettings
from audit.units import FloatArray


def may_be_put_right(
    match: Match, walk: SampledWalk, card: LegCard, settings: MatchingSettings
) -> bool:
    """Tell whether a leg is astray, and more legs may have been walked from point to point."""
    if not is_astray(match, walk, card, settings):
        return False
    found = legs_point_to_point(match, walk, card, settings)
    return most_point_to_point(walk, card, settings) > found


def is_astray(match: Match, walk: SampledWalk, card: LegCard, settings: MatchingSettings) -> bool:
    """Tell whether a leg was not walked to its end, or began or ended far from its points."""
    return any(_far(leg, walk, card, settings) for leg in match.legs)


def legs_point_to_point(
    match: Match, walk: SampledWalk, card: LegCard, settings: MatchingSettings
) -> int:
    """Count the legs that were walked straight from their start to their point."""
    return sum(_point_to_point(leg, walk, card, settings) for leg in match.legs)


def puts_right(
    other: Match, match: Match, walk: SampledWalk, card: LegCard, settings: MatchingSettings
) -> bool:
    """Tell whether another match has more legs from point to point, and them for those astray.

    The legs that were not astray have to end where they did.
    """
    found, now = (legs_point_to_point(of, walk, card, settings) for of in (match, other))
    far = [_far(leg, walk, card, settings) for leg in match.legs]
    mended = [
        _point_to_point(leg, walk, card, settings)
        for leg, astray in zip(other.legs, far, strict=True)
        if astray
    ]
    kept = [
        leg.claim_s is not None and abs(leg.claim_s - before.times_s[1]) <= settings.kept_s
        for leg, before, astray in zip(other.legs, match.legs, far, strict=True)
        if not astray
    ]
    return now > found and any(mended) and all(kept)


def most_point_to_point(walk: SampledWalk, card: LegCard, settings: MatchingSettings) -> int:
    """Count the legs of which the start was passed, and then the point by a straight way.

    No reading of the walk has more legs that were walked from point to point.
    """
    places, path_m = walk.samples.smooth, walk.movement.path_m
    near_m = _near_m(walk, settings)
    passed = [_passed_m(places, path_m, point, near_m) for point in course_points(card)]
    return sum(
        _leads(passed[leg], passed[leg + 1], settings.passed_detour * _chord_m(leg, card))
        for leg in range(len(card.legs))
    )


def _far(leg: LegMatch, walk: SampledWalk, card: LegCard, settings: MatchingSettings) -> bool:
    return leg.status != "walked" or bool(_off_m(leg, walk, card).max() > settings.astray_m)


def _point_to_point(
    leg: LegMatch, walk: SampledWalk, card: LegCard, settings: MatchingSettings
) -> bool:
    return (
        leg.status == "walked"
        and bool(_off_m(leg, walk, card).max() <= _near_m(walk, settings))
        and _path_m(leg, walk) <= settings.passed_detour * _chord_m(leg.leg, card)
    )


def _near_m(walk: SampledWalk, settings: MatchingSettings) -> float:
    return settings.passed_m + settings.point_to_point_noises * walk.movement.noise_m


def _passed_m(
    places: FloatArray, path_m: FloatArray, point: FloatArray, near_m: float
) -> FloatArray:
    """Give the path walked at every sample near a point, in order."""
    return np.asarray(path_m[np.hypot(*(places - point).T) <= near_m])


def _leads(begun_m: FloatArray, ended_m: FloatArray, most_m: float) -> bool:
    """Tell whether a point was passed within so much path after one of its start's passages."""
    if not len(begun_m) or not len(ended_m):
        return False
    following = np.searchsorted(ended_m, begun_m, side="right")
    met = following < len(ended_m)
    return bool(np.any(ended_m[following[met]] - begun_m[met] <= most_m))


def _off_m(leg: LegMatch, walk: SampledWalk, card: LegCard) -> FloatArray:
    """Give how far from its start a leg was begun, and from its point ended, shape (2,)."""
    points = course_points(card)[leg.leg : leg.leg + 2]
    return np.asarray(np.hypot(*(walk.samples.smooth[_ends(leg, walk)] - points).T))


def _path_m(leg: LegMatch, walk: SampledWalk) -> float:
    begun, ended = walk.movement.path_m[_ends(leg, walk)]
    return float(ended - begun)


def _chord_m(leg: int, card: LegCard) -> float:
    return metres_long(course_points(card)[leg : leg + 2])


def _ends(leg: LegMatch, walk: SampledWalk) -> list[int]:
    """Give the samples at which a walked leg was begun and ended."""
    times = walk.samples.time_s
    at = np.searchsorted(times, leg.times_s)
    return [min(int(of), len(times) - 1) for of in at]
