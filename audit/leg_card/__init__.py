"""The leg card: the plan worked out for one day, and where the plan disagrees with itself."""

from audit.leg_card.finished_card import (
    AngleSource,
    CardFinding,
    CardLeg,
    CardPoint,
    LegCard,
    SafetyBearing,
)
from audit.leg_card.in_order import card_in_order
from audit.leg_card.work_out import work_out_card

__all__ = [
    "AngleSource",
    "CardFinding",
    "CardLeg",
    "CardPoint",
    "LegCard",
    "SafetyBearing",
    "card_in_order",
    "work_out_card",
]
