"""`leg-audit check`: the plan's own arithmetic, before anyone walks."""

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
from audit.cli.options import AsJson, PlanFile, Traceback, WordsFile

CHECK_EXAMPLE = """\b
Example:
    leg-audit check plan.toml
    leg-audit check plan.csv --date 2026-10-03 --grid-magnetic-angle -7 --json

\b
Exit status: 0 nothing to put right, 1 findings, 2 wrong use, 3 plan refused.
"""


def check(  # noqa: PLR0913 (one parameter an option)
    plan: PlanFile,
    *,
    json: AsJson = False,
    name: Name = None,
    date: Date = None,
    grid: Grid = None,
    grid_magnetic_angle: GridMagneticAngle = None,
    paces_per_100m: PacesPer100m = None,
    arrival_radius: ArrivalRadius = None,
    route: Route = None,
    words: WordsFile = None,
    traceback: Traceback = False,  # noqa: ARG001 (whoever guards the command reads it)
) -> int:
    """Check a plan's own arithmetic, before anyone walks.

    Azimuths against points, grid to magnetic by the right angle and sign, distances,
    paces, and references: every disagreement, the slip that it looks like, and the
    sums worked out line by line.
    """
    from audit.cli.check_files import check_file  # noqa: PLC0415 (help stays quick)

    return check_file(
        plan,
        as_json=json,
        words=words,
        options=course_options(
            name, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, route
        ),
    )
