"""Legs that lie before the recording begins: it tells nothing of whether they were walked."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import replace

from audit.debriefing.records import LegDebrief
from audit.leg_card import LegCard
from audit.matching.leg_match import CleanTrack, Match


def before_recording(card: LegCard, match: Match, clean: CleanTrack) -> frozenset[int]:
    """Give the legs before the first one that was walked, where the recording begins there.

    That is on the way of that leg, or at the point where it starts, unless that is the
    start of the course too.
    """
    walked = [leg for leg in match.legs if leg.start_s is not None]
    if card.order == "free" or not walked:
        return frozenset()
    first, radius_m = walked[0], card.arrival_radius_m
    start, gate = card.legs[first.leg].start, card.legs[0].start
    if math.hypot(start.east_m - gate.east_m, start.north_m - gate.north_m) <= radius_m:
        return frozenset()
    off_m = math.hypot(clean.east_m[0] - start.east_m, clean.north_m[0] - start.north_m)
    if not first.under_way and off_m > radius_m:
        return frozenset()
    return frozenset(leg.leg for leg in match.legs[: first.leg] if leg.status == "skipped")


def marked_unrecorded(
    legs: Sequence[LegDebrief], unrecorded: Collection[int]
) -> tuple[LegDebrief, ...]:
    """Give the legs with those marked that were not recorded; of them no cause is told."""
    return tuple(
        replace(leg, recorded=False, causes=()) if number in unrecorded else leg
        for number, leg in enumerate(legs)
    )
