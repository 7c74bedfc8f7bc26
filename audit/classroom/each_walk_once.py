"""One recording under several names is one walk: more of it would prove nothing of a class."""

from __future__ import annotations

from collections.abc import Sequence

from audit.classroom.walker_result import WalkerResult


def each_walk_once(walkers: Sequence[WalkerResult]) -> list[WalkerResult]:
    """Leave only the first of those whose walks are the same."""
    return list({_walk_of(walker): walker for walker in reversed(walkers)}.values())[::-1]


def _walk_of(walker: WalkerResult) -> tuple[object, ...]:
    """Give what no two walks have in common: every miss, to the last digit."""
    misses = tuple(
        (leg.miss.distance_m, leg.miss.sd_m) if leg.miss else None for leg in walker.legs
    )
    return (walker.lane, *misses) if any(misses) else (walker.ident,)
