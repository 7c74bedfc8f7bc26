"""The card of a course in free order, once it is known which points were visited, and when."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from audit.azimuths import GridAzimuth
from audit.leg_card.finished_card import CardLeg, CardPoint, LegCard
from audit.units import direction_degrees


def card_in_order(card: LegCard, visited: Sequence[int], *, others: bool = True) -> LegCard:
    """Give the card with legs from each visited point to the next, worked out from the points.

    ``visited`` holds numbers of legs of the card, each standing for the point it leads to.
    The points that were not visited follow (unless ``others`` is False), each from where
    the walker was last.
    """
    left_out = [n for n in range(len(card.legs)) if n not in visited] if others else []
    here = card.legs[0].start
    legs = []
    for number in visited:
        there = card.legs[number].end
        legs.append(_leg(card, card.legs[number].name, here, there))
        here = there
    legs += [_leg(card, card.legs[n].name, here, card.legs[n].end) for n in left_out]
    return replace(card, legs=tuple(legs))


def _leg(card: LegCard, name: str, start: CardPoint, end: CardPoint) -> CardLeg:
    line = np.array([(start.east_m, start.north_m), (end.east_m, end.north_m)])
    line.setflags(write=False)
    way = line[1] - line[0]
    azimuth = GridAzimuth(direction_degrees(float(way[0]), float(way[1])))
    distance_m = float(np.hypot(*way))
    paces = card.paces_per_100m
    return CardLeg(
        name=name,
        start=start,
        end=end,
        azimuth=azimuth,
        magnetic=card.angles.magnetic(azimuth),
        true=card.angles.true(azimuth),
        distance_m=distance_m,
        paces=None if paces is None else distance_m * paces / 100.0,
        line=line,
        one_place_m=card.legs[0].one_place_m,
    )
