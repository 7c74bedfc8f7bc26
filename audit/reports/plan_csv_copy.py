"""A plan as CSV, one row a leg, for spreadsheets."""

from __future__ import annotations

import csv
import io

from audit.geodesy.grids import CourseGrid, course_grid
from audit.plan import Plan, PlannedLeg
from audit.reports.csv_report import as_text
from audit.reports.plan_copy import (
    Lost,
    PlanCopy,
    is_reckoned,
    legs_with,
    lost_points,
    lost_precision,
    lost_settings,
    number,
    reference,
    setting_options,
)
from audit.reports.plan_tables import half_steps
from audit.words import sentence

_COLUMNS = (
    "leg", "from", "to", "from_position", "to_position", "grid_azimuth_deg",
    "magnetic_azimuth_deg", "true_azimuth_deg", "distance_m", "paces", "note",
)  # fmt: skip
_HALF_STEPS = ("grid_azimuth_half_step_deg", "distance_half_step_m")
"""Columns of a plan that was put onto another grid."""


def copy_as_csv(plan: Plan) -> PlanCopy:
    """Give the plan as CSV (RFC 4180); positions in metres are read with the option grid."""
    grid = course_grid(plan.grid)
    text = io.StringIO(newline="")
    stated = {key for leg in plan.legs for key in half_steps(leg)}
    columns = (*_COLUMNS[:-1], *(key for key in _HALF_STEPS if key in stated), _COLUMNS[-1])
    writer = csv.DictWriter(text, fieldnames=columns, lineterminator="\r\n")
    writer.writeheader()
    for leg in plan.legs:
        writer.writerow(_row(plan, leg, grid))
    lost = [*lost_settings(plan), *lost_points(plan), *lost_precision(plan)]
    vias = legs_with(plan, "via")
    if vias:
        lost.append(Lost(words=sentence("copy-vias", legs=vias), differs=(": via",)))
    return PlanCopy(text=text.getvalue(), lost=tuple(lost), options=setting_options(plan))


def _row(plan: Plan, leg: PlannedLeg, grid: CourseGrid) -> dict[str, str]:
    row = {"leg": leg.name, "from": leg.start, "to": leg.end, "note": leg.note}
    row = {column: as_text(words) for column, words in row.items()}
    for column, name in (("from_position", leg.start), ("to_position", leg.end)):
        position = plan.position(name)
        if position is not None:
            row[column] = reference(position, grid)[0]
    azimuths = {
        "grid_azimuth_deg": leg.grid_azimuth,
        "magnetic_azimuth_deg": leg.magnetic_azimuth,
        "true_azimuth_deg": leg.true_azimuth,
    }
    numbers = {
        column: None if azimuth is None else azimuth.degrees for column, azimuth in azimuths.items()
    } | {"distance_m": leg.distance_m, "paces": leg.paces, **half_steps(leg)}
    row |= {column: number(value) for column, value in numbers.items() if value is not None}
    if is_reckoned(plan, leg) and leg.end == f"end of leg {leg.name}":
        row["to"] = ""  # the name that a reader gives it anyway
    return row
