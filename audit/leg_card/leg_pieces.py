"""The straight pieces of a leg that follows via positions: each is set and counted by itself."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from audit.azimuths import GridAzimuth, MagneticAzimuth, NorthAngles
from audit.geodesy.along_line import metres_long
from audit.leg_card.finished_card import CardLeg
from audit.units import direction_degrees


@dataclass(frozen=True, slots=True, kw_only=True)
class LegPiece:
    """One straight piece of a leg.

    Attributes
    ----------
    first, last : int
        Which places of the leg's line it joins: 0 is the start, 1 the first via position.
    distance_m : float
        Of a straight leg the card's own; else along the positions.
    paces : float or None
        By the pace count; without one its share of those that the plan gives the leg.
    """

    first: int
    last: int
    azimuth: GridAzimuth
    magnetic: MagneticAzimuth
    distance_m: float
    paces: float | None


def walked_m(leg: CardLeg) -> float:
    """Give the length that is walked: the card's own, or of a leg of pieces their sum."""
    corners = _corners(leg)
    if len(corners) <= 2:
        return leg.distance_m
    return sum(math.dist(leg.line[first], leg.line[last]) for first, last in pairwise(corners))


def leg_pieces(
    leg: CardLeg, angles: NorthAngles, paces_per_100m: float | None
) -> tuple[LegPiece, ...]:
    """Give the pieces in order: a straight leg is one, with the card's own figures.

    A via position that lies where the one before does begins no piece.
    """
    corners = _corners(leg)
    if len(corners) <= 2:
        whole = LegPiece(
            first=0,
            last=len(leg.line) - 1,
            azimuth=leg.azimuth,
            magnetic=leg.magnetic,
            distance_m=leg.distance_m,
            paces=leg.paces,
        )
        return (whole,)
    along_m = metres_long(leg.line)
    per_m = None if leg.paces is None else leg.paces / along_m
    if paces_per_100m is not None:
        per_m = paces_per_100m / 100.0
    pieces = []
    for first, last in pairwise(corners):
        east_m, north_m = (float(one) for one in leg.line[last] - leg.line[first])
        azimuth = GridAzimuth(direction_degrees(east_m, north_m))
        distance_m = float(np.hypot(east_m, north_m))
        pieces.append(
            LegPiece(
                first=first,
                last=last,
                azimuth=azimuth,
                magnetic=angles.magnetic(azimuth),
                distance_m=distance_m,
                paces=None if per_m is None else distance_m * per_m,
            )
        )
    return tuple(pieces)


def _corners(leg: CardLeg) -> list[int]:
    """Give the places of the line where pieces meet, the end among them."""
    corners = [0]
    for place in range(1, len(leg.line)):
        if np.hypot(*(leg.line[place] - leg.line[corners[-1]])) >= leg.one_place_m:
            corners.append(place)
    return [*corners[:-1], len(leg.line) - 1] if len(corners) > 1 else corners
