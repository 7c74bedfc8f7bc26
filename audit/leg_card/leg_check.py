"""One leg of the plan and all that its numbers are held against."""

from __future__ import annotations

from dataclasses import dataclass

from audit.azimuths import NorthAngles
from audit.leg_card.finished_card import CardLeg, CardPoint
from audit.leg_card.legs import PointsSay
from audit.plan import PlannedLeg
from audit.settings import CardSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class LegCheck:
    """One leg and all that its numbers are held against.

    ``said`` is None where the leg itself decides where its end lies. ``angle_doubt_deg``
    is how far the card's grid-magnetic angle may be from the one the planner used.
    ``others`` are the other legs of the card, whose numbers may have been copied.
    ``by_course`` are the fields that differ by the fault of the course's angle alone.
    ``explained`` is a sentence about a reference that explains the leg's numbers, with
    a space before it; "" where none does.
    """

    leg: PlannedLeg
    start: CardPoint
    end: CardPoint
    said: PointsSay | None
    distance_m: float
    angles: NorthAngles
    angle_doubt_deg: float
    paces_per_100m: float | None
    settings: CardSettings
    others: tuple[CardLeg, ...] = ()
    explained: str = ""
    by_course: frozenset[str] = frozenset()
