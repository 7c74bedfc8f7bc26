"""When the search for each point of a walk ended: where the walker then settled, or gave up."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, LegMatch, Match
from audit.measurement.last_search import last_search_end, metres_walked
from audit.settings import SearchSettings, Settings
from audit.units import FloatArray


def with_search_ends(clean: CleanTrack, match: Match, card: LegCard, settings: Settings) -> Match:
    """Give the match with the moment at which each search for a point ended."""
    walked = match.walked_in_turn()
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
    claim_s = leg.times_s[1]
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
    claim_s = leg.times_s[1]
    inside = (clean.time_s > claim_s) & (clean.time_s < ended_s)
    moments = np.concatenate([[claim_s], clean.time_s[inside], [ended_s]])
    place = clean.places_at(moments)
    if np.hypot(*(place - target).T).max() > card.arrival_radius_m:
        return False
    return float(metres_walked(moments, place, halts)[-1]) < settings.shortest_m


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
