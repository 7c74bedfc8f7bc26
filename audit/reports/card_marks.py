"""The mark on the card's numbers that nobody should go by yet, and what it means."""

from __future__ import annotations

from audit.leg_card.carried_card import CarriedCard, CarriedPiece
from audit.leg_card.doubted import Doubted
from audit.reports.angle_words import east_or_west
from audit.reports.wording import leg_names
from audit.words import say


def what_is_marked(carried: CarriedCard) -> list[str]:
    """Say what the mark means: the angle is in doubt, numbers of legs are, or both."""
    angle = east_or_west(carried.card.angles.grid_magnetic_angle_deg)
    legs = [leg.card.name for leg in carried.legs if any(one.doubted for one in leg.pieces)]
    if legs and carried.angle_in_doubt:
        return [say("card-in-doubt-both", angle=angle, legs=leg_names(legs))]
    if legs:
        return [say("card-disputed", legs=leg_names(legs))]
    return [say("card-in-doubt", angle=angle)] if carried.angle_in_doubt else []


def marked_as_turned(carried: CarriedCard, value: str, *, turned: bool) -> str:
    """Mark an azimuth that was got by an angle that is to be put right."""
    return with_mark(value, marked=turned and carried.angle_in_doubt)


def with_mark(value: str, *, marked: bool) -> str:
    """Mark a figure; room to write has no mark."""
    return say("card-marked", value=value) if marked and value else value


def in_doubt(carried: CarriedCard, piece: CarriedPiece, number: Doubted) -> bool:
    """Tell whether a number of a piece is in doubt, by the angle or by a check of the leg."""
    return number in piece.doubted or (carried.angle_in_doubt and piece.turned == number)
