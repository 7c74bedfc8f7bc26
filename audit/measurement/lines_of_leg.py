"""The lines that a walk is held against: the planned one, and the card's from the true start."""

from __future__ import annotations

import numpy as np

from audit.azimuths import GridAzimuth
from audit.geodesy.along_line import metres_long
from audit.leg_card import CardLeg
from audit.measurement.cross_track import straight_line
from audit.units import FloatArray, direction_degrees


def planned_line(leg: CardLeg) -> FloatArray:
    """Give the line through the points of a leg, as the map has it, whatever its card says.

    Shape (k, 2). Points at one place have no line between them: there the card's counts.
    """
    if len(leg.line) > 2 or metres_long(leg.line) >= leg.one_place_m:
        return leg.line
    return straight_line(leg.line[0], leg.azimuth.degrees, leg.distance_m)


def own_line(leg: CardLeg, start: FloatArray) -> FloatArray:
    """Give what the card has the walker walk, from where he really began; a bent line moved."""
    if len(leg.line) > 2:
        return np.asarray(leg.line - leg.line[0] + start)
    return straight_line(start, leg.azimuth.degrees, leg.distance_m)


def line_direction(leg: CardLeg) -> GridAzimuth:
    """Give the direction in which the planned line runs, of a bent one from end to end."""
    line = planned_line(leg)
    east, north = line[-1] - line[0]
    return GridAzimuth(direction_degrees(float(east), float(north)))


def line_length_m(leg: CardLeg) -> float:
    """Give the length of the planned line, via positions and all."""
    return metres_long(planned_line(leg))


def carried_direction(leg: CardLeg) -> GridAzimuth:
    """Give what a walked heading is set against: the card's azimuth, or a bent line's chord."""
    return leg.azimuth if len(leg.line) == 2 else line_direction(leg)
