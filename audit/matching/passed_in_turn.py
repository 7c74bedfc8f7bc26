"""Legs that went from point to point, and others that the matching puts far from theirs.

Of a walk that it cannot follow the matching tells that legs were left out, or walked far from
their points. Where somebody passed the points of these very legs in turn, going straight from
each to the next, he hardly did so by chance, and the walk is looked at again by that.
"""

from __future__ import annotations

from copy import copy
from dataclasses import replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import LegMatch, Match
from audit.matching.route import course_points
from audit.matching.walk_layout import WalkLaidOut
from audit.settings import MatchingSettings
from audit.units import FloatArray


def by_points(laid_out: WalkLaidOut, settings: MatchingSettings) -> WalkLaidOut:
    """Give the same walk with the evidence of other settings."""
    evidence = copy(laid_out.evidence)
    evidence.settings = settings
    evidence.forget()
    return replace(laid_out, evidence=evidence)


def is_astray(match: Match, walk: WalkLaidOut, card: LegCard, settings: MatchingSettings) -> bool:
    """Tell whether a leg was not walked to its end, or began or ended far from its points."""
    return any(
        leg.status != "walked" or _off_m(leg, walk, card).max() > settings.astray_m
        for leg in match.legs
    )


def legs_point_to_point(
    match: Match, walk: WalkLaidOut, card: LegCard, settings: MatchingSettings
) -> int:
    """Count the legs that were walked straight from their start to their point."""
    near_m = settings.passed_m + settings.point_to_point_noises * match.noise_m
    return sum(
        leg.status == "walked"
        and bool(_off_m(leg, walk, card).max() <= near_m)
        and _path_m(leg, walk) <= settings.passed_detour * _chord_m(leg, card)
        for leg in match.legs
    )


def _off_m(leg: LegMatch, walk: WalkLaidOut, card: LegCard) -> FloatArray:
    """Give how far from its start a leg was begun, and from its point ended, shape (2,)."""
    points = course_points(card)[leg.leg : leg.leg + 2]
    return np.asarray(np.hypot(*(walk.samples.smooth[_ends(leg, walk)] - points).T))


def _path_m(leg: LegMatch, walk: WalkLaidOut) -> float:
    begun, ended = walk.movement.path_m[_ends(leg, walk)]
    return float(ended - begun)


def _chord_m(leg: LegMatch, card: LegCard) -> float:
    return float(np.hypot(*np.diff(course_points(card)[leg.leg : leg.leg + 2], axis=0)[0]))


def _ends(leg: LegMatch, walk: WalkLaidOut) -> list[int]:
    """Give the samples at which a walked leg was begun and ended."""
    times = walk.samples.time_s
    at = np.searchsorted(times, [leg.start_s or 0.0, leg.claim_s or 0.0])
    return [min(int(of), len(times) - 1) for of in at]
