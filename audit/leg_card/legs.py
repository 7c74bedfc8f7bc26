"""Each leg of the card: its line on the grid, and what the walker is to set and to count."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from audit.azimuths import GridAzimuth, NorthAngles
from audit.geodesy.grids import CourseGrid
from audit.leg_card.finished_card import CardLeg, CardPoint
from audit.leg_card.points import given_distance_m, given_grid_azimuth
from audit.leg_card.within_squares import Room, room_within
from audit.plan import Plan, PlannedLeg
from audit.settings import CardSettings
from audit.units import FloatArray, direction_degrees


@dataclass(frozen=True, slots=True, kw_only=True)
class PointsSay:
    """What the points alone say of a leg.

    Attributes
    ----------
    azimuth : GridAzimuth or None
        Straight from start to end; None where they are the same place.
    first_stretch : GridAzimuth or None
        To the first via position, where there is one.
    chord_m, along_m : float
        Straight, and along the via positions.
    over_vias_m : tuple of (over, past)
        Of each via position the way over it, and the straight one past it, between the
        places before and after it.
    room : Room
        What the squares of its places leave open of all this.
    """

    azimuth: GridAzimuth | None
    first_stretch: GridAzimuth | None
    chord_m: float
    along_m: float
    room: Room
    over_vias_m: tuple[tuple[float, float], ...] = ()


def leg_line(leg: PlannedLeg, start: CardPoint, end: CardPoint, grid: CourseGrid) -> FloatArray:
    """Give the planned line on the grid, shape (k, 2), read-only.

    Raises
    ------
    ValueError
        For a via position beyond the reach of the grid.
    """
    vias = [grid.to_grid(via.longitude_deg, via.latitude_deg) for via in leg.via]
    line = np.array(
        [(start.east_m, start.north_m), *vias, (end.east_m, end.north_m)], dtype=np.float64
    )
    line.setflags(write=False)
    return line


def points_say(
    leg: PlannedLeg, start: CardPoint, end: CardPoint, line: FloatArray, settings: CardSettings
) -> PointsSay:
    """Give azimuth and distances as the positions of a leg have them."""
    steps = np.diff(line, axis=0)
    lengths = np.hypot(steps[:, 0], steps[:, 1])
    chord = line[-1] - line[0]
    chord_m = math.hypot(*chord)
    half_m = [start.half_square_m, *(via.half_square_m for via in leg.via), end.half_square_m]
    return PointsSay(
        azimuth=_direction(chord) if chord_m >= settings.shortest_leg_m else None,
        first_stretch=(
            _direction(steps[0]) if leg.via and lengths[0] >= settings.shortest_leg_m else None
        ),
        chord_m=chord_m,
        along_m=float(lengths.sum()),
        room=room_within(line, np.array(half_m)),
        over_vias_m=tuple(
            (float(lengths[at - 1] + lengths[at]), math.dist(line[at - 1], line[at + 1]))
            for at in range(1, len(line) - 1)
        ),
    )


def refusal(
    leg: PlannedLeg, said: PointsSay, plan: Plan, settings: CardSettings
) -> tuple[str, str]:
    """Give (rule, remedy) where no leg of the card can be made of this; ("", "") otherwise."""
    stated_m = given_distance_m(leg, plan.paces_per_100m)
    nowhere = said.azimuth is None and (
        given_grid_azimuth(leg, _NO_ANGLES) is None or (stated_m is None and not leg.via)
    )
    longest_m = max(said.along_m, stated_m or 0.0)
    rule = remedy = ""
    if nowhere:
        rule = f'starts and ends at one place ("{leg.start}", "{leg.end}") and has no direction'
        remedy = "Give one of the points its right position, or leave the leg out"
    elif stated_m is not None and stated_m < settings.shortest_leg_m:
        rule, remedy = "has no length", "Give its distance in metres, or leave it out"
    elif longest_m > settings.longest_leg_m:
        limit_km = settings.longest_leg_m / 1000.0
        rule = f"is {longest_m / 1000.0:.0f} km long; a leg is at most {limit_km:.0f} km"
        remedy = (
            "Look for a wrong 100 km square or zone in its points, or a wrong unit in its distance"
        )
    return rule, remedy


def card_leg(
    leg: PlannedLeg,
    ends: tuple[CardPoint, CardPoint],
    line: FloatArray,
    said: PointsSay,
    plan: Plan,
    angles: NorthAngles,
    settings: CardSettings,
) -> CardLeg:
    """Give the leg of the card: what the plan states where it does, else what the points say.

    Raises
    ------
    ValueError
        Where neither gives a direction (see ``refusal``).
    """
    azimuth = given_grid_azimuth(leg, angles) or said.azimuth
    if azimuth is None:
        message = f"leg {leg.name} has no direction"
        raise ValueError(message)
    distance_m = leg.distance_m if leg.distance_m is not None else said.along_m
    paces = leg.paces
    if paces is None and plan.paces_per_100m is not None:
        paces = distance_m * plan.paces_per_100m / 100.0
    return CardLeg(
        name=leg.name,
        start=ends[0],
        end=ends[1],
        azimuth=azimuth,
        magnetic=leg.magnetic_azimuth or angles.magnetic(azimuth),
        true=leg.true_azimuth or angles.true(azimuth),
        distance_m=distance_m,
        paces=paces,
        line=line,
        one_place_m=settings.shortest_leg_m,
        note=leg.note,
    )


# Only whether an azimuth is stated matters there, not which way it points.
_NO_ANGLES = NorthAngles(grid_magnetic_angle_deg=0.0, convergence_deg=0.0)


def _direction(step: FloatArray) -> GridAzimuth:
    return GridAzimuth(direction_degrees(float(step[0]), float(step[1])))
