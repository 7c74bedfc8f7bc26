"""`leg-audit forecast`: how far from each point ordinary walks end, before anyone walks."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

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
from audit.cli.options import AsJson, PlanFile, Traceback, WordsFile, number

FORECAST_EXAMPLE = """\b
Example:
    leg-audit forecast plan.toml
    leg-audit forecast plan.toml --clicks 3 --sight 20 --aim-off -60
    leg-audit forecast plan.toml --walked spring/debrief.json --walked may/debrief.json
"""

Walked = Annotated[
    list[Path] | None,
    typer.Option(
        "--walked",
        metavar="FILE",
        help="An earlier debrief.json of the walker: forecast from it; give it again for more.",
    ),
]
HeadingSd = Annotated[
    float | None,
    typer.Option(
        "--heading-sd",
        metavar="DEGREES",
        parser=number(0.0, 90.0),
        help="Standard deviation of the azimuth held on one leg.",
    ),
]
PaceSd = Annotated[
    float | None,
    typer.Option(
        "--pace-sd",
        metavar="PERCENT",
        parser=number(0.0, 50.0),
        help="Standard deviation of the distance walked on one leg.",
    ),
]
Clicks = Annotated[
    float,
    typer.Option(
        "--clicks",
        metavar="DEGREES",
        parser=number(0.0, 30.0),
        help="Azimuths are set in clicks of the bezel of so many degrees. 0: read off the dial.",
    ),
]
Sight = Annotated[
    float | None,
    typer.Option(
        "--sight",
        metavar="METRES",
        parser=number(0.0),
        help="How far off a point is seen. Left out: the arrival radius.",
    ),
]
AimOff = Annotated[
    float,
    typer.Option(
        "--aim-off",
        metavar="METRES",
        parser=number(),
        help="Aim so far to the right of each point (negative: left), to be sure of the side.",
    ),
]


def forecast(  # noqa: PLR0913 (one parameter an option)
    plan: PlanFile,
    *,
    walked: Walked = None,
    heading_sd: HeadingSd = None,
    pace_sd: PaceSd = None,
    clicks: Clicks = 0.0,
    sight: Sight = None,
    aim_off: AimOff = 0.0,
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
) -> None:
    """Forecast how far from each point an ordinary walk ends.

    From the walker's scatter of azimuths and paces, the precision of the references, and
    the rounding to clicks: the spread along and across, the ellipses that hold 50 and
    95 walks in 100, the chance to come within sight, and what aiming off brings.
    """
    from audit.cli.forecast_files import Known, forecast_file  # noqa: PLC0415 (help stays quick)

    forecast_file(
        plan,
        Known(
            walked=tuple(walked or ()),
            heading_sd_deg=heading_sd,
            pace_sd=None if pace_sd is None else pace_sd / 100.0,
            click_deg=clicks,
            sight_m=sight,
            aim_off_m=aim_off,
            words=words,
        ),
        as_json=json,
        options=course_options(
            name, date, grid, grid_magnetic_angle, paces_per_100m, arrival_radius, route
        ),
    )
