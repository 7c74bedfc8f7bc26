"""A course with one point moved: the leg to it and the leg from it worked out anew."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.azimuths import GridAzimuth
from audit.geodesy.along_line import metres_long
from audit.leg_card import CardLeg, CardPoint, LegCard
from audit.units import FloatArray, direction_degrees, unit_vector


def with_end_moved(card: LegCard, number: int, longer_m: float, turned_deg: float) -> LegCard:
    """Give the card with the end of a straight leg put where its new length and azimuth lead."""
    leg = card.legs[number]
    start = np.asarray(leg.line[0])
    plan = leg.line[-1] - start
    direction = direction_degrees(float(plan[0]), float(plan[1])) + turned_deg
    place = start + (float(np.hypot(*plan)) + longer_m) * unit_vector(direction)
    moved = _point_at(leg.end, place, card)
    legs = tuple(
        _anew(one, card, start=moved if one.start is leg.end else None,
              end=moved if one.end is leg.end else None)
        for one in card.legs
    )  # fmt: skip
    points = tuple(moved if point is leg.end else point for point in card.points)
    return replace(card, points=points, legs=legs)


def _point_at(point: CardPoint, place: FloatArray, card: LegCard) -> CardPoint:
    east, north = float(place[0]), float(place[1])
    longitude, latitude = card.grid.to_geographic(east, north)
    return replace(
        point, east_m=east, north_m=north, longitude_deg=longitude, latitude_deg=latitude
    )


def _anew(
    leg: CardLeg, card: LegCard, *, start: CardPoint | None, end: CardPoint | None
) -> CardLeg:
    """Give a leg between its new ends; its azimuth and distance are then those of the points."""
    if start is None and end is None:
        return leg
    start, end = start or leg.start, end or leg.end
    line = np.array(leg.line)
    line[0], line[-1] = (start.east_m, start.north_m), (end.east_m, end.north_m)
    line.setflags(write=False)
    chord = line[-1] - line[0]
    azimuth = GridAzimuth(direction_degrees(float(chord[0]), float(chord[1])))
    return replace(
        leg,
        start=start,
        end=end,
        line=line,
        azimuth=azimuth,
        magnetic=card.angles.magnetic(azimuth),
        true=card.angles.true(azimuth),
        distance_m=metres_long(line),
    )
