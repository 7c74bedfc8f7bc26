"""A plan as the tables of its full form: the settings of the course, and each leg."""

from __future__ import annotations

import datetime as dt

from audit.azimuths import GridAzimuth, MagneticAzimuth
from audit.geodesy.grids import course_grid
from audit.plan import AnyAzimuth, Plan, PlannedLeg
from audit.reports.plan_copy import Lost, is_reckoned, reference
from audit.words import sentence

Table = dict[str, str | float | dt.date | list[str]]


def course_table(plan: Plan) -> Table:
    """Give the settings of the course."""
    grid = course_grid(plan.grid)
    table: dict[str, str | float | dt.date | list[str] | None] = {
        "name": plan.name,
        "date": plan.date,
        "grid": plan.grid,
        "grid_magnetic_angle_deg": plan.grid_magnetic_angle_deg,
        "grid_magnetic_angle_date": _angle_date(plan),
        "paces_per_100m": plan.paces_per_100m,
        "arrival_radius_m": plan.arrival_radius_m,
        "sheet": [reference(corner, grid)[0] for corner in plan.sheet] if plan.sheet else None,
        "order": plan.order if plan.order == "free" else None,
        "safety_note": plan.safety_note or None,
    }
    if plan.safety_azimuth is not None:
        azimuth = plan.safety_azimuth
        table[f"safety_{_north(azimuth)}_azimuth_deg"] = azimuth.degrees
    return {key: value for key, value in table.items() if value is not None}


def _angle_date(plan: Plan) -> dt.date | int | None:
    date = plan.grid_magnetic_angle_date
    return date.year if date is not None and plan.grid_magnetic_angle_year_only else date


def leg_tables(plan: Plan) -> list[Table]:
    """Give each leg as the full form has it; none where the points may be visited in any order."""
    if plan.order == "free":
        return []
    renamed = reckoned_names(plan)
    return [_leg_table(plan, leg, renamed) for leg in plan.legs]


def lost_of_legs(plan: Plan) -> list[Lost]:
    """Give what even the full form does not carry."""
    grid = course_grid(plan.grid)
    lost = [
        Lost(
            words=sentence("copy-renamed", old=old, new=new),
            differs=(": start", ": end"),
        )
        for old, new in reckoned_names(plan).items()
        if old != new
    ]
    if any(not reference(via, grid)[1] for leg in plan.legs for via in leg.via):
        lost.append(Lost(words=sentence("copy-vias-well"), differs=()))
    return lost


def reckoned_names(plan: Plan) -> dict[str, str]:
    """Give the names that dead-reckoned ends get where a leg leaves its end out."""
    names = {point.name for point in plan.points}
    renamed = {}
    for leg in plan.legs:
        if is_reckoned(plan, leg):
            name = f"end of leg {leg.name}"
            while name in names:
                name += "'"
            renamed[leg.end] = name
    return renamed


def _leg_table(plan: Plan, leg: PlannedLeg, renamed: dict[str, str]) -> Table:
    grid = course_grid(plan.grid)
    table: Table = {"name": leg.name, "from": renamed.get(leg.start, leg.start)}
    if not is_reckoned(plan, leg):
        table["to"] = leg.end
    for azimuth in (leg.grid_azimuth, leg.magnetic_azimuth, leg.true_azimuth):
        if azimuth is not None:
            table[f"{_north(azimuth)}_azimuth_deg"] = azimuth.degrees
    if leg.distance_m is not None:
        table["distance_m"] = leg.distance_m
    if leg.paces is not None:
        table["paces"] = leg.paces
    table |= half_steps(leg)
    if leg.via:
        table["via"] = [reference(via, grid)[0] for via in leg.via]
    if leg.note:
        table["note"] = leg.note
    return table


def half_steps(leg: PlannedLeg) -> dict[str, float]:
    """Give how finely converted numbers of a leg were written, by their keys."""
    steps = {
        "grid_azimuth_half_step_deg": leg.grid_azimuth_half_step_deg,
        "distance_half_step_m": leg.distance_half_step_m,
    }
    return {key: step for key, step in steps.items() if step is not None}


def _north(azimuth: AnyAzimuth) -> str:
    if isinstance(azimuth, GridAzimuth):
        return "grid"
    return "magnetic" if isinstance(azimuth, MagneticAzimuth) else "true"
