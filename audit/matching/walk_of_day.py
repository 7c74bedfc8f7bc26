"""Of several walks in one recording, those of the day that the plan gives."""

from __future__ import annotations

import datetime as dt
from enum import IntEnum

from audit.leg_card import LegCard
from audit.moments import DAY_LEEWAY_S, day_by_sun


class OfDay(IntEnum):
    """How a walk lies to the day of the plan: the less, the nearer."""

    BEGUN_THEN = 0
    BEGUN_ABOUT_THEN = 1
    OF_ANOTHER = 2


def planned_day(card: LegCard) -> dt.date | None:
    """Give the day that the plan gives; None where the recording itself said the day."""
    return None if card.date_source == "track" else card.date


def of_day(begun_s: float, card: LegCard) -> OfDay:
    """Tell how a walk that was begun at a moment lies to the day of the plan, by the sun there.

    Of two nights in a row each was begun within hours of the day between: the one begun on
    the day itself is its walk. Where the plan gives no day, every walk is of it.
    """
    day, longitude_deg = planned_day(card), card.points[0].longitude_deg
    if day is None or day_by_sun(begun_s, longitude_deg) == day:
        return OfDay.BEGUN_THEN
    near = {day_by_sun(begun_s + by_s, longitude_deg) for by_s in (-DAY_LEEWAY_S, DAY_LEEWAY_S)}
    return OfDay.BEGUN_ABOUT_THEN if day in near else OfDay.OF_ANOTHER
