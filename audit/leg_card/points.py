"""The points of a course on its grid, and the ends that are only dead reckoned."""

from __future__ import annotations

from dataclasses import dataclass, field

from audit.azimuths import GridAzimuth, NorthAngles
from audit.errors import Problem
from audit.geodesy.grids import CourseGrid
from audit.geodesy.utm_zones import check_degrees
from audit.leg_card.finished_card import CardPoint
from audit.plan import Plan, PlannedLeg
from audit.units import unit_vector
from audit.words import sentence
from audit.words.figures import Length


@dataclass(slots=True)
class PlacedPoints:
    """Every named point where it lies, in order, and every reason why one could not be placed.

    ``reckoning`` has the numbers of the legs whose end is where they themselves lead;
    ``lost`` the names of what could not be placed.
    """

    points: dict[str, CardPoint] = field(default_factory=dict)
    reckoning: set[int] = field(default_factory=set)
    lost: set[str] = field(default_factory=set)
    problems: list[Problem] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)


def place_given_points(plan: Plan, grid: CourseGrid) -> PlacedPoints:
    """Place the points that the plan gives positions for."""
    placed = PlacedPoints()
    for point in plan.points:
        where = point.position
        try:
            check_degrees(where.longitude_deg, where.latitude_deg)
            east_m, north_m = grid.to_grid(where.longitude_deg, where.latitude_deg)
        except ValueError as error:
            placed.lost.add(point.name)
            placed.problems.append(
                Problem(
                    file=plan.source or "the plan",
                    place=f"point {point.name}",
                    value=where.given,
                    rule=f"cannot be used: {error}",
                    remedy="Check the position, or choose another grid",
                )
            )
            continue
        placed.points.setdefault(
            point.name,
            CardPoint(
                name=point.name,
                east_m=east_m,
                north_m=north_m,
                longitude_deg=where.longitude_deg,
                latitude_deg=where.latitude_deg,
                half_square_m=where.half_square_m,
            ),
        )
    return placed


def reckon_ends(plan: Plan, grid: CourseGrid, angles: NorthAngles, placed: PlacedPoints) -> None:
    """Add to the placed points, leg by leg, the ends that azimuth and distance lead to."""
    lost = placed.lost
    for number, leg in enumerate(plan.legs):
        # What starts or ends at a place that is already refused needs no second word.
        if lost & {leg.start, end_name(leg)} or not _place_end(plan, number, grid, angles, placed):
            lost.add(end_name(leg))


def end_name(leg: PlannedLeg) -> str:
    """Give the name of a leg's end, also where the plan gives it none."""
    return leg.end or sentence("plan-end-name", leg=leg.name)


def given_grid_azimuth(leg: PlannedLeg, angles: NorthAngles) -> GridAzimuth | None:
    """Give the grid azimuth that the plan states for a leg: as grid, else magnetic, else true."""
    if leg.grid_azimuth is not None:
        return leg.grid_azimuth
    if leg.magnetic_azimuth is not None:
        return angles.grid_from_magnetic(leg.magnetic_azimuth)
    if leg.true_azimuth is not None:
        return angles.grid_from_true(leg.true_azimuth)
    return None


def given_distance_m(leg: PlannedLeg, paces_per_100m: float | None) -> float | None:
    """Give the distance that the plan states for a leg, in metres or else in paces."""
    if leg.distance_m is not None:
        return leg.distance_m
    if leg.paces is not None and paces_per_100m:
        return leg.paces * 100.0 / paces_per_100m
    return None


def _place_end(
    plan: Plan, number: int, grid: CourseGrid, angles: NorthAngles, placed: PlacedPoints
) -> bool:
    """Make sure that both ends of a leg are placed; tell whether they are."""
    leg = plan.legs[number]
    name = end_name(leg)
    start = placed.points.get(leg.start)
    azimuth = given_grid_azimuth(leg, angles)
    distance_m = given_distance_m(leg, plan.paces_per_100m)
    rule = remedy = ""
    if start is None:
        rule = f'starts at "{leg.start}", which no point is named and no earlier leg leads to'
        remedy = "Add the point, or start the leg where the one before ends"
    elif name in placed.points:
        return True
    elif azimuth is None or distance_m is None:
        missing = " and no ".join(
            word
            for word, value in (("azimuth", azimuth), ("distance", distance_m))
            if value is None
        )
        rule = f'leads to "{name}", which no point is named, and has no {missing}'
        remedy = "Name a point of the plan as its end, or give azimuth and distance"
    elif leg.via:
        rule = "follows via positions to an end that has no position"
        remedy = "Give the end a point, or leave out via"
    if rule or start is None or azimuth is None or distance_m is None:
        placed.problems.append(
            Problem(
                file=plan.source or "the plan",
                place=f"leg {leg.name}",
                value="",
                rule=rule,
                remedy=remedy,
            )
        )
        return False
    if leg.distance_m is None:
        placed.notes.append(
            sentence("note-paces-for", leg=leg.name, length=Length(metres=distance_m))
        )
    placed.reckoning.add(number)
    placed.points[name] = _reckoned(name, start, grid, azimuth, distance_m)
    return True


def _reckoned(
    name: str, start: CardPoint, grid: CourseGrid, azimuth: GridAzimuth, distance_m: float
) -> CardPoint:
    east, north = distance_m * unit_vector(azimuth.degrees)
    east_m, north_m = start.east_m + float(east), start.north_m + float(north)
    longitude_deg, latitude_deg = grid.to_geographic(east_m, north_m)
    return CardPoint(
        name=name,
        east_m=east_m,
        north_m=north_m,
        longitude_deg=longitude_deg,
        latitude_deg=latitude_deg,
        half_square_m=start.half_square_m,
        dead_reckoned=True,
    )
