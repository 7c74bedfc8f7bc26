"""`leg-audit copy`: a plan in another form, or on the grid of another map."""

from __future__ import annotations

from audit.cli.course_options import (
    ArrivalRadius,
    Date,
    Grid,
    GridMagneticAngle,
    Name,
    PacesPer100m,
    Route,
    course_options,
)
from audit.cli.options import CopyFile, Onto, PlanFile, Traceback, WordsFile

COPY_EXAMPLE = """\b
Example:
    leg-audit copy plan.toml --out plan.gpx
    leg-audit copy plan.csv --date 2026-10-03 --out plan.toml
    leg-audit copy plan.toml --onto EPSG:27700 --out plan-27700.toml
"""


def copy(  # noqa: PLR0913 (one parameter an option)
    plan: PlanFile,
    *,
    out: CopyFile,
    onto: Onto = None,
    name: Name = None,
    date: Date = None,
    grid: Grid = None,
    grid_magnetic_angle: GridMagneticAngle = None,
    paces_per_100m: PacesPer100m = None,
    arrival_radius: ArrivalRadius = None,
    route: Route = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> None:
    """Copy a plan into another form, or onto the grid of another map.

    The name of --out says the form: .toml, .csv, .gpx or .geojson. The copy is read back
    before it is written: it is the same plan to a millimetre, but for what the form
    cannot carry, which is said, with the options that give it back.
    """
    from audit.cli.copy_files import copy_file  # noqa: PLC0415 (help stays quick)

    copy_file(
        plan,
        out,
        onto=onto,
        words_from=words,
        options=course_options(
            name, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, route
        ),
    )
