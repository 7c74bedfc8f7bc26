"""One leg of the plan and all that its numbers are held against."""

from __future__ import annotations

from dataclasses import dataclass

from audit.azimuths import NorthAngles
from audit.leg_card.legs import PointsSay
from audit.plan import PlannedLeg
from audit.settings import CardSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class LegCheck:
    """One leg and all that its numbers are held against.

    ``said`` is None where the leg itself decides where its end lies. ``angle_doubt_deg``
    is how far the card's grid-magnetic angle may be from the one the planner used.
    """

    leg: PlannedLeg
    said: PointsSay | None
    distance_m: float
    angles: NorthAngles
    angle_doubt_deg: float
    paces_per_100m: float | None
    settings: CardSettings
