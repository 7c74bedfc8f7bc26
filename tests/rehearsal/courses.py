"""A course to rehearse on, its card, and its rehearsal."""

from __future__ import annotations

from functools import cache

from forecast.legs import made_card

from audit.leg_card import LegCard
from audit.rehearsal.finished_rehearsal import LegRehearsal, Rehearsal, WayEnd
from audit.rehearsal.rehearse import rehearse


@cache
def card() -> LegCard:
    """Give three legs: north 600 m, east 800 m, south-west 500 m; the angle is 7.5 west."""
    return made_card((0.0, 600.0), (800.0, 600.0), (450.0, 250.0))


@cache
def rehearsed() -> Rehearsal:
    return rehearse(card())


def ends(leg: LegRehearsal, cause: str) -> list[WayEnd]:
    return [end for end in leg.ends if end.way.cause == cause]


def only(leg: LegRehearsal, cause: str) -> WayEnd:
    found = ends(leg, cause)
    assert len(found) == 1
    return found[0]
