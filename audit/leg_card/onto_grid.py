"""A plan on the grid of another map: the same places and the same ways, other numbers."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from audit.azimuths import GridAzimuth
from audit.errors import InputRefusedError, Problem, refuse
from audit.geodesy.grids import CourseGrid, course_grid
from audit.leg_card.check_plan import check_plan
from audit.leg_card.finished_card import CardLeg, CardPoint, LegCard
from audit.leg_card.rounding import distance_rounding_m, grid_rounding_deg, plan_rounding_deg
from audit.plan import Plan, PlannedLeg
from audit.settings import CardSettings, Settings
from audit.units import direction_degrees, turn_degrees, unit_vector

_DEGREES, _METRES = 7, 4
"""Decimals that are kept: less than a millimetre in 10 km."""


def plan_onto_grid(plan: Plan, code: str, *, settings: Settings | None = None) -> Plan:
    """Give the plan on another grid.

    Places stay where they are. What the plan states of a leg goes along: its grid azimuth
    and its distance become those of the same way on the new grid, so that a slip in them
    stays one; magnetic and true azimuths and paces do not change. The grid-magnetic angle
    changes by the difference of the convergences, G + C being the same declination. A
    dead-reckoned leg is given grid azimuth and distance, so that it ends where it ended.
    Beside each converted number stands how finely it was written: its digits no longer say so.

    Raises
    ------
    InputRefusedError
        For a grid that does not exist, or that does not suit the course.
    """
    settings, file = settings or Settings(), plan.source or "the plan"
    try:
        new = course_grid(code)
    except ValueError as error:
        rule = f"is no grid for a plan: {error}"
        raise refuse(file, "option onto", code, rule, 'Write one such as "EPSG:27700".') from None
    _check_suits(plan, new, file, settings.reading.grid_scale_slack)
    card = check_plan(plan, settings=settings).card
    legs = zip(plan.legs, card.legs, strict=True)
    angle_deg = plan.grid_magnetic_angle_deg
    turn_deg = _turn_deg(card, new, card.points[0])
    safety = plan.safety_azimuth
    return replace(
        plan,
        grid=new.code,
        grid_magnetic_angle_deg=(
            None if angle_deg is None else round(turn_degrees(0.0, angle_deg + turn_deg), _DEGREES)
        ),
        safety_azimuth=(
            GridAzimuth(round(safety.turned(turn_deg).degrees, _DEGREES))
            if isinstance(safety, GridAzimuth)
            else safety
        ),
        legs=tuple(_leg_onto(leg, worked, card, new, settings.card) for leg, worked in legs),
        notes=(),
    )


def _turn_deg(card: LegCard, new: CourseGrid, point: CardPoint) -> float:
    """Give by how much grid azimuths grow at a point: C - C', for grid = true - C."""
    place = point.longitude_deg, point.latitude_deg
    return card.grid.convergence_deg(*place) - new.convergence_deg(*place)


def _leg_onto(
    leg: PlannedLeg, worked: CardLeg, card: LegCard, new: CourseGrid, settings: CardSettings
) -> PlannedLeg:
    reckoned = worked.end.dead_reckoned
    wants_azimuth = leg.grid_azimuth is not None or reckoned
    wants_distance = leg.distance_m is not None or reckoned
    if not (wants_azimuth or wants_distance):
        return leg
    azimuth, distance_m = _way_onto(leg, worked, card, new)
    return replace(
        leg,
        grid_azimuth=GridAzimuth(round(azimuth.degrees, _DEGREES)) if wants_azimuth else None,
        distance_m=round(distance_m, _METRES) if wants_distance else None,
        grid_azimuth_half_step_deg=(
            round(_azimuth_half_step_deg(leg, worked, card, new), _DEGREES)
            if wants_azimuth
            else None
        ),
        in_mils=tuple(north for north in leg.in_mils if north != "grid"),
        distance_half_step_m=(
            None
            if leg.distance_m is None
            else distance_rounding_m(leg, leg.distance_m, settings.distance_rounding_most_m)
        ),
    )


def _azimuth_half_step_deg(
    leg: PlannedLeg, worked: CardLeg, card: LegCard, new: CourseGrid
) -> float:
    """Give how far the azimuth may be off by how it was written, and by where the leg lies.

    The sums of a plan use one angle for all legs, that of the first point.
    """
    written = leg.grid_azimuth or leg.magnetic_azimuth or leg.true_azimuth
    half_step_deg = grid_rounding_deg(leg)
    if leg.grid_azimuth is None and written is not None:
        half_step_deg = plan_rounding_deg(written.degrees)
    here_deg = _turn_deg(card, new, worked.start)
    return half_step_deg + abs(here_deg - _turn_deg(card, new, card.points[0]))


def _way_onto(
    leg: PlannedLeg, worked: CardLeg, card: LegCard, new: CourseGrid
) -> tuple[GridAzimuth, float]:
    """Give azimuth and distance on the new grid of what the leg states on its own.

    A straight leg by the place where its azimuth and distance lead; one along via
    positions by what the grids make of a short way at its start.
    """
    azimuth = leg.grid_azimuth or worked.azimuth
    start = np.array([worked.start.east_m, worked.start.north_m])
    if leg.via:
        place = worked.start.longitude_deg, worked.start.latitude_deg
        longer = new.scale_factor(*place) / card.grid.scale_factor(*place)
        turned = azimuth.turned(_turn_deg(card, new, worked.start))
        return turned, worked.distance_m * longer
    end = start + worked.distance_m * unit_vector(azimuth.degrees)
    here = np.array(new.to_grid(worked.start.longitude_deg, worked.start.latitude_deg))
    there = np.array(new.to_grid(*card.grid.to_geographic(float(end[0]), float(end[1]))))
    way = there - here
    azimuth = GridAzimuth(direction_degrees(float(way[0]), float(way[1])))
    return azimuth, float(np.hypot(*way))


def _check_suits(plan: Plan, new: CourseGrid, file: str, slack: float) -> None:
    """Refuse a grid that does not reach a place of the course, or stretches it out of shape."""
    problems = []
    for point in plan.points:
        where = point.position
        try:
            scale = new.scale_factor(where.longitude_deg, where.latitude_deg)
        except ValueError:
            scale = float("inf")
        if abs(scale - 1.0) > slack:
            problems.append(
                Problem(
                    file=file,
                    place="option onto",
                    value=new.code,
                    rule=f'does not reach the point "{point.name}"',
                    remedy="Name the grid of a map that shows the course.",
                )
            )
    if problems:
        raise InputRefusedError(problems[:1])
