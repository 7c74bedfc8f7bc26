"""Which leg brought a walker to where a later one began: the mistake was made there."""

from __future__ import annotations

import math
from collections.abc import Sequence

from audit.coaching.largest_part import largest_part
from audit.measurement.leg_measures import LegAudit
from audit.settings import CoachingSettings


def led_to(legs: Sequence[LegAudit], number: int, settings: CoachingSettings) -> int | None:
    """Give the leg that ended where this one began; None where it was begun elsewhere.

    So who missed a point, and set off for the next from there, has one miss and not two.
    """
    if number == 0:
        return None
    leg, before = legs[number], legs[number - 1]
    if leg.measures is None or before.measures is None or leg.measures.under_way:
        return None
    if before.card.end.name != leg.card.start.name:
        return None
    began, ended = leg.measures.ledger.inherited, before.measures.ledger.total
    left_m = math.hypot(began[0] - ended[0], began[1] - ended[1])
    return number - 1 if left_m <= settings.brought_along_share * math.hypot(*began) else None


def first_off(legs: Sequence[LegAudit], number: int, settings: CoachingSettings) -> int | None:
    """Give the leg whose own miss was handed on to this one, over however many between.

    None where most of this leg's miss is its own, or was brought along from no leg.
    """
    found = None
    while _brought_along(legs[number]):
        before = led_to(legs, number, settings)
        if before is None:
            break
        found = number = before
    return found


def _brought_along(leg: LegAudit) -> bool:
    return leg.measures is not None and largest_part(leg.measures) == "inherited"
